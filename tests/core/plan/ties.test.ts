import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../../server/contract/plan.ts';
import { reckonTrip } from '../../../server/core/analyse/analyse.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { planCarry } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const DOCUMENT = equatorDocument(1200, 4);

function planOf(features: MappedFeature[]) {
  const outcome = reckonTrip(inputOf({ document: DOCUMENT, rig: EXAMPLE_RIG, features }));
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  const { plan } = planCarry(outcome.value, { solver, seconds: 30, clock: () => 0 });
  const stops = plan.stops.map((stop) => ({ ...stop, passings: [...stop.passings].sort(byPlaceThenId) }));
  return { ...plan, stops };
}

type Shown = Pick<Plan['stops'][number]['passings'][number], 'atKm' | 'id' | 'commodity'>;
const nameOf = ({ id, commodity }: Shown) => `${id} ${commodity}`;
/** Passings at one place are listed as the extracts list them. */
const byPlaceThenId = (a: Shown, b: Shown) => a.atKm - b.atKm || nameOf(a).localeCompare(nameOf(b));

interface Place {
  km: number;
  offKm: number;
  tags: Record<string, string>;
  /** So many objects there, the same in all but their ids. */
  alike: number;
}

const place: fc.Arbitrary<Place> = fc.record({
  km: fc.integer({ min: 2, max: 59 }).map((twenty) => twenty * 20),
  offKm: fc.constantFrom(0, 0, 1, 3),
  tags: fc.constantFrom(DIESEL, DIESEL, { amenity: 'fuel' }, TAP, TAP, {
    ...DIESEL,
    drinking_water: 'yes',
  }),
  alike: fc.constantFrom(1, 1, 2, 3),
});

const featuresOf = (places: readonly Place[]): MappedFeature[] =>
  places.flatMap(({ km, offKm, tags, alike }, index) =>
    Array.from({ length: alike }, (_, nth) => pointFeature(`node/${nth + 1}${index}`, km, tags, offKm)),
  );

describe('the same trip', () => {
  it('gets the same plan in whatever order the extracts list their objects', { tags: 'slow' }, () => {
    let found = 0;
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 4, maxLength: 12 }).chain((places) => {
          const features = featuresOf(places);
          return fc.tuple(
            fc.constant(features),
            fc.shuffledSubarray(features, { minLength: features.length, maxLength: features.length }),
          );
        }),
        ([features, shuffled]) => {
          const plan = planOf(features);
          if (plan.status === 'found') found += 1;
          expect(planOf(shuffled)).toEqual(plan);
        },
      ),
      { numRuns: 20, seed: 20_270_105 },
    );
    expect(found).toBeGreaterThan(6);
  });

  it('gets the same plan when it is asked for again, and another trip in between', { tags: 'slow' }, () => {
    const features = featuresOf([
      { km: 300, offKm: 1, tags: DIESEL, alike: 3 },
      { km: 320, offKm: 1, tags: DIESEL, alike: 1 },
      { km: 600, offKm: 0, tags: DIESEL, alike: 2 },
      ...[200, 400, 600, 800, 1000].map((km) => ({ km, offKm: 0, tags: TAP, alike: 2 })),
    ]);
    const plan = planOf(features);
    expect(plan.status).toBe('found');
    planOf(features.slice(2));
    expect(planOf(features)).toEqual(plan);
  });

  it('fills no more than once at a place where several supplies are alike', () => {
    const stops = [200, 400, 600, 800, 1000].map((km) => ({ km, offKm: 0, tags: TAP, alike: 3 }));
    const pumps = [300, 600, 900].map((km) => ({ km, offKm: 0, tags: DIESEL, alike: 3 }));
    const { legs } = planOf(featuresOf([...stops, ...pumps]));
    for (const of of [legs.fuel, legs.water]) {
      const places = of.map(({ to }) => Math.round(to.atKm));
      expect(new Set(places).size).toBe(places.length);
    }
  });
});
