import fc from 'fast-check';
import { expect, it } from 'vitest';
import { positionAt } from '../../../server/core/route/passings/locate.ts';
import { findPassings } from '../../../server/core/route/passings/passings.ts';
import { withFerries } from '../../../server/core/route/with-ferries.ts';
import { routeThrough } from './lines.ts';

const ferry = (fromM: number, toM: number) => ({
  fromM,
  toM,
  id: 'way/1',
  name: null,
  hours: 1,
  isMapped: true,
});
const LINE = routeThrough([
  [10, 45],
  [10.3, 45.1],
  [10.6, 45],
]);

it('a route with a ferry is as long and goes the same way, and no supply is found on the water', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (one, other, at) => {
        const [fromM, toM] = [Math.min(one, other) * LINE.lengthM, Math.max(one, other) * LINE.lengthM];
        const route = withFerries(LINE, [ferry(fromM, toM)]);
        expect(route.lengthM).toBe(LINE.lengthM);
        const place = positionAt(LINE, at * LINE.lengthM);
        const same = positionAt(route, at * LINE.lengthM);
        // A new vertex stands on the straight line in degrees: within 20 cm of the geodesic on steps of 2 km.
        expect(same.lon).toBeCloseTo(place.lon, 5);
        expect(same.lat).toBeCloseTo(place.lat, 5);
        for (const { atM } of findPassings(route, [place], 5000))
          expect(atM <= fromM + 1 || atM >= toM - 1).toBe(true);
      },
    ),
    { numRuns: 100 },
  );
});

it.each([
  ['between vertices', 1234, 8765],
  ['from vertex to vertex', LINE.atM[1] ?? 0, LINE.atM[4] ?? 0],
])(
  'has a vertex at both ends of a ferry %s, and is not searched from the one to the other',
  (_, fromM, toM) => {
    const { atM, unsought } = withFerries(LINE, [ferry(fromM, toM)]);
    expect([atM.includes(fromM), atM.includes(toM)]).toEqual([true, true]);
    const aboard = Array.from(unsought, (isUnsought, step) =>
      isUnsought === 1 ? [atM[step], atM[step + 1]] : [],
    );
    const ends = aboard.flat();
    expect([ends[0], ends.at(-1)]).toEqual([fromM, toM]);
    expect(unsought.reduce((sum, one) => sum + one, 0)).toBe(atM.indexOf(toM) - atM.indexOf(fromM));
  },
);

it('takes no straight line for a doubt where a ferry goes it', () => {
  const sparse = { ...LINE, sketchy: [{ kind: 'bridge' as const, fromM: 1000, toM: 9000 }] };
  expect(withFerries(sparse, [ferry(2000, 8000)]).sketchy).toEqual([
    { kind: 'bridge', fromM: 1000, toM: 2000 },
    { kind: 'bridge', fromM: 8000, toM: 9000 },
  ]);
  expect(withFerries(sparse, [ferry(1000, 9500)]).sketchy).toEqual([]);
  expect(withFerries(sparse, [])).toBe(sparse);
});
