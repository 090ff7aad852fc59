import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Evidence } from '../../server/contract/common.ts';
import { VERDICT_RANK } from '../../server/core/gaps/verdict.ts';
import type { MappedFeature } from '../../server/core/input/sources.ts';
import { analysisOf, documentOf, inputOf, WORLD_COVER } from '../helpers/analyse-input.ts';

const SOME_TAGS: Record<string, string>[] = [
  { amenity: 'fuel', 'fuel:diesel': 'yes' },
  { amenity: 'fuel' },
  { amenity: 'fuel', 'fuel:octane_95': 'yes' },
  { amenity: 'drinking_water' },
  { man_made: 'water_tap' },
  { man_made: 'water_well' },
  { natural: 'spring', drinking_water: 'yes' },
];

/** A winding route of some 200 km with steps of about 1.1 km, headings turning by at most a quarter each step. */
const winding = fc
  .array(fc.double({ min: -0.8, max: 0.8, noNaN: true }), { minLength: 60, maxLength: 160 })
  .map((turns) => {
    let heading = 0;
    let [lon, lat] = [20, -25];
    const points: [number, number][] = [[lon, lat]];
    for (const turn of turns) {
      heading += turn;
      lon += 0.011 * Math.cos(heading);
      lat += 0.01 * Math.sin(heading);
      points.push([lon, lat]);
    }
    return points;
  });

const scattered = fc.array(
  fc.record({
    along: fc.double({ min: 0, max: 1, noNaN: true }),
    east: fc.double({ min: -0.08, max: 0.08, noNaN: true }),
    north: fc.double({ min: -0.08, max: 0.08, noNaN: true }),
    tags: fc.constantFrom(...SOME_TAGS),
  }),
  { maxLength: 12 },
);

const world = fc.record({ route: winding, marks: scattered }).map(({ route, marks }) => ({
  route,
  features: marks.map(({ along, east, north, tags }, index): MappedFeature => {
    const [lon, lat] = route[Math.floor(along * (route.length - 1))]!;
    return {
      id: `node/${index + 1}`,
      geometry: { type: 'Point', coordinates: [lon + east, lat + north] },
      tags,
      editedAt: null,
    };
  }),
}));

const analysed = (
  route: [number, number][],
  features: MappedFeature[],
  trip: Partial<ReturnType<typeof inputOf>['trip']> = {},
): Analysis => analysisOf({ document: documentOf([route]), features, trip: { ...inputOf().trip, ...trip } });

const RUNS = { numRuns: 60 };

