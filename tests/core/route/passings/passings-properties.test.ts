import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesicBetween } from '../../../../server/core/geodesy/geodesic.ts';
import { PassingFilter } from '../../../../server/core/route/passings/passing-filter.ts';
import { findPassings } from '../../../../server/core/route/passings/passings.ts';
import { type Corner, onPlain, placeOnPlain, routeThrough } from '../lines.ts';
import { cancelSmallRises } from './brute-force.ts';

const CORRIDOR_M = 5_000;
/** Metres to the centimetre, so that two distances are hardly ever equal: ties are a matter of their own. */
const metres = (reachM: number) =>
  fc.integer({ min: -reachM * 100, max: reachM * 100 }).map((centimetres) => centimetres / 100);
const corner = fc.tuple(metres(9_000), metres(9_000));
const line = fc
  .array(corner, { minLength: 2, maxLength: 14 })
  .map((corners) => corners.map(([x, y]) => onPlain(x, y)));
const points = fc
  .array(fc.tuple(metres(8_000), metres(8_000)), { minLength: 1, maxLength: 6 })
  .map((places) => places.map(([x, y]) => placeOnPlain(x, y)));

const keyed = (passings: ReturnType<typeof findPassings>) =>
  passings
    .map(({ point, atM, offM }) => ({ point, atM, offM }))
    .sort((a, b) => a.point - b.point || a.atM - b.atM);

function expectEqualWithin(
  toleranceM: number,
  got: ReturnType<typeof keyed>,
  wanted: ReturnType<typeof keyed>,
): void {
  expect(got.map(({ point }) => point)).toEqual(wanted.map(({ point }) => point));
  got.forEach(({ atM, offM }, i) => {
    expect(Math.abs(atM - wanted[i]!.atM)).toBeLessThan(toleranceM);
    expect(Math.abs(offM - wanted[i]!.offM)).toBeLessThan(toleranceM);
  });
}

describe('the filter of lows', () => {
  /** A profile that rises and falls in turn, low first and last. */
  const profile = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 400 })), {
      minLength: 1,
      maxLength: 30,
    })
    .chain((pairs) => fc.tuple(fc.constant(pairs), fc.integer({ min: 0, max: 5_000 })))
    .map(([pairs, start]) => {
      let offM = start;
      const lows = [offM];
      const tops: number[] = [];
      for (const [up, down] of pairs) {
        const topM = offM + up * 10;
        offM = Math.max(0, topM - down * 10);
        tops.push(topM);
        lows.push(offM);
      }
      return { lows, tops };
    });

  it('should keep the lows that cancelling the smallest rise first keeps, ties and all', () => {
    fc.assert(
      fc.property(profile, ({ lows, tops }) => {
        const kept: number[] = [];
        const filter = new PassingFilter(CORRIDOR_M, (step) => kept.push(step));
        lows.forEach((offM, i) => {
          filter.low(i, 0, offM);
          if (tops[i] !== undefined) filter.high(tops[i]);
        });
        filter.leave();
        // By the letter, over the lows inside the corridor alone.
        const inside = lows.map((offM, atM) => ({ offM, atM })).filter(({ offM }) => offM <= CORRIDOR_M);
        const between = inside.slice(1).map((low, i) => Math.max(...tops.slice(inside[i]!.atM, low.atM)));
        expect(kept).toEqual(cancelSmallRises(inside, between).map(({ atM }) => atM));
      }),
      { numRuns: 2_000, seed: 4 },
    );
  });
});

describe('passings', () => {
  it('should be mirrored when the route is reversed', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(line, points, (route, places) => {
        const there = routeThrough(route);
        const back = routeThrough([...route].reverse());
        const mirrored = findPassings(back, places, CORRIDOR_M).map((passing) => ({
          ...passing,
          atM: back.lengthM - passing.atM,
        }));
        expectEqualWithin(0.05, keyed(mirrored), keyed(findPassings(there, places, CORRIDOR_M)));
      }),
      { numRuns: 300, seed: 5 },
    );
  });

  it('should not change when steps are split', () => {
    fc.assert(
      fc.property(line, points, fc.integer({ min: 2, max: 7 }), (route, places, pieces) => {
        const split = route.flatMap(([lon, lat], i): Corner[] => {
          const next = route[i + 1];
          if (next === undefined) return [[lon, lat]];
          const placeAt = geodesicBetween(lon, lat, ...next);
          return Array.from({ length: pieces }, (_, k): Corner => {
            const place = placeAt(k / pieces);
            return [place.lon, place.lat];
          });
        });
        const [whole, inPieces] = [routeThrough(route), routeThrough(split)];
        expect(Math.abs(whole.lengthM - inPieces.lengthM)).toBeLessThan(0.001);
        expectEqualWithin(
          0.05,
          keyed(findPassings(inPieces, places, CORRIDOR_M)),
          keyed(findPassings(whole, places, CORRIDOR_M)),
        );
      }),
      { numRuns: 200, seed: 6 },
    );
  });

  it('should each lie inside the corridor and on the route, in route order', () => {
    fc.assert(
      fc.property(line, points, fc.integer({ min: 100, max: 9_000 }), (route, places, corridorM) => {
        const built = routeThrough(route);
        const passings = findPassings(built, places, corridorM);
        passings.forEach(({ atM, offM }, i) => {
          expect(offM <= corridorM && offM >= 0).toBe(true);
          expect(atM >= (passings[i - 1]?.atM ?? 0) && atM <= built.lengthM).toBe(true);
        });
      }),
      { numRuns: 100, seed: 7 },
    );
  });

  it('should not depend on the other points, nor on the turn of the globe that a longitude is written on', () => {
    fc.assert(
      fc.property(line, points, (route, places) => {
        const built = routeThrough(route);
        const together = keyed(findPassings(built, places, CORRIDOR_M));
        const alone = places.flatMap((place, point) =>
          findPassings(built, [{ lon: place.lon - 360, lat: place.lat }], CORRIDOR_M).map((passing) => ({
            ...passing,
            point,
          })),
        );
        expectEqualWithin(1e-5, keyed(alone), together);
      }),
      { numRuns: 100, seed: 8 },
    );
  });
});
