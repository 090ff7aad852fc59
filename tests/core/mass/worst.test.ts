import { describe, expect, test } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { MassReport, MassState, WorstFor } from '../../../server/contract/vehicle.ts';
import { massReport } from '../../../server/core/mass/report/mass-report.ts';
import type { Level } from '../../../server/core/quantity/level.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { rigOf, stateOf } from './rigs.ts';

type Place = readonly [km: number, litres: number];

const levelled = (places: readonly Place[]) => ({
  gaps: [
    {
      departL: places[0]?.[1] ?? 0,
      levels: places.map(([km, litres]): Level => ({ atM: km * 1000, litres })),
    },
  ],
});

/** The report for levels told by hand; km and litres. */
function reportOf(rig: RigFile, fuel: readonly Place[], water: readonly Place[]): MassReport {
  const report = massReport(settleRig(rig).settled, levelled(fuel), levelled(water));
  if (report === null) throw new Error('expected a mass report');
  return toContract(report.mass);
}

const alongOf = ({ states }: MassReport): MassState[] => states.filter(({ kind }) => kind === 'along');

function worstFor(report: MassReport, respect: WorstFor): MassState {
  const found = alongOf(report).filter(({ worstFor: all }) => all.includes(respect));
  expect(found).toHaveLength(1);
  return found[0]!;
}

const tank = (name: string, litres: number, behindFrontAxleM: number, sideM = 0) => ({
  name,
  litres,
  unusableLitres: 0,
  position: { behindFrontAxleM, heightM: 0.6, sideM },
});

/** Diesel, kg a litre, and the vehicle of the rigs: wheelbase and track, m; kerb mass on the front axle, kg. */
const KG_PER_L = 0.845;
const WHEELBASE_M = 2.85;
const TRACK_M = 1.6;
const KERB_FRONT_KG = 1250;
/** What a kg so far behind the front axle puts on it, kg. */
const onFront = (behindM: number) => (WHEELBASE_M - behindM) / WHEELBASE_M;
/** By how much a kg so far to the right loads the right wheels more than the left ones, kg. */
const toTheRight = (sideM: number) => (2 * sideM) / TRACK_M;

/** Water in the middle of the vehicle, as much all the way: half of it on either axle. */
const STEADY_WATER: Place[] = [
  [0, 70],
  [700, 70],
];
const WATER_FRONT_KG = 35;

const FALLING: Place[] = [
  [0, 120],
  [700, 0],
];

describe('the lean to one side', () => {
  test.each([
    ['left', -0.5],
    ['right', 0.5],
  ])('is worst where most of it hangs to the %s', (_side, sideM) => {
    const rig = rigOf({}, { fuel: { tanks: [tank('main', 120, 1.425, sideM)] } });
    const state = worstFor(reportOf(rig, FALLING, STEADY_WATER), 'side');
    expect(state.sideKg).toBeCloseTo(120 * KG_PER_L * toTheRight(sideM), 9);
    expect(state).toMatchObject({ atKm: 0, fuelL: 120 });
  });

  test('is no respect to be worst in where the track is not known, nor is stability', () => {
    const { trackM: _trackM, ...vehicle } = rigOf().vehicle!;
    const { states } = reportOf({ ...rigOf(), vehicle }, FALLING, STEADY_WATER);
    expect(states.flatMap((state) => state.worstFor).sort()).toEqual(['front', 'rear', 'total']);
  });

  test('is found whichever of two water tanks empties first', () => {
    const tanks = [tank('left', 40, 1.425, -0.5), tank('right', 40, 1.425, 0.5)];
    const rig = rigOf({}, { water: { tanks } });
    const report = reportOf(
      rig,
      [
        [0, 100],
        [700, 100],
      ],
      [
        [0, 80],
        [700, 0],
      ],
    );
    const { sideKg, atKm, waterL } = worstFor(report, 'side');
    expect(Math.abs(sideKg!)).toBeCloseTo(40 * toTheRight(0.5), 9);
    expect(atKm).toBeCloseTo(350, 9);
    expect(waterL).toBeCloseTo(40, 9);
  });
});

