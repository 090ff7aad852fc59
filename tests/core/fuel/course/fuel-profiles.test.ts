import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import { SURFACES, type Surface } from '../../../../server/contract/surface.ts';
import { fuelProfiles, routeLitres } from '../../../../server/core/fuel/course/fuel-profiles.ts';
import { liftL } from '../../../../server/core/fuel/engine/lift.ts';
import { relativeFactor, SURFACE_FACTORS } from '../../../../server/core/fuel/engine/surface-factors.ts';
import { amountBetween, sumBefore } from '../../../../server/core/gaps/course/profile.ts';
import { massWithFullTanks } from '../../../../server/core/mass/mass-at.ts';
import {
  analysisOf,
  DIESEL,
  equatorDocument,
  inputOf,
  pointFeature,
} from '../../../helpers/analyse-input.ts';
import { courseOf, EXAMPLE_RIG } from '../../../helpers/course.ts';
import { type FuelDetail, factsOf, heightsOver, rigWith } from '../facts.ts';

const LENGTH_M = 100_000;
const whole = (facts: Parameters<typeof factsOf>[0], rate: 'low' | 'typical' | 'high' = 'high') =>
  amountBetween(fuelProfiles(factsOf(facts), rate).out, 0, facts?.lengthM ?? LENGTH_M);

