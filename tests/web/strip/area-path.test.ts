import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gapAreas, levelPoints } from '../../../web/strip/area-path.ts';
import { sampleReply } from '../sample-reply.ts';

const yOfKm = (km: number): number => 1200 - km;
const scale = { baseX: 100, pxPerLitre: 2, yOfKm };

/** Every corner of an SVG path of straight lines. */
function corners(path: string): { x: number; y: number }[] {
  return [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
}

const { water, fuel } = sampleReply().analysis;
const short = water.gaps[1]!;

describe('the area of a gap', () => {
  test('is as wide as what is aboard at each of its ends', () => {
    const gap = fuel.gaps[0]!;
    const drawn = corners(gapAreas(gap, scale).left!);
    const widthAt = (km: number) =>
      Math.max(...drawn.filter((at) => Math.abs(at.y - yOfKm(km)) < 0.02).map((at) => at.x - scale.baseX));
    expect(widthAt(gap.from.atKm)).toBeCloseTo(gap.departL * 2, 1);
    expect(widthAt(gap.to.atKm)).toBeCloseTo(gap.arriveL * 2, 1);
  });

  test('doubles in width when the scale doubles', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), (pxPerLitre) => {
        const widest = (px: number) =>
          Math.max(...corners(gapAreas(short, { ...scale, pxPerLitre: px }).left!).map((at) => at.x)) - 100;
        expect(widest(2 * pxPerLitre)).toBeCloseTo(2 * widest(pxPerLitre), 1);
      }),
    );
  });

  test('grows to the other side with a negative scale', () => {
    const drawn = corners(gapAreas(short, { ...scale, pxPerLitre: -2 }).left!);
    expect(Math.max(...drawn.map((at) => at.x))).toBe(100);
    expect(Math.min(...drawn.map((at) => at.x))).toBeCloseTo(100 - short.departL * 2, 1);
  });

  test('ends where the reserve begins, the reserve where nothing is left, and the dry stretch takes the rest', () => {
    const { left, reserve, dry } = gapAreas(short, scale);
    const heights = (path: string) => corners(path).map((at) => at.y);
    expect(Math.min(...heights(left!))).toBeCloseTo(yOfKm(short.reserveFromKm!), 1);
    expect(Math.max(...heights(reserve!))).toBeCloseTo(yOfKm(short.reserveFromKm!), 1);
    expect(Math.min(...heights(reserve!))).toBeCloseTo(yOfKm(short.runsDryKm!), 1);
    expect(dry).toEqual({ fromKm: short.runsDryKm, toKm: short.to.atKm });
  });

  test('has neither reserve nor dry stretch where there is enough', () => {
    expect(gapAreas(fuel.gaps[0]!, scale)).toMatchObject({ reserve: null, dry: null });
  });

  test('is all reserve when one sets out below it, all dry when one sets out with nothing', () => {
    const low = { ...short, departL: short.reserveL - 1, reserveFromKm: null, runsDryKm: null };
    expect(gapAreas(low, scale).left).toBeNull();
    const empty = { ...short, departL: 0, reserveFromKm: null, runsDryKm: null };
    expect(gapAreas(empty, scale)).toEqual({
      left: null,
      reserve: null,
      dry: { fromKm: short.from.atKm, toKm: short.to.atKm },
    });
  });

  test('keeps a step: the litres before and after a night at one place', () => {
    const stepped = {
      ...fuel.gaps[0]!,
      levels: [
        { atKm: 0, litres: 60 },
        { atKm: 90, litres: 50 },
        { atKm: 90, litres: 30 },
        { atKm: 180, litres: 20 },
      ],
    };
    expect(levelPoints(stepped, 0, 180).map((point) => point.litres)).toEqual([60, 50, 30, 20]);
    expect(levelPoints(stepped, 90, 180)[0]!.litres).toBe(30);
    expect(levelPoints(stepped, 0, 90).at(-1)!.litres).toBe(50);
  });
});
