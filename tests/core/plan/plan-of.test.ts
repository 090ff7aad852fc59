import { beforeAll, describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import type { AnalyseInput } from '../../../server/core/analyse/analyse.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import {
  DIESEL,
  documentOf,
  equatorDocument,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { reckoned } from '../../helpers/reckoned.ts';
import { oneFailure, planCarry, stopFailsRows } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const options = () => ({ solver, seconds: 30, clock: () => 0 });
const planOf = (input: AnalyseInput) => planCarry(reckoned(input), options());

/** 1,340 km in 5.5 days: taps every 200 km, so that water is no matter. */
const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));

describe('the plan of a trip', () => {
  const empty: MipSolver = () => ({
    status: 'out-of-time',
    values: null,
    objective: Number.NaN,
    bound: Number.NaN,
  });

  it('says that the time ran out where nothing was found in it, and plans nothing', () => {
    // The only pump gives little: what is to be had over it is for the solver to tell.
    const trip: TripFile = { plan: { stops: [{ id: 'node/1', mostLitres: { fuel: 120 } }] } };
    const input = inputOf({ features: [...TAPS, pointFeature('node/1', 640, DIESEL)], trip });
    const { plan, driven, tooFewCans } = planCarry(reckoned(input), { ...options(), solver: empty });
    expect(plan).toMatchObject({
      status: 'out-of-time',
      cans: { fuel: 0, water: 0 },
      stops: [],
      legs: { fuel: [], water: [] },
      carries: [],
      breaks: [],
    });
    expect([driven, tooFewCans]).toEqual([null, false]);
  });

  it('knows of no leg across a closed stretch that it holds, and of every other as before', () => {
    const features = [...TAPS, pointFeature('node/1', 640, DIESEL, 2)];
    const verdicts = (trip: Partial<TripFile>) => {
      const { plan } = planOf(inputOf({ features, trip: { ...inputOf().trip, ...trip } }));
      return (['fuel', 'water'] as const).flatMap((commodity) =>
        plan.legs[commodity].map(({ from, to, verdict }) => ({ fromKm: from.atKm, toKm: to.atKm, verdict })),
      );
    };
    const open = verdicts({});
    expect(new Set(open.map(({ verdict }) => verdict))).toEqual(new Set(['enough']));
    const shut = open.map((leg) =>
      leg.fromKm < 650 && leg.toKm > 645 ? { ...leg, verdict: 'unknown' as const } : leg,
    );
    expect(verdicts({ closed: [{ fromKm: 645, toKm: 650, on: '2026-04-20' }] })).toEqual(shut);
    expect(shut.filter(({ verdict }) => verdict === 'unknown')).toHaveLength(2);
  });

  it('needs no solver where every supply gives all that is wanted', () => {
    const input = inputOf({ features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2)] });
    const { plan } = planCarry(reckoned(input), { ...options(), solver: empty });
    expect(plan).toEqual(planOf(input).plan);
    expect(plan.aims.every(({ proven }) => proven)).toBe(true);
  });

  it('passes by a pump that gives little where the solver finds nothing in its time, and calls nothing proven', () => {
    const trip: TripFile = { plan: { stops: [{ id: 'node/2', mostLitres: { fuel: 20 } }] } };
    const features = [...TAPS, pointFeature('node/1', 640, DIESEL, 2), pointFeature('node/2', 700, DIESEL)];
    const { plan } = planCarry(reckoned(inputOf({ features, trip })), { ...options(), solver: empty });
    expect(plan.status).toBe('found');
    expect(plan.legs.fuel.map(({ to }) => to.id)).toEqual(['node/1', null]);
    expect(plan.aims.filter(({ value }) => value > 0).some(({ proven }) => proven)).toBe(false);
  });

  it('carries from the pump of the worked example what its second gap is short of', () => {
    // The gap's margin there is -9.442 l: one can of 20 l.
    const { plan } = planOf(inputOf({ features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2)] }));
    expect(plan.status).toBe('found');
    expect(plan.cans).toEqual({ fuel: 1, water: 0 });
    expect(plan.legs.fuel.map(({ cans }) => cans)).toEqual([0, 1]);
    expect(plan.legs.fuel[1]!.marginL).toBeCloseTo(20 - 9.442, 3);
    const [carry] = plan.carries;
    expect(carry).toMatchObject({ commodity: 'fuel', cans: 1, litres: 20 });
    // Poured when 20 l are gone: 2.6 km to the route are among them.
    expect(carry!.pourAtKm[0]).toBeCloseTo(640 + 20 / 0.17 - 2.6, 2);
    const stop = plan.stops.flatMap(({ passings }) => passings).find(({ id }) => id === 'node/1');
    expect(stop).toMatchObject({ used: true, cansFull: 1 });
    expect(stop!.fillL).toBeCloseTo(109.242 + 20, 3);
  });

  it('moves to no supply of weaker evidence to save cans', () => {
    const features = [
      ...TAPS,
      pointFeature('node/1', 640, DIESEL),
      // A kind only: with it no can would be needed.
      pointFeature('node/2', 1000, { amenity: 'fuel' }),
    ];
    const { plan } = planOf(inputOf({ features }));
    expect(plan.cans.fuel).toBe(1);
    const used = plan.stops
      .flatMap(({ passings }) => passings)
      .filter((one) => one.used && one.commodity === 'fuel');
    expect(used.map(({ id }) => id)).toEqual(['node/1']);
  });

  it('passes by what the user tells it to, and says what it rests on', () => {
    const input = inputOf({
      features: [...TAPS, pointFeature('node/1', 640, DIESEL), pointFeature('node/2', 660, DIESEL)],
    });
    const { onward: _onward, ...trip } = input.trip;
    const { plan } = planOf({ ...input, trip: { ...trip, plan: { passBy: ['node/1'] } } });
    const ids = plan.legs.fuel.map(({ to }) => to.id);
    expect(ids).toEqual(['node/2', null]);
    expect(plan.restsOn.map(({ code }) => code)).toContain('plan-onward-unknown');
  });

  it('keeps both grades of water in its levels, and they add up', () => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      water: {
        tanks: [
          { name: 'under floor', litres: 70 },
          { name: 'shower', litres: 30, grade: 'washing' },
        ],
        cans: { litres: 20, owned: 4 },
        reserve: { days: 1 },
      },
      crew: { people: [{ count: 2 }] },
    };
    const { plan } = planOf(inputOf({ rig, features: [...TAPS, pointFeature('node/1', 640, DIESEL)] }));
    expect(plan.status).toBe('found');
    // Two tanks of water and nothing said of how they empty; fuel has one tank.
    for (const { tankL, tanksL } of plan.levels.fuel) expect(tanksL).toEqual([tankL]);
    for (const level of plan.levels.water) expect(level).not.toHaveProperty('tanksL');
    for (const level of plan.levels.fuel) expect(level).not.toHaveProperty('drinkableL');
    for (const { drinkableL, washingL, totalL } of plan.levels.water) {
      expect(drinkableL! + washingL!).toBeCloseTo(totalL, 6);
      expect(drinkableL!).toBeGreaterThanOrEqual(-1e-6);
    }
  });

  it('has the level of each tank where the rig tells in which order they empty', () => {
    const fuel = {
      ...EXAMPLE_RIG.fuel,
      tanks: [
        { name: 'main', litres: 90, unusableLitres: 3 },
        { name: 'second', litres: 40 },
      ],
    };
    const vehicle = { kerbKg: 2000, tanksEmpty: 'in-order' as const };
    const { plan } = planOf(
      inputOf({
        rig: { ...EXAMPLE_RIG, fuel, vehicle },
        features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2)],
      }),
    );
    expect(plan.status).toBe('found');
    expect(plan.levels.fuel[0]!.tanksL).toEqual([87, 40]);
    for (const { tankL, tanksL } of plan.levels.fuel) {
      expect(tanksL![0]! + tanksL![1]!).toBeCloseTo(tankL, 9);
      // The first is drawn from until it is empty.
      if (tankL < 40 - 1e-6) expect(tanksL![0]).toBe(0);
      else expect(tanksL![1]).toBeCloseTo(40, 6);
    }
  });
});