const anySurface = fc.constantFrom(...SURFACES);
const anySurfaces = fc.array(
  fc
    .record({
      ends: fc.tuple(
        fc.double({ min: 0, max: 99, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
      ),
      surface: anySurface,
    })
    .map(({ ends: [fromKm, km], surface }) => ({ fromKm, toKm: fromKm + km, surface })),
  { maxLength: 6 },
);
const anyHeights = fc
  .array(fc.double({ min: -100, max: 3000, noNaN: true }), { minLength: 2, maxLength: 60 })
  .map((eles) => heightsOver(LENGTH_M, eles));
const anyDetail: fc.Arbitrary<FuelDetail> = fc.record({
  observed: fc.record({ surface: anySurface, massKg: fc.double({ min: 1000, max: 8000, noNaN: true }) }),
  perHour: fc.record({
    idling: fc.double({ min: 0, max: 4, noNaN: true }),
    crawling: fc.double({ min: 0, max: 9, noNaN: true }),
  }),
  hours: fc.record({
    idlingPerDay: fc.double({ min: 0, max: 5, noNaN: true }),
    heaterPerNight: fc.double({ min: 0, max: 9, noNaN: true }),
  }),
  climb: fc.record({ giveBack: fc.double({ min: 0, max: 1, noNaN: true }) }),
});
const anyStops = fc
  .array(
    fc.record({ atM: fc.integer({ min: 0, max: LENGTH_M - 1 }), days: fc.integer({ min: 1, max: 3 }) }),
    { maxLength: 3 },
  )
  .map((stays) => stays.sort((a, b) => a.atM - b.atM));
const anyFacts = fc.record({
  detail: anyDetail,
  surfaces: anySurfaces,
  heights: anyHeights,
  stays: anyStops,
  nights: fc.array(fc.record({ atM: fc.integer({ min: 0, max: LENGTH_M - 1 }), nights: fc.constant(1) }), {
    maxLength: 3,
  }),
});

describe('the terms of a stretch', () => {
  test('have what goes by the hour in litres, beside the way at its rate', () => {
    // A heater of 0.3 l/h for ten hours of one night: 3 l.
    const detail = { perHour: { heater: 0.3 }, hours: { heaterPerNight: 10 } };
    const { explain } = fuelProfiles(factsOf({ detail, nights: [{ atM: 50_000, nights: 1 }] }), 'high');
    expect(explain(0, LENGTH_M).map(({ label, value, unit }) => [label, value, unit])).toEqual([
      [expect.objectContaining({ phrase: 'way-at-rate' }), expect.closeTo(17, 9), 'l'],
      [{ phrase: 'by-the-hour', facts: {} }, expect.closeTo(3, 9), 'l'],
    ]);
  });
});

describe('fuel along a route', () => {
  test('with nothing but a rate is the even course to the last bit', () => {
    const stays = [{ atM: 30_000, days: 2 }];
    const sketchy = [{ kind: 'sparse' as const, fromM: 20_000, toM: 41_000 }];
    for (const allowancePercent of [0, 5, 7.3]) {
      const even = courseOf({
        lengthM: LENGTH_M,
        stays,
        sketchy,
        allowanceFactor: 1 + allowancePercent / 100,
      });
      const full = fuelProfiles(
        factsOf({
          stays,
          sketchy,
          allowancePercent,
          nights: [{ atM: 5000, nights: 1 }],
          heights: heightsOver(LENGTH_M, [0, 900]),
        }),
        'high',
      );
      expect(full.out).toEqual(even.litres.out);
      expect(full.home).toEqual(even.litres.home);
      expect(full.wayM).toEqual(even.wayM);
      expect((1 + allowancePercent / 100) * full.offLPerWayM).toBe(even.off.litres);
      // The even course multiplies where the full one sums: the label is the same, the value to 1e-12.
      const [fullTerm, evenTerm] = [full.explain(10_000, 70_000)[0]!, even.explain(10_000, 70_000)[0]!];
      expect(toContract(fullTerm).label).toBe(toContract(evenTerm).label);
      expect(fullTerm.value).toBeCloseTo(evenTerm.value, 12);
    }
  });

  test('a rig that says no more gives the same gaps as one that says what it comes to anyway', () => {
    const features = [pointFeature('node/1', 640, DIESEL, 2)];
    const plain = analysisOf({ features });
    const told = analysisOf({ features, rig: rigWith({ observed: { surface: 'unknown' } }) });
    expect(told.fuelUse.model).toBe('full');
    expect(plain.fuelUse.model).toBe('even');
    const figures = (report: typeof plain.fuel) => report.gaps.map(({ working: _, ...gap }) => gap);
    expect(figures(told.fuel)).toEqual(figures(plain.fuel));
  });

  test('takes each stretch at its surface, with the allowance of that surface', () => {
    const surfaces = [
      { fromKm: 0, toKm: 40, surface: 'sand' as const },
      { fromKm: 30, toKm: 60, surface: 'sealed' as const },
    ];
    // 30 km of sand × 1.3 at 17 × 1.5, 30 km of road × 1.03 at 17, 40 km unknown × 1.05 at 17 × 1.15.
    const litres = (30 * 1.3 * 1.5 + 30 * 1.03 + 40 * 1.05 * 1.15) * 0.17;
    expect(whole({ surfaces, allowancePercent: 5, detail: { observed: { surface: 'sealed' } } })).toBeCloseTo(
      litres,
      9,
    );
  });

  test('counts the larger of per kilometre and per hour on slow stretches', () => {
    // 35 km/h: 7 l/h are 20 l/100 km, more than 17 on the level road, less than 17 × 1.5 in sand.
    const detail: FuelDetail = { observed: { surface: 'sealed' }, perHour: { crawling: 7 } };
    const on = (surface: Surface) =>
      whole({ detail, surfaces: [{ fromKm: 0, toKm: 100, surface, allowancePercent: 0 }] });
    expect(on('sealed')).toBeCloseTo(20, 9);
    expect(on('sand')).toBeCloseTo(25.5, 9);
  });

  test('adds litres by the hour: idling and cooling as days pass, cooling on days of halt, heating at night', () => {
    const detail: FuelDetail = {
      perHour: { idling: 1, airConditioning: 2, heater: 0.5 },
      hours: { idlingPerDay: 1, airConditioningPerDay: 3, heaterPerNight: 8 },
    };
    const facts = factsOf({
      detail,
      stays: [{ atM: 50_000, days: 2 }],
      nights: [{ atM: 50_000, nights: 2 }],
    });
    const { out, home } = fuelProfiles(facts, 'high');
    const days = 100 / (7 * 35);
    expect(amountBetween(out, 0, LENGTH_M)).toBeCloseTo(17 + days * 7 + 2 * 6 + 2 * 4, 9);
    expect(amountBetween(home, 0, LENGTH_M)).toBeCloseTo(17 + days * 7, 9);
    // The halt's litres go at the halt.
    expect(sumBefore(out, 50_000)).toBeCloseTo(8.5 + (days / 2) * 7, 9);
  });

  test('raises the rate for load above the observed mass, and lowers it for none below', () => {
    const detail: FuelDetail = { observed: { massKg: 2500 }, loadPercentPer100Kg: 1.5 };
    expect(whole({ detail, massKg: 2900 })).toBeCloseTo(17 * 1.06, 9);
    expect(whole({ detail, massKg: 2500 })).toBeCloseTo(17, 9);
    expect(whole({ detail, massKg: 2000 })).toBeCloseTo(17, 9);
  });

  test('the load default is 1 % for 100 lb of an average car of 1,600 kg, less for a heavier vehicle', () => {
    const percent = (massKg: number) =>
      factsOf({ detail: { observed: { massKg } } }).rig.fuel.model.loadPercentPer100Kg!;
    // The load published: 100 lb are 45.359237 kg.
    expect((percent(1600) * 45.359237) / 100).toBeCloseTo(1, 12);
    expect(percent(3200)).toBeCloseTo(percent(1600) / 2, 12);
  });

  test('climbs cost on the way out what they spare on the way home', () => {
    const heights = heightsOver(LENGTH_M, [0, 500, 1000]);
    const detail: FuelDetail = { observed: { massKg: 3000 }, climb: { efficiency: 0.35, giveBack: 0.3 } };
    const { out, home } = fuelProfiles(factsOf({ detail, heights }), 'high');
    // 2.335 l for 1,000 m (check-values F11).
    expect(amountBetween(out, 0, LENGTH_M)).toBeCloseTo(17 + 2.335, 2);
    expect(amountBetween(home, 0, LENGTH_M)).toBeCloseTo(17 - 0.3 * 2.335, 2);
  });

  test('a descent never spares more than four fifths of what the way takes', () => {
    const heights = heightsOver(LENGTH_M, [8000, 0]);
    const detail: FuelDetail = { observed: { massKg: 40_000 }, climb: { giveBack: 1 } };
    expect(whole({ detail, heights })).toBeCloseTo(17 * 0.2, 9);
  });
});

describe('fuel along any route', () => {
  test('should never fall along the way, out or home', () => {
    fc.assert(
      fc.property(anyFacts, (changes) => {
        const { out, home } = fuelProfiles(factsOf(changes), 'high');
        for (const { atM, sum } of [out, home]) {
          for (let index = 1; index < sum.length; index += 1) {
            expect(atM[index]!).toBeGreaterThanOrEqual(atM[index - 1]!);
            expect(sum[index]! - sum[index - 1]!).toBeGreaterThanOrEqual(-1e-9);
          }
        }
      }),
    );
  });

  test('should have terms that sum to the litres of any stretch', () => {
    const anyEnds = fc.tuple(fc.integer({ min: 0, max: LENGTH_M }), fc.integer({ min: 0, max: LENGTH_M }));
    fc.assert(
      fc.property(anyFacts, anyEnds, (changes, ends) => {
        const [fromM, toM] = [Math.min(...ends), Math.max(...ends)];
        const { out, explain } = fuelProfiles(factsOf(changes), 'high');
        const sum = explain(fromM, toM).reduce((total, term) => total + term.value, 0);
        expect(sum).toBeCloseTo(amountBetween(out, fromM, toM), 8);
      }),
    );
  });

  test('should come to the same total with and without its profile', () => {
    fc.assert(
      fc.property(
        anyFacts,
        fc.constantFrom('low' as const, 'typical' as const, 'high' as const),
        (changes, rate) => {
          const facts = factsOf(changes);
          const { litres } = routeLitres(facts, rate);
          expect(amountBetween(fuelProfiles(facts, rate).out, 0, LENGTH_M)).toBeCloseTo(litres, 8);
        },
      ),
    );
  });

  test('should never take less with more mass', () => {
    const anyMasses = fc.tuple(
      fc.double({ min: 500, max: 9000, noNaN: true }),
      fc.double({ min: 500, max: 9000, noNaN: true }),
    );
    fc.assert(
      fc.property(anyFacts, anyMasses, fc.boolean(), (changes, masses, told) => {
        const detail = told ? changes.detail : { ...changes.detail, observed: {} };
        const at = (massKg: number) => routeLitres(factsOf({ ...changes, detail, massKg }), 'high').litres;
        expect(at(Math.max(...masses))).toBeGreaterThanOrEqual(at(Math.min(...masses)) - 1e-9);
      }),
    );
  });

  test('should never take less for one more hour of anything', () => {
    fc.assert(
      fc.property(anyFacts, (changes) => {
        const more = {
          ...changes,
          detail: {
            ...changes.detail,
            hours: { idlingPerDay: 6, airConditioningPerDay: 2, heaterPerNight: 10 },
          },
        };
        expect(routeLitres(factsOf(more), 'high').litres).toBeGreaterThanOrEqual(
          routeLitres(factsOf(changes), 'high').litres - 1e-9,
        );
      }),
    );
  });
});

describe('a rate and the surface it was learned on', () => {
  test('should not be raised for that surface again', () => {
    fc.assert(
      fc.property(anySurface, (surface) => {
        expect(relativeFactor(SURFACE_FACTORS, surface, surface)).toBe(1);
        const detail: FuelDetail = { observed: { surface } };
        const surfaces = [{ fromKm: 0, toKm: 100, surface, allowancePercent: 0 }];
        expect(whole({ detail, surfaces })).toBeCloseTo(17, 9);
      }),
    );
  });

  test('a rate learned in sand is lowered for a road by sand’s factor', () => {
    const surfaces = [{ fromKm: 0, toKm: 100, surface: 'sealed' as const, allowancePercent: 0 }];
    expect(whole({ detail: { observed: { surface: 'sand' } }, surfaces })).toBeCloseTo(17 / 1.5, 9);
  });

  test('is never lowered where the surface of either is not known', () => {
    for (const surface of SURFACES) {
      expect(relativeFactor(SURFACE_FACTORS, surface, 'unknown')).toBeGreaterThanOrEqual(1);
      expect(relativeFactor(SURFACE_FACTORS, 'unknown', surface)).toBeGreaterThanOrEqual(1);
    }
  });
});

describe('an analysis with fuel in full', () => {
  const document = () => {
    const route = equatorDocument(1340);
    const [segment] = route.parts[0]!.segments;
    segment!.ele = Float64Array.from(segment!.lon, (_, index) => 600 + 500 * Math.sin(index / 40));
    return route;
  };
  const rig = rigWith({ observed: { surface: 'gravel', massKg: 3000 }, hours: { idlingPerDay: 1 } });
  const trip = {
    ...inputOf().trip,
    surfaces: [
      { fromKm: 200, toKm: 500, surface: 'sand' as const },
      { fromKm: 1300, toKm: 1300.5, surface: 'mud' as const },
      { fromKm: 1400, toKm: 1500, surface: 'mud' as const },
    ],
  };

  test('has gaps whose needs sum to the litres of the route', () => {
    const features = [pointFeature('node/1', 300, DIESEL), pointFeature('node/2', 900, DIESEL)];
    const { fuel, fuelUse } = analysisOf({ document: document(), rig, trip, features });
    const needL = fuel.gaps.reduce((sum, gap) => sum + gap.needL, 0);
    expect(fuelUse.model).toBe('full');
    expect(needL).toBeCloseTo(fuelUse.routeL.high, 6);
    expect(fuelUse.terms.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(needL, 6);
    for (const gap of fuel.gaps) {
      expect(gap.working.needL.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(gap.needL, 6);
    }
    expect(fuelUse.routeL.low).toBeLessThan(fuelUse.routeL.typical);
    expect(fuelUse.routeL.typical).toBeLessThan(fuelUse.routeL.high);
  });

  test('turns back where out and home, each with its own climbs, use up what may be used', () => {
    const { fuel } = analysisOf({ document: document(), rig, trip });
    const [gap] = fuel.gaps;
    expect(gap!.verdict).toBe('short');
    // On the level it would be km (127 - 17) / 34 × 100 = 323.5; sand and climbs bring it nearer.
    expect(gap!.turnBackKm).toBeLessThan(323);
    expect(gap!.turnBackKm).toBeGreaterThan(200);
  });

  test('water goes by the longer way over open ground, too', () => {
    const day = (surfaces: typeof trip.surfaces) =>
      analysisOf({ trip: { ...trip, surfaces } }).water.gaps[0]!.wayKm;
    expect(day(trip.surfaces)).toBeCloseTo(day([]) + 300 * 0.3 + 0.5 * 0.1, 6);
    const { fuel, water } = analysisOf({ trip });
    expect(fuel.gaps[0]!.wayKm).toBeCloseTo(water.gaps[0]!.wayKm, 6);
  });

  test('says which factors of ours came to bear, and what lies past the end', () => {
    const { assumptions, cautions } = analysisOf({ document: document(), rig, trip });
    const paths = assumptions.map(({ path }) => path);
    expect(paths).toContain('/rig/fuel/surfaceFactors/sand');
    expect(paths).not.toContain('/rig/fuel/surfaceFactors/rock');
    expect(assumptions).toContainEqual({
      path: '/trip/surfaces',
      value: 'sand: 30 % for bends',
      why: 'ours',
    });
    expect(cautions.find(({ code }) => code === 'surface-off-route')?.text).toMatch(/km 1400/);
  });

  test('says that climbs are not reckoned where the mass is not told, and where there are no elevations', () => {
    const codes = (changes: Parameters<typeof analysisOf>[0]) =>
      analysisOf(changes).cautions.map(({ code }) => code);
    expect(codes({ document: document() })).toContain('climb-not-reckoned');
    expect(codes({ document: document(), rig })).not.toContain('climb-not-reckoned');
    expect(codes({ rig })).toContain('climb-unknown');
    expect(codes({})).not.toContain('climb-unknown');
  });

  test('the vehicle’s mass with full tanks lifts, and raises the rate above the observed mass', () => {
    const vehicle = { kerbKg: 2600 };
    const analysedWith = (fuel: FuelDetail, kerbKg?: number) =>
      analysisOf({
        document: document(),
        rig: { ...rigWith(fuel), ...(kerbKg === undefined ? {} : { vehicle: { ...vehicle, kerbKg } }) },
      });
    const light = analysedWith({ observed: { massKg: 2600 } }, 2600);
    const heavy = analysedWith({ observed: { massKg: 2600 } }, 3000);
    expect(light.fuelUse.load?.massKg).toBe(massWithFullTanks(light.rig));
    expect(heavy.fuelUse.load!.massKg - light.fuelUse.load!.massKg).toBeCloseTo(400, 9);
    expect(heavy.fuelUse.load!.factor).toBeCloseTo(
      1 + ((heavy.fuelUse.load!.massKg - 2600) / 100) * (heavy.fuelUse.load!.percentPer100Kg / 100),
      12,
    );
    expect(heavy.fuelUse.routeL.high).toBeGreaterThan(light.fuelUse.routeL.high);
    // Without the observed mass there is no raise for load, but there are climbs, and descents spare nothing.
    const untold = analysedWith({}, 2600);
    const upM = untold.fuelUse.climb!.upM;
    expect(untold.fuelUse.load).toBeNull();
    expect(untold.cautions.map(({ code }) => code)).toContain('load-not-reckoned');
    expect(untold.fuelUse.climb?.litres).toBeCloseTo(liftL(massWithFullTanks(untold.rig)!, upM, 0.35, 36), 6);
    expect(analysedWith({}).fuelUse.climb?.litres).toBeNull();
  });

  test('heating goes for every night, a stay at the end of the route included', () => {
    const heated = rigWith({ perHour: { heater: 0.5 }, hours: { heaterPerNight: 8 } });
    const needL = (stays: { atKm: number; days: number }[]) =>
      analysisOf({ rig: heated, trip: { ...inputOf().trip, stays } }).fuel.gaps[0]!.needL;
    // 1,340 km at 245 km a day end the day five times on the way.
    expect(needL([])).toBeCloseTo(13.4 * 17 + 5 * 4, 6);
    expect(needL([{ atKm: 1340, days: 2 }])).toBeCloseTo(13.4 * 17 + 7 * 4, 6);
  });

  test('a filling limit takes from what tanks and cans give', () => {
    const filled = analysisOf({
      rig: {
        ...EXAMPLE_RIG,
        fuel: {
          ...EXAMPLE_RIG.fuel,
          tanks: [{ name: 'main', litres: 130, unusableLitres: 3, fillPercent: 90 }],
          cans: { litres: 20, owned: 4, fillPercent: 95 },
        },
      },
    });
    expect(filled.fuel.capacityL).toBeCloseTo(114, 12);
    expect(filled.fuel.canL).toBeCloseTo(19, 12);
  });
});
