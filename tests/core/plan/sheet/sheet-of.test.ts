import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { HaltSupply, Plan } from '../../../../server/contract/plan.ts';
import type { RigFile } from '../../../../server/contract/rig.ts';
import type { TripFile } from '../../../../server/contract/trip.ts';
import { type AnalyseInput, reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { DIESEL, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { oneFailure, planCarry } from '../by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options = () => ({ solver, seconds: 30, clock: () => 0 });

function planned(input: AnalyseInput) {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return { reckoned: outcome.value, ...planCarry(outcome.value, options()) };
}

const COMMODITIES = ['fuel', 'water'] as const;

/** As the crow flies; so near that nobody fills cans to save the way there. */
const OFF_KM = 0.3;
/** From the village's pump to the one behind, the way there included. */
const TO_NEXT_KM = 400 + OFF_KM * 1.3;

/** A pump and a tap in one village, 2 km apart, a tap before, and a pump a little off the route behind. */
const FEATURES = [
  pointFeature('node/1', 300, TAP),
  pointFeature('node/2', 500, {
    ...DIESEL,
    name: 'Village pump',
    phone: '0123',
    opening_hours: 'Mo-Su 06:00-20:00',
  }),
  pointFeature('node/3', 502, { ...TAP, name: 'Village tap' }),
  pointFeature('node/4', 900, DIESEL, OFF_KM),
  pointFeature('node/5', 900, TAP),
];

const tripOf = (changes: Partial<TripFile>): TripFile => ({ ...inputOf().trip, ...changes });

/** The halt at a place, to the kilometre. */
const haltAt = ({ sheet }: Pick<Plan, 'sheet'>, km: number) =>
  sheet.find(({ atKm }) => Math.round(atKm) === km)!;

const halts = (plan: Pick<Plan, 'sheet'>) =>
  plan.sheet.map(({ kind, atKm }) => `${kind} ${Math.round(atKm)}`);

describe('the sheet of a plan', () => {
  it('has the start, each stop that is used and the end, both commodities of a stop in one row', () => {
    const { plan } = planned(inputOf({ features: FEATURES }));
    expect(halts(plan)).toEqual(['start 0', 'stop 300', 'stop 500', 'stop 900', 'end 1340']);
    const village = haltAt(plan, 500);
    expect([village.fuel?.at.name, village.water?.at.name]).toEqual(['Village pump', 'Village tap']);
    expect(village.fuel?.contact).toEqual({
      phone: '0123',
      website: null,
      openingHours: 'Mo-Su 06:00-20:00',
    });
  });

  it('has the telephone number noted last of that supply, and of no other', () => {
    const phoneWith = (confirmations: NonNullable<TripFile['confirmations']>) => {
      const { plan } = planned(inputOf({ features: FEATURES, trip: tripOf({ confirmations }) }));
      return haltAt(plan, 500).fuel?.contact?.phone;
    };
    const noted = (id: string, on: string, phone: string) => ({ id, on, works: true, phone });
    expect(phoneWith([noted('node/4', '2026-11-02', '99')])).toBe('0123');
    expect(phoneWith([noted('node/2', '2026-11-02', '77'), noted('node/2', '2026-11-01', '66')])).toBe('77');
  });

  it('says what goes into which container, where the cans are poured, and what comes next', () => {
    const { plan } = planned(inputOf({ features: FEATURES }));
    const { fuel } = haltAt(plan, 500);
    // 17 l/100 km: 85 l of 127 to km 500, tank filled up for 400 km.
    expect(fuel?.arriveL).toBeCloseTo(42, 6);
    expect(fuel?.into).toEqual([{ into: 'tank', name: 'main', count: 1, litres: fuel!.fillL }]);
    expect(fuel?.fillL).toBeCloseTo(85, 6);
    expect([fuel?.leaveL, fuel?.cansFull, fuel?.next?.lengthKm]).toEqual([127, 0, expect.closeTo(400, 6)]);
    // The water from km 900 takes cans: they go in one by one, as the tank has room.
    const { water } = haltAt(plan, 900);
    const last = plan.legs.water.at(-1)!;
    expect([water?.cansFull, water?.pourAtKm.length]).toEqual([last.cans, last.cans]);
    expect(last.cans).toBeGreaterThan(0);
    expect(water?.into.at(-1)).toEqual({
      into: 'cans',
      name: null,
      count: last.cans,
      litres: 20 * last.cans,
    });
  });

  it('tells two tanks apart where the rig says how they empty, and not where it does not', () => {
    const tanks = [
      { name: 'main', litres: 70, unusableLitres: 3 },
      { name: 'rear', litres: 63, unusableLitres: 3 },
    ];
    const fuel = { ...EXAMPLE_RIG.fuel, tanks };
    const into = (rig: RigFile) =>
      planned(inputOf({ features: FEATURES, rig })).plan.sheet[2]!.fuel!.into.map(({ name }) => name);
    expect(into({ ...EXAMPLE_RIG, fuel })).toEqual([null]);
    const vehicle = { kerbKg: 2500, tanksEmpty: 'in-order' } as const;
    // The first empties first: at 42 l the rear one still has 42 of its 60.
    const inOrder = planned(inputOf({ features: FEATURES, rig: { ...EXAMPLE_RIG, fuel, vehicle } })).plan
      .sheet[2]!;
    expect(inOrder.fuel!.into).toEqual([
      { into: 'tank', name: 'main', count: 1, litres: expect.closeTo(67, 6) },
      { into: 'tank', name: 'rear', count: 1, litres: expect.closeTo(18, 6) },
    ]);
  });

  it('costs what was told of prices, a stop’s own before that of all; nothing where none is', () => {
    const cost = (plan: NonNullable<TripFile['plan']>) => {
      const { sheet, totals } = planned(inputOf({ features: FEATURES, trip: tripOf({ plan }) })).plan;
      return { stops: sheet.slice(2, -1).map(({ fuel }) => fuel!.cost), totals: totals! };
    };
    expect(cost({}).stops).toEqual([null, null]);
    expect(cost({}).totals.filled.fuel.cost).toBeNull();
    const told = cost({
      pricePerLitre: { fuel: 2 },
      currency: 'crowns',
      stops: [{ id: 'node/4', pricePerLitre: { fuel: 3 } }],
    });
    // 85 l at km 500; then the way to km 900.
    expect(told.stops).toEqual([expect.closeTo(170, 6), expect.closeTo(3 * 0.17 * TO_NEXT_KM, 3)]);
    expect(told.totals.filled.fuel.cost).toBeCloseTo(170 + 3 * 0.17 * TO_NEXT_KM, 3);
    expect(told.totals.currency).toBe('crowns');
  });

  it('sums up litres, detours, waiting and days', () => {
    const stops = [{ id: 'node/2', waitHours: 25 }];
    const { plan: withoutWaits, reckoned } = planned(inputOf({ features: FEATURES }));
    const plain = withoutWaits.totals!;
    // Without cans the pump cannot be passed by to save the wait.
    const plan = { stops, mostCans: { fuel: 0 } };
    const waiting = planned(inputOf({ features: FEATURES, trip: tripOf({ plan }) })).plan.totals!;
    expect(plain.drivingKm).toBeCloseTo(2 * OFF_KM * 1.3, 2);
    expect(plain.days).toBeCloseTo(reckoned.analysis.days.elapsedDays.slow + (2 * OFF_KM * 1.3) / 245, 4);
    // 35 km/h for 7 hours a day: the hour over the day is a seventh of the day's driving.
    expect(waiting.waitHours - plain.waitHours).toBe(25);
    expect(waiting.days - plain.days).toBeCloseTo(1 + 1 / 7, 6);
    expect(plain.filled.fuel.stopsL).toBeCloseTo(85 + 0.17 * TO_NEXT_KM, 2);
  });

  it('says by when to call for help: with as much water left as help takes to come', () => {
    const trip = tripOf({ helpHours: 24, alarmHours: 12, departure: '2027-05-03', departureHour: 8 });
    const { plan } = planned(inputOf({ features: FEATURES, trip }));
    const [start] = plan.sheet;
    const { afterHours, by } = start!.water!.alarm!;
    // 18 l a day: what is aboard lasts so many days; help takes one of them.
    expect(afterHours).toBeCloseTo((start!.water!.leaveL! / 18 - 1) * 24, 6);
    const told = new Date(Date.UTC(2027, 4, 3, 8) + Math.round(afterHours * 60) * 60_000);
    expect(by).toBe(told.toISOString().slice(0, 16));
    expect(start!.fuel!.alarm).toBeNull();
    // Without a day of departure there is no time by the clock.
    const { departure: _, ...undated } = tripOf({ helpHours: 24, alarmHours: 12 });
    const [unclocked] = planned(inputOf({ features: FEATURES, trip: undated })).plan.sheet;
    expect(unclocked!.water!.alarm).toEqual({ afterHours: expect.closeTo(afterHours, 6), by: null });
    const untold = planned(inputOf({ features: FEATURES })).plan.sheet[0]!;
    expect(untold.water!.alarm).toBeNull();
  });

  it('gives the day of a halt, and times as far as date and hour are told', () => {
    const times = (trip: Partial<TripFile>) =>
      planned(inputOf({ features: FEATURES, trip: tripOf(trip) })).plan.sheet[2]!.time;
    // 500 km at 60 km/h and at 35, 7 hours a day: 8.3 h and 14.3 h of driving, raised for bends where that is told.
    expect(times({})).toMatchObject({ firstDay: 2, lastDay: 3 });
    expect(times({ departure: '2027-05-03' }).span).toEqual({ earliest: '2027-05-04', latest: '2027-05-05' });
    const { span } = times({ departure: '2027-05-03', departureHour: 8 });
    expect(span!.earliest.slice(0, 11)).toBe('2027-05-04T');
    expect(span!.latest.slice(0, 11)).toBe('2027-05-05T');
  });

  it('is that of the legs, of both plans, on any route', { tags: 'slow' }, () => {
    const kinds = fc.constantFrom(DIESEL, TAP);
    const point = fc.record({
      km: fc.integer({ min: 1, max: 1339 }),
      offKm: fc.constantFrom(0, 0, 3),
      tags: kinds,
    });
    const owned = fc.integer({ min: 0, max: 6 });
    let safePlans = 0;
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 3, maxLength: 9 }),
        owned,
        owned,
        (points, fuelCans, waterCans) => {
          const features = points.map(({ km, offKm, tags }, index) =>
            pointFeature(`node/${index}`, km, tags, offKm),
          );
          const cans = (count: number) => ({ litres: 20, owned: count });
          const rig = {
            ...EXAMPLE_RIG,
            fuel: { ...EXAMPLE_RIG.fuel, cans: cans(fuelCans) },
            water: { ...EXAMPLE_RIG.water, cans: cans(waterCans) },
          };
          const { reckoned, plan, driven } = planned(inputOf({ features, rig }));
          if (driven === null) return;
          sameAsLegs(plan);
          const safe = oneFailure(reckoned, driven, options());
          if (safe.status !== 'found') return;
          safePlans += 1;
          sameAsLegs(safe);
        },
      ),
      { numRuns: 60, seed: 20_261_130 },
    );
    expect(safePlans).toBeGreaterThan(5);
  });
});

