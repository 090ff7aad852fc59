import { describe, expect, test } from 'vitest';
import {
  drawImage,
  hatchImageId,
  type MarkImage,
  markImageId,
} from '../../../../web/map/style/mark-images.ts';

const COLOUR = '#c56a10';
const GROUND = '#fffdf8';

const pixel = (image: MarkImage, x: number, y: number) => {
  const at = (Math.floor(y) * image.width + Math.floor(x)) * 4;
  return [...image.data.slice(at, at + 4)];
};
const share = (image: MarkImage, colour: readonly number[]) => {
  let count = 0;
  for (let i = 0; i < image.data.length; i += 4) {
    if (image.data[i + 3] === 255 && colour.every((value, k) => image.data[i + k] === value)) count++;
  }
  return count / (image.data.length / 4);
};

describe('marks', () => {
  test.each(['fuel', 'water'] as const)(
    'of %s are filled where the point counts, hollow where not',
    (shape) => {
      const filled = drawImage(markImageId(shape, 'filled', COLOUR, GROUND))!;
      const hollow = drawImage(markImageId(shape, 'hollow', COLOUR, GROUND))!;
      const middle = [filled.width / 2, filled.height * 0.58] as const;
      expect(pixel(filled, ...middle)).toEqual([0xc5, 0x6a, 0x10, 255]);
      expect(pixel(hollow, ...middle)).toEqual([0xff, 0xfd, 0xf8, 255]);
      expect(pixel(filled, 0, 0)[3]).toBe(0);
      expect(share(hollow, [0xc5, 0x6a, 0x10])).toBeGreaterThan(0.02);
    },
  );

  test('differ in shape: the square has corners, the drop a point', () => {
    const fuel = drawImage(markImageId('fuel', 'filled', COLOUR, GROUND))!;
    const water = drawImage(markImageId('water', 'filled', COLOUR, GROUND))!;
    const corner = [fuel.width / 2 - 10, fuel.height / 2 - 10] as const;
    expect(pixel(fuel, ...corner)).toEqual([0xc5, 0x6a, 0x10, 255]);
    expect(pixel(water, ...corner)[3]).toBeLessThan(128);
    const above = [fuel.width / 2, fuel.height / 2 - 18] as const;
    expect(pixel(fuel, ...above)[3]).toBe(0);
    expect(pixel(water, ...above)[3]).toBe(255);
  });

  test('are whole images of their stated size', () => {
    const image = drawImage(markImageId('fuel', 'filled', COLOUR, GROUND))!;
    expect(image.data).toHaveLength(image.width * image.height * 4);
  });
});

test('a ring round a mark is its colour, clear of it; a place to turn back stands on its corner', () => {
  const ringed = drawImage(markImageId('fuel', 'ringed', COLOUR, GROUND))!;
  const middle = ringed.width / 2;
  const reds = Array.from({ length: middle }, (_, i) => pixel(ringed, middle + i, middle));
  const runs = reds.map(([red, , , alpha]) => (alpha! < 128 ? 'out' : red! > 0xe8 ? 'ground' : 'colour'));
  expect(runs.filter((run, i) => run !== runs[i - 1])).toEqual([
    'colour',
    'ground',
    'colour',
    'ground',
    'out',
  ]);
  const turn = drawImage(markImageId('turn', 'filled', COLOUR, GROUND))!;
  expect(pixel(turn, turn.width / 2, turn.height / 2 - 14)).toEqual([0xc5, 0x6a, 0x10, 255]);
  expect(pixel(turn, turn.width / 2 + 13, turn.height / 2 - 13)[3]).toBe(0);
});

test('hatching is half colour, half ground, and meets itself when repeated', () => {
  const hatch = drawImage(hatchImageId('#8e1b4b', GROUND))!;
  const row = (y: number) => Array.from({ length: hatch.width }, (_, x) => pixel(hatch, x, y)[0]!);
  const mean = row(0).reduce((sum, red) => sum + red, 0) / hatch.width;
  expect(mean).toBeCloseTo((0x8e + 0xff) / 2, -1);
  // One row lower is the same stripes, one pixel to the left; the last row leads on to the first.
  const last = row(hatch.height - 1);
  expect(row(0)).toEqual([...last.slice(1), last[0]]);
});

test('an id of another maker is no image', () => {
  for (const id of ['', 'mark', 'mark fish filled #000000 #ffffff', 'bus_stop'])
    expect(drawImage(id)).toBeNull();
});
