import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canLines } from '../../../web/map/can-lines.ts';
import { mapStyle } from '../../../web/map/map-style.ts';
import { nearestKm } from '../../../web/map/nearest-km.ts';
import { LIGHT } from '../../../web/map/palette.ts';
import { samplePlan } from '../sample-plan.ts';
import { sampleReply } from '../sample-reply.ts';

const { map } = sampleReply();
const [carry] = samplePlan().plan.carries;
/** Straight north, a vertex every hundred kilometres. */
const LINE = {
  coordinates: [0, 1, 2, 3, 4].map((lat) => [10, lat]),
  atKm: [0, 100, 200, 300, 400],
};

describe('the stretches over which cans are carried', () => {
  test('run along the route from the filling to the last pouring', () => {
    const [line] = canLines(LINE, [{ ...carry!, fromKm: 150, toKm: 325 }]);
    expect(line!.properties).toEqual({ commodity: 'fuel', cans: 2 });
    expect(line!.geometry.coordinates).toEqual([
      [10, 1.5],
      [10, 2],
      [10, 3],
      [10, 3.25],
    ]);
  });

  test('repeat no vertex at which they begin or end', () => {
    const [line] = canLines(LINE, [{ ...carry!, fromKm: 100, toKm: 300 }]);
    expect(line!.geometry.coordinates).toHaveLength(3);
  });

  test('are not drawn where they have no length or there is no route', () => {
    expect(canLines(LINE, [{ ...carry!, fromKm: 200, toKm: 200 }])).toEqual([]);
    expect(canLines({ coordinates: [], atKm: [] }, [carry!])).toEqual([]);
  });

  test('begin and end where they were asked to, wherever that is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 399, noNaN: true }),
        fc.double({ min: 0.5, max: 400, noNaN: true }),
        (a, b) => {
          const fromKm = Math.min(a, b);
          const toKm = Math.max(a, b) + 0.1;
          const ends = canLines(LINE, [{ ...carry!, fromKm, toKm }])[0]!.geometry.coordinates;
          const kmOf = (at: number[] | undefined) => nearestKm(LINE, at![0]!, at![1]!);
          expect(kmOf(ends[0])).toBeCloseTo(fromKm, 6);
          expect(kmOf(ends.at(-1))).toBeCloseTo(Math.min(toKm, 400), 6);
        },
      ),
    );
  });

  test('are in the style with a plan, and not without', () => {
    const cansOf = (carries: (typeof carry)[]) =>
      (
        mapStyle(map, LIGHT, { carries: carries.map((each) => each!) }).sources.cans as {
          data: { features: unknown[] };
        }
      ).data.features;
    expect(cansOf([carry])).toHaveLength(1);
    expect(cansOf([])).toEqual([]);
  });
});