/** The worked example without cans: its second gap is 9.442 l short. */
const NO_CANS: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 0 } } };
const PUMP = pointFeature('node/1', 640, DIESEL, 2);

function inputWith(plan: TripFile['plan'], rig: RigFile = NO_CANS, features = [...TAPS, PUMP]): AnalyseInput {
  const input = inputOf({ rig, features });
  return { ...input, trip: { ...input.trip, ...(plan === undefined ? {} : { plan }) } };
}

describe('cans to get', () => {
  it('has the fewest cans more where those that are owned are too few', () => {
    const { plan, tooFewCans } = planOf(inputWith(undefined));
    expect(plan.status).toBe('found');
    expect(tooFewCans).toBe(true);
    expect(plan.cans).toEqual({ fuel: 1, water: 0 });
    expect(plan.mostCans).toEqual({ fuel: 1, water: 2 });
    expect(plan.getCans).toEqual({ fuel: 1, water: 0 });
    expect(plan.aims.every(({ proven }) => proven)).toBe(true);
    const caution = plan.restsOn.find(({ code }) => code === 'plan-cans-to-get');
    expect(toContract(caution!).text).toBe('1 more fuel can is to be got: none is owned.');
  });

  it('counts those beyond the owned ones where the trip allows more', () => {
    const rig = { ...NO_CANS, fuel: { ...NO_CANS.fuel, cans: { litres: 5, owned: 1 } } };
    const { plan, tooFewCans } = planOf(inputWith({ mostCans: { fuel: 3 } }, rig));
    // 9.442 l are two cans of 5 l.
    expect(plan.getCans).toEqual({ fuel: 1, water: 0 });
    expect(tooFewCans).toBe(false);
    const more = planOf(
      inputWith(undefined, { ...rig, fuel: { ...rig.fuel, cans: { litres: 2, owned: 3 } } }),
    );
    expect(more.plan.getCans.fuel).toBe(2);
    const caution = more.plan.restsOn.find(({ code }) => code === 'plan-cans-to-get');
    expect(toContract(caution!).text).toBe('2 more fuel cans are to be got: 3 are owned.');
  });

  it('passes no limit of the trip, and none where cans would stand inside', () => {
    expect(planOf(inputWith({ mostCans: { fuel: 0 } })).plan).toMatchObject({
      status: 'none',
      getCans: { fuel: 0, water: 0 },
      mostCans: { fuel: 0, water: 2 },
    });
    const vehicle = { kerbKg: 2400, cabin: { fromM: 0.7, toM: 2.6, floorHeightM: 0.65, roofHeightM: 1.95 } };
    const at = (behindFrontAxleM: number): RigFile => ({
      ...NO_CANS,
      vehicle,
      fuel: { ...NO_CANS.fuel, cans: { litres: 20, owned: 0, position: { behindFrontAxleM, heightM: 1 } } },
    });
    expect(planOf(inputWith({ noneInside: true }, at(2))).plan.status).toBe('none');
    expect(planOf(inputWith({ noneInside: true }, at(3.7))).plan.getCans.fuel).toBe(1);
    const untold = planOf(inputWith({ noneInside: true }, NO_CANS)).plan;
    expect(untold.getCans.fuel).toBe(1);
    expect(untold.restsOn.map(({ code }) => code)).toContain('can-place-unknown');
  });

  it('holds the evidence before the cans once it is settled how many there are', () => {
    // By the kind alone at km 1000 no can is needed; with none to get the plan must hang on it.
    const features = [...TAPS, PUMP, pointFeature('node/2', 1000, { amenity: 'fuel' })];
    const { plan, tooFewCans } = planOf(inputWith(undefined, NO_CANS, features));
    expect(tooFewCans).toBe(false);
    expect(plan.legs.fuel.map(({ to }) => to.id)).toContain('node/2');
    expect(plan.getCans).toEqual({ fuel: 0, water: 0 });
  });

  it('gets cans of both commodities, the fewest of each, whose own mass the fuel goes by', () => {
    const rig: RigFile = {
      ...NO_CANS,
      fuel: { ...NO_CANS.fuel, cans: { litres: 5, owned: 0 } },
      water: { ...NO_CANS.water, cans: { litres: 10, owned: 1 } },
    };
    const { plan } = planOf(inputWith(undefined, rig, [PUMP, pointFeature('node/9', 640, TAP)]));
    expect(plan.status).toBe('found');
    // Km 640 to 1,340 is 2.86 days, so 3 of 18 l, with the reserve 90 l: 70 in the tank, 2 cans of 10 l.
    expect(plan.cans).toEqual({ fuel: 2, water: 2 });
    expect(plan.getCans).toEqual({ fuel: 2, water: 1 });
    const fewer = {
      ...inputWith({ mostCans: { fuel: 1, water: 2 } }, rig, [PUMP, pointFeature('node/9', 640, TAP)]),
    };
    expect(planOf(fewer).plan.status).toBe('none');
  });

  it('gets as many as it takes where the pump gives less than is wanted', { tags: 'slow' }, () => {
    const filled = (fuel: number) =>
      planOf(inputWith({ stops: [{ id: 'node/1', mostLitres: { fuel } }] })).plan;
    // 37.758 l arrive and 98 l more are 0.7 l too few; with 20 l more from the start they are enough. A can gets its 20 l
    // before the tanks: so no litre of 100 is left behind.
    expect(filled(98)).toMatchObject({ status: 'found', getCans: { fuel: 2, water: 0 } });
    expect(filled(100)).toMatchObject({ status: 'found', getCans: { fuel: 1, water: 0 } });
    expect(filled(130)).toMatchObject({ status: 'found', getCans: { fuel: 1, water: 0 } });
  });

  it('says so where cans would help but break a permitted mass', () => {
    const heavy = (totalKg: number): RigFile => ({
      ...NO_CANS,
      vehicle: { kerbKg: 2400, permitted: { totalKg } },
    });
    const enough = planOf(inputWith(undefined, heavy(3500))).plan;
    expect(enough.status).toBe('found');
    // With full tanks at the start an empty can of 4.7 kg is too much by 2.
    const atStartKg = enough.masses![0]!.totalKg;
    const { plan } = planOf(inputWith(undefined, heavy(atStartKg - 2)));
    expect(plan.status).toBe('none');
    expect(plan.breaks.map(({ cause }) => cause)).toEqual(['fuel', 'mass']);
  });
});