describe('an analysis', () => {
  test('should tile the route with the gaps of each commodity', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(world, ({ route, features }) => {
        const analysis = analysed(route, features);
        for (const { gaps } of [analysis.fuel, analysis.water]) {
          const sum = gaps.reduce((total, gap) => total + gap.lengthKm, 0);
          expect(sum).toBeCloseTo(analysis.route.lengthKm, 9);
          gaps.slice(1).forEach((gap, index) => {
            expect(gap.from).toEqual(gaps[index]!.to);
          });
        }
      }),
      RUNS,
    );
  });

  test('should never count a point more when the level of evidence is raised', { tags: 'slow' }, () => {
    const levels: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
    fc.assert(
      fc.property(world, ({ route, features }) => {
        const counted = levels.map((level) =>
          analysed(route, features, { counting: { fuel: level, water: level } })
            .passings.filter((passing) => passing.counts)
            .map((passing) => `${passing.id} ${passing.commodity} ${passing.atKm}`),
        );
        counted.slice(1).forEach((some, index) => {
          expect(counted[index]).toEqual(expect.arrayContaining(some));
        });
      }),
      RUNS,
    );
  });

  test('should list the same passings, counting or not, at every level of evidence', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(world, ({ route, features }) => {
        const placesAt = (level: Evidence) =>
          analysed(route, features, { counting: { fuel: level, water: level } }).passings.map(
            (passing) => `${passing.id} ${passing.atKm}`,
          );
        expect(placesAt('confirmed')).toEqual(placesAt('doubtful'));
      }),
      RUNS,
    );
  });

  test('should never get a longer longest gap from one more point', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(world, ({ route, features }) => {
        const longest = (some: MappedFeature[]) => {
          const report = analysed(route, some).fuel;
          return report.gaps[report.longest]!.lengthKm;
        };
        expect(longest(features)).toBeLessThanOrEqual(longest(features.slice(1)) + 1e-9);
      }),
      RUNS,
    );
  });

  test('should mirror passings and keep its length when the route is reversed', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(world, ({ route, features }) => {
        const there = analysed(route, features);
        const back = analysed([...route].reverse(), features);
        expect(back.route.lengthKm).toBeCloseTo(there.route.lengthKm, 6);
        const lengthKm = there.route.lengthKm;
        // Random doubles make no ties, so every passing has its mirror, a metre at most away.
        const inOrder = (passings: Analysis['passings'], km: (atKm: number) => number) =>
          passings
            .map((one) => ({ id: `${one.id} ${one.commodity}`, km: km(one.atKm), off: one.offRouteKm }))
            .sort((a, b) => a.id.localeCompare(b.id) || a.km - b.km);
        const mirrored = inOrder(there.passings, (atKm) => lengthKm - atKm);
        const reversed = inOrder(back.passings, (atKm) => atKm);
        expect(reversed.map((one) => one.id)).toEqual(mirrored.map((one) => one.id));
        reversed.forEach((one, index) => {
          expect(Math.abs(one.km - mirrored[index]!.km)).toBeLessThan(1e-3);
          expect(Math.abs(one.off - mirrored[index]!.off)).toBeLessThan(1e-3);
        });
      }),
      RUNS,
    );
  });

  test('should change nothing when a step is split in two on the line between its ends', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(world, fc.nat(50), ({ route, features }, where) => {
        const [a, b] = [route[where]!, route[where + 1]!];
        const middle: [number, number] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const split = [...route.slice(0, where + 1), middle, ...route.slice(where + 1)];
        const plain = analysed(route, features);
        const more = analysed(split, features);
        expect(more.passings.map((one) => one.id)).toEqual(plain.passings.map((one) => one.id));
        more.passings.forEach((passing, index) => {
          // The chord's middle lies some centimetres off the geodesic of a kilometre.
          expect(Math.abs(passing.atKm - plain.passings[index]!.atKm)).toBeLessThan(1e-3);
        });
        expect(more.fuel.gaps.map((gap) => gap.verdict)).toEqual(plain.fuel.gaps.map((gap) => gap.verdict));
      }),
      RUNS,
    );
  });

  test('should never turn from short or unknown to enough when cover is taken away', { tags: 'slow' }, () => {
    const thirsty = { aboard: { fuelLitres: 20, waterLitres: 30 } };
    fc.assert(
      fc.property(world, fc.double({ min: 19, max: 23, noNaN: true }), ({ route, features }, east) => {
        const covered = (cover: typeof WORLD_COVER) =>
          analysisOf({
            document: documentOf([route]),
            supplies: { extracts: [], features, cover, skipped: [], cautions: [] },
            trip: { ...inputOf().trip, ...thirsty },
          });
        const halved = WORLD_COVER.map((area) => ({
          ...area,
          rings: area.rings.map((ring) =>
            ring.map(([lon, lat]): [number, number] => [Math.min(lon, east), lat]),
          ),
        }));
        const whole = covered(WORLD_COVER);
        const half = covered(halved);
        for (const commodity of ['fuel', 'water'] as const) {
          whole[commodity].gaps.forEach((gap, index) => {
            const bare = half[commodity].gaps[index]!;
            expect(VERDICT_RANK[bare.verdict]).toBeLessThanOrEqual(
              gap.verdict === 'short' ? VERDICT_RANK.unknown : VERDICT_RANK[gap.verdict],
            );
          });
        }
      }),
      RUNS,
    );
  });
});