/** Halts in the order of the road, and at each what its legs say. */
function sameAsLegs({ sheet, legs, totals }: Pick<Plan, 'sheet' | 'legs' | 'totals'>): void {
  const places = sheet.map(({ atKm }) => atKm);
  expect(places).toEqual([...places].sort((a, b) => a - b));
  for (const commodity of COMMODITIES) {
    const own = sheet.flatMap(({ [commodity]: supply }) => (supply === null ? [] : [supply]));
    expect(own).toHaveLength(legs[commodity].length + 1);
    own.forEach((supply, index) => {
      const arriving = legs[commodity][index - 1];
      const leaving = legs[commodity][index];
      expect(supply.arriveL).toBe(arriving?.arriveL ?? null);
      expect(supply.leaveL).toBe(leaving?.departL ?? null);
      expect(supply.cansFull).toBe(leaving?.cans ?? 0);
      expect(supply.turnBackKm).toBe(leaving?.turnBackKm ?? null);
      expect(supply.next?.at).toEqual(leaving?.to);
      fillsUp(supply);
    });
    const stopsL = own.filter(({ at }) => at.kind === 'passing').reduce((sum, { fillL }) => sum + fillL, 0);
    expect(totals?.filled[commodity].stopsL).toBeCloseTo(stopsL, 6);
  }
}

/** What is filled is what one leaves with beyond what one came with, container by container. */
function fillsUp({ arriveL, leaveL, fillL, into }: HaltSupply): void {
  if (leaveL === null) {
    expect(into).toEqual([]);
    return;
  }
  if (arriveL !== null) expect(fillL).toBeCloseTo(leaveL - arriveL, 6);
  expect(into.reduce((sum, { litres }) => sum + litres, 0)).toBeCloseTo(fillL, 6);
}