describe('where there is no plan', () => {
  it('says which stretch breaks it and by how much', () => {
    const { plan } = planOf(inputWith({ mostCans: { fuel: 0 } }));
    expect(plan.status).toBe('none');
    expect(plan.breaks).toHaveLength(1);
    expect(plan.breaks[0]).toMatchObject({ cause: 'fuel', from: { id: 'node/1' }, to: { kind: 'end' } });
    expect(plan.breaks[0]!.missingL).toBeCloseTo(9.442, 3);
  });

  it('goes on from the end of each broken stretch, for either commodity', () => {
    // 110 l last for 647 km: the first two stretches of 700 km are broken, the last of 300 km is not. Without taps
    // until km 900 water is broken once: three nights and 165 km are 57.5 l of 50, with no reserve. From there to km
    // 1,300 it is 45.4 h and 34 l, on to km 1,700 28.4 h and 21 l.
    const features = [
      pointFeature('node/1', 700, DIESEL),
      pointFeature('node/2', 1400, DIESEL),
      pointFeature('node/3', 900, TAP),
      pointFeature('node/4', 1300, TAP),
    ];
    const tanks = [{ name: 'under floor', litres: 50 }];
    const rig = { ...NO_CANS, water: { ...NO_CANS.water, tanks, reserve: { litres: 0 } } };
    const input = inputOf({ document: equatorDocument(1700), rig, features });
    const plan = { mostCans: { fuel: 0, water: 0 } };
    const { breaks } = planOf({ ...input, trip: { ...input.trip, plan } }).plan;
    expect(
      breaks.map(({ cause, from, to }) =>
        [cause, from!.atKm, to!.atKm].map((each) => (typeof each === 'number' ? Math.round(each) : each)),
      ),
    ).toEqual([
      ['fuel', 0, 700],
      ['fuel', 700, 1400],
      ['water', 0, 900],
    ]);
    // 136 l with the reserve, 127 aboard.
    expect(breaks[0]!.missingL).toBeCloseTo(0.17 * 700 + 17 - 127, 3);
    expect(breaks[2]!.missingL).toBeCloseTo(18 * (3 + 165 / 35 / 24) - 50, 6);
  });
});