describe('several fuel tanks', () => {
  const rear = tank('rear', 60, 3.5);
  const front = tank('front', 60, 0.2);
  const worstFront = (tanks: RigFile['fuel']['tanks'], tanksEmpty?: 'in-order' | 'together') =>
    worstFor(
      reportOf(
        rigOf(tanksEmpty === undefined ? {} : { tanksEmpty }, { fuel: { tanks } }),
        FALLING,
        STEADY_WATER,
      ),
      'front',
    );
  /** With the tank behind the rear axle empty and the other one full, halfway. */
  const rearEmptyKg = KERB_FRONT_KG + WATER_FRONT_KG + 60 * KG_PER_L * onFront(0.2);
  const fullKg = rearEmptyKg + 60 * KG_PER_L * onFront(3.5);

  test('in order empty from the first of the list', () => {
    const first = worstFront([rear, front], 'in-order');
    expect(first.front!.kg).toBeCloseTo(rearEmptyKg, 9);
    expect(first.atKm).toBeCloseTo(350, 9);
    expect(first.fuelL).toBeCloseTo(60, 9);
    const last = worstFront([front, rear], 'in-order');
    expect(last.front!.kg).toBeCloseTo(fullKg, 9);
    expect(last.atKm).toBe(0);
  });

  test('together are worst full or empty, in between nowhere', () => {
    expect(worstFront([rear, front], 'together').front!.kg).toBeCloseTo(fullKg, 9);
  });

  test.each([
    ['first', [rear, front]],
    ['last', [front, rear]],
  ])(
    'that nobody told how they empty are reckoned with the %s of the list emptying first',
    (_name, tanks) => {
      const state = worstFront(tanks);
      expect(state.front!.kg).toBeCloseTo(rearEmptyKg, 9);
      expect(state.atKm).toBeCloseTo(350, 9);
    },
  );

  test('bend the loads wherever one of them runs empty', () => {
    const tanks = [tank('a', 40, 1.425, -0.3), tank('b', 40, 1.425, -0.3), tank('c', 40, 1.425, 0.6)];
    const rig = rigOf({ tanksEmpty: 'in-order' }, { fuel: { tanks } });
    const falling: Place[] = [
      [0, 120],
      [600, 0],
    ];
    const state = worstFor(reportOf(rig, falling, STEADY_WATER), 'side');
    expect(state.sideKg).toBeCloseTo(40 * KG_PER_L * toTheRight(0.6), 9);
    expect(state.atKm).toBeCloseTo(400, 9);
    expect(state.fuelL).toBeCloseTo(40, 9);
  });

  test('use less than is in the last of them where little is left', () => {
    const rig = rigOf({ tanksEmpty: 'in-order' }, { fuel: { tanks: [rear, front] } });
    const low: Place[] = [
      [0, 90],
      [300, 30],
    ];
    const { states } = reportOf(rig, low, STEADY_WATER);
    const state = states.find((one) => one.worstFor.includes('front'))!;
    // The last 60 l are all in the front tank, at km 150.
    expect(state.atKm).toBeCloseTo(150, 9);
    expect(state.front!.kg).toBeCloseTo(rearEmptyKg, 9);
  });
});

