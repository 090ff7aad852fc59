import { describe, expect, it } from 'vitest';
import type { Bbox } from '../../../server/contract/common.ts';
import { corridorBoxes, digestOf, halvesOf, widened } from '../../../server/io/overpass/corridor.ts';
import { mergeChunks } from '../../../server/io/overpass/merge-chunks.ts';

/** A line along a parallel, a vertex each kilometre or so. */
const line = (from: number, to: number, lat: number) => {
  const count = Math.round((to - from) * 100) + 1;
  return {
    lon: Float64Array.from({ length: count }, (_, at) => from + at / 100),
    lat: Float64Array.from({ length: count }, () => lat),
  };
};
const holds = ([west, south, east, north]: Bbox, lon: number, lat: number) =>
  west <= lon && lon <= east && south <= lat && lat <= north;

describe('the boxes of a corridor', () => {
  it('hold every place that is within it, and are small', () => {
    const boxes = corridorBoxes(line(85, 87, -35), 5);
    expect(boxes.length).toBeGreaterThan(8);
    expect(boxes.length).toBeLessThan(14);
    // 5 km are 0.045 degrees of latitude.
    for (let lon = 85; lon <= 87; lon += 0.013)
      for (const lat of [-35.044, -35, -34.956])
        expect(
          boxes.some((box) => holds(box, lon, lat)),
          `${lon} ${lat}`,
        ).toBe(true);
    for (const [west, south, east, north] of boxes) {
      expect(east - west).toBeLessThan(0.4);
      expect(north - south).toBeLessThan(0.2);
    }
  });

  it('are told in round figures that hold them, and do not leave the Earth', () => {
    expect(widened([84.12345, -35.98765, 84.45671, -35.12341])).toEqual([
      84.1234, -35.9877, 84.4568, -35.1234,
    ]);
    expect(widened([-180, -90, 180, 90])).toEqual([-180, -90, 180, 90]);
  });

  it('are cut across their longer side, and not when they are small', () => {
    expect(halvesOf([84, -36, 84.4, -35.8])).toEqual([
      [84, -36, 84.2, -35.8],
      [84.2, -36, 84.4, -35.8],
    ]);
    expect(halvesOf([84, -36, 84.1, -35.8])).toEqual([
      [84, -36, 84.1, -35.9],
      [84, -35.9, 84.1, -35.8],
    ]);
    expect(halvesOf([84, -36, 84.019, -35.985])).toBeNull();
  });

  it('have another name where anything that would be sent, or to whom, is another', () => {
    const asker = { address: new URL('http://10.0.0.1/i'), userAgent: 'x' };
    const [one, other]: [Bbox, Bbox] = [
      [84, -36, 84.4, -35.8],
      [84, -36, 84.4, -35.9],
    ];
    const names = [
      digestOf(asker, [one]),
      digestOf(asker, [other]),
      digestOf(asker, [one, other]),
      digestOf(asker, [other, one]),
      digestOf({ ...asker, address: new URL('http://10.0.0.2/i') }, [one]),
    ];
    expect(new Set(names).size).toBe(names.length);
    expect(digestOf({ ...asker, userAgent: 'y' }, [one])).toBe(names[0]);
  });
});

it('a file of no answers is one of nothing', async () => {
  expect(await mergeChunks([], '/dev/null')).toEqual({ ok: true, value: undefined });
});