describe('published rules', () => {
  /** 90 l and 15 l/100 km, no cans, a reserve; water is no matter. */
  const status = (lengthKm: number, reserve: RigFile['fuel']['reserve']) => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: {
        kind: 'diesel',
        litresPer100Km: { low: 15, typical: 15, high: 15 },
        tanks: [{ name: 'main', litres: 90 }],
        reserve: reserve!,
      },
      water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'under floor', litres: 500 }] },
    };
    const input = inputOf({ document: equatorDocument(lengthKm), rig });
    return planOf({ ...input, trip: { ...input.trip, plan: { mostCans: { fuel: 0 } } } }).plan.status;
  };

  it.each([
    // Check-values P21: passes if the gap is at most (1 - r) V / c x 100.
    { fraction: 1 / 3, km: 400 },
    { fraction: 0.1, km: 540 },
    { fraction: 0, km: 600 },
  ])('a reserve of $fraction of 90 l gives $km km and no more (P21; P19 for thirds)', ({ fraction, km }) => {
    expect(status(km - 0.1, { fraction })).toBe('found');
    expect(status(km + 0.1, { fraction })).toBe('none');
  });

  it('a contingency of 5 % of the trip fuel comes off the range (P18)', () => {
    const km = 600 / 1.05;
    expect(status(km - 0.1, { shareOfNeed: 0.05 })).toBe('found');
    expect(status(km + 0.1, { shareOfNeed: 0.05 })).toBe('none');
  });
});