describe('levels along the route', () => {
  test('that jump where it is filled count on both sides of the jump', () => {
    const filled: Place[] = [
      [0, 60],
      [400, 5],
      [400, 120],
      [700, 90],
    ];
    const state = worstFor(reportOf(rigOf(), filled, STEADY_WATER), 'total');
    expect(state).toMatchObject({ atKm: 400, fuelL: 120, waterL: 70 });
  });

  test('of the other commodity are taken between its places', () => {
    const filled: Place[] = [
      [0, 60],
      [350, 5],
      [350, 120],
      [700, 90],
    ];
    const water: Place[] = [
      [0, 70],
      [700, 0],
    ];
    const state = worstFor(reportOf(rigOf(), filled, water), 'total');
    expect(state.atKm).toBe(350);
    expect(state.waterL).toBeCloseTo(35, 9);
  });

  test('stay as they were last where those of the other commodity go on, and are nothing without any', () => {
    const tanks = [tank('back', 120, 3.5)];
    const rig = rigOf({}, { fuel: { tanks } });
    const brief: Place[] = [
      [0, 70],
      [350, 40],
    ];
    const after = worstFor(reportOf(rig, FALLING, brief), 'front');
    // Nothing behind the rear axle any more outweighs the water used.
    expect(after).toMatchObject({ atKm: 700, fuelL: 0, waterL: 40 });
    expect(after.front!.kg).toBeCloseTo(KERB_FRONT_KG + 20, 9);
    expect(worstFor(reportOf(rig, FALLING, []), 'total')).toMatchObject({ atKm: 0, fuelL: 120, waterL: 0 });
  });

  test('go no lower than nothing, and are nothing from where they run out', () => {
    const tanks = [tank('back', 60, 3.5)];
    const dry: Place[] = [
      [0, 60],
      [600, -60],
    ];
    const water: Place[] = [
      [0, 70],
      [300, 70],
      [300, 0],
      [600, 0],
    ];
    const state = worstFor(reportOf(rigOf({}, { fuel: { tanks } }), dry, water), 'front');
    expect(state.atKm).toBeCloseTo(300, 9);
    expect(state.fuelL).toBeCloseTo(0, 9);
    expect(state.front!.kg).toBeCloseTo(KERB_FRONT_KG + WATER_FRONT_KG, 9);
  });
});

describe('the worst places', () => {
  test('of ties are the first', () => {
    const steady: Place[] = [
      [0, 100],
      [700, 100],
    ];
    for (const { atKm } of alongOf(reportOf(rigOf(), steady, STEADY_WATER))) expect(atKm).toBe(0);
  });

  test('are in route order, each once with all that it is the worst for', () => {
    const tanks = [tank('rear', 60, 3.5, 0.4), tank('front', 60, 0.2)];
    const rig = rigOf({ tanksEmpty: 'in-order' }, { fuel: { tanks } });
    const places = alongOf(reportOf(rig, FALLING, STEADY_WATER));
    // All of it is heaviest, and leans most, full; with low tanks empty the vehicle stands highest.
    expect(places.map(({ atKm, worstFor: all }) => [Math.round(atKm!), all])).toEqual([
      [0, ['total', 'rear', 'side']],
      [350, ['front']],
      [700, ['stability']],
    ]);
  });

  test('are named in route order also where the respects come in another', () => {
    const tanks = [tank('back', 120, 3.5, 0.5)];
    const water: Place[] = [
      [0, 20],
      [100, 10],
      [100, 70],
      [700, 70],
    ];
    const places = alongOf(reportOf(rigOf({}, { fuel: { tanks } }), FALLING, water));
    const kms = places.map(({ atKm }) => atKm!);
    expect(kms).toEqual([...kms].sort((a, b) => a - b));
    expect(places.at(0)!.worstFor).toEqual(['side']);
    expect(places.at(1)).toMatchObject({ atKm: 100, worstFor: ['total', 'rear'] });
  });
});

describe('the working', () => {
  test('names no filling of containers that are empty, and no cans where none are owned', () => {
    const cans = { litres: 20, owned: 2, emptyKg: 4.5 };
    const owning = reportOf(rigOf({}, { fuel: { cans } }), FALLING, STEADY_WATER);
    expect(owning.working.totalKg.every(({ value }) => value !== 0)).toBe(true);
    expect(owning.containers.map(({ path }) => path)).toContain('/fuel/cans');
    const none = reportOf(rigOf({}, { fuel: { cans: { ...cans, owned: 0 } } }), FALLING, STEADY_WATER);
    expect(none.containers.map(({ path }) => path)).not.toContain('/fuel/cans');
    expect(stateOf(none, 'full').totalKg).toBeCloseTo(2600 + 130 * KG_PER_L + 70, 9);
  });
});