describe('against one failure', () => {
  it('shows what it costs beside the plain plan, and where to go when each stop fails', () => {
    const features = [...TAPS, pointFeature('node/1', 500, DIESEL), pointFeature('node/2', 900, DIESEL)];
    const input = inputOf({ features });
    const trip = reckoned(input);
    const { driven: held } = planCarry(trip, options());
    const safe = oneFailure(trip, held!, options());
    expect(safe.status).toBe('found');
    expect(safe.failures.length).toBe(safe.legs.fuel.length + safe.legs.water.length - 2);
    expect(safe.moreCans.fuel).toBeGreaterThanOrEqual(0);
    for (const { arriveL } of safe.failures) expect(arriveL).toBeGreaterThanOrEqual(0);
  });

  it('never sends the crew from a station that fails on to the same station', () => {
    // 200 km, a spur of 100 km north and back, 300 km: the one station is passed 40 km up the spur, and coming back.
    const spur: [number, number][] = [
      [0, 0],
      [1.8, 0],
      [1.8, 0.9],
      [1.8, 0],
      [4.5, 0],
    ];
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: {
        kind: 'diesel',
        litresPer100Km: { low: 8, typical: 9, high: 10 },
        tanks: [{ name: 'main', litres: 45 }],
        cans: { litres: 20, owned: 2 },
        reserve: { km: 50, shareOfNeed: 0 },
      },
      water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'under floor', litres: 500 }] },
    };
    const station: MappedFeature = {
      id: 'node/1',
      geometry: { type: 'Point', coordinates: [1.8, 0.36] },
      tags: DIESEL,
      editedAt: null,
    };
    const input = inputOf({ document: documentOf([spur]), rig, features: [station] });
    const trip = {
      ...input.trip,
      detourFactor: 1,
      routeIsRoad: true,
      plan: { fillAtStart: { fuel: false } },
    };
    const planned = reckoned({ ...input, trip });
    expect(planned.analysis.passings.filter(({ id, counts }) => id === 'node/1' && counts)).toHaveLength(2);
    const { plan, driven } = planCarry(planned, options());
    expect(plan.status).toBe('found');
    if (driven === null) throw new Error('no plan to begin with');
    const safe = oneFailure(planned, driven, options());
    // From the start 45 l are 450 km: neither the end, at km 700, nor the start again is reached with the reserve.
    expect(safe.status).toBe('none');
    expect(safe.breaks).toHaveLength(1);
    const [row, ...rest] = stopFailsRows(basisOf(planned, driven));
    expect(rest).toEqual([]);
    expect(row).toMatchObject({ id: 'node/1', verdict: 'short', to: { kind: 'end' }, instead: null });
  });

  it('takes fewer cans where the reserve may be spent on a failure', () => {
    // 700 km are 119 of 127 l, 17 in reserve; one pump half way. Where it fails 119 l take the vehicle on, as they do back.
    const rig = {
      ...EXAMPLE_RIG,
      water: { ...EXAMPLE_RIG.water, tanks: [{ name: 'under floor', litres: 500 }] },
    };
    const input = inputOf({
      document: equatorDocument(700),
      rig,
      features: [pointFeature('node/1', 350, DIESEL)],
    });
    const fuelCans = (spendReserveOnFailure: boolean) => {
      const plan = { mostCans: { fuel: 0, water: 0 }, spendReserveOnFailure };
      const trip = reckoned({ ...input, trip: { ...input.trip, plan } });
      const { driven } = planCarry(trip, options());
      if (driven === null) throw new Error('no plan to begin with');
      const { status, spendsReserve, cans } = oneFailure(trip, driven, options());
      return { status, spendsReserve, cans: cans.fuel };
    };
    expect(fuelCans(true)).toEqual({ status: 'found', spendsReserve: true, cans: 0 });
    expect(fuelCans(false)).toEqual({ status: 'found', spendsReserve: false, cans: 1 });
  });
});
