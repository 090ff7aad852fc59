import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { type AnalyseInput, type Reckoned, reckonTrip } from '../../../server/core/analyse.ts';
import type { MipSolver } from '../../../server/core/carry/mip.ts';
import { oneFailure } from '../../../server/core/carry/one-failure.ts';
import { planCarry } from '../../../server/core/carry/plan-of.ts';
import { waysOut } from '../../../server/core/carry/ways-out.ts';
import { problemLine } from '../../../server/core/problem.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

function reckoned(input: AnalyseInput): Reckoned {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(problemLine(outcome.problem));
  return outcome.value;
}

const options = () => ({ solver, seconds: 30, clock: () => 0 });
const planOf = (input: AnalyseInput) => planCarry(reckoned(input), options());
const waysOutOf = (input: AnalyseInput) =>
  waysOut({
    ...options(),
    until: 1,
    reckoned: reckoned(input),
    reckon: (rig: RigFile) => reckonTrip({ ...input, rig }),
  }).ways;

/** 1,340 km in 5.5 days: taps every 200 km, so that water is no matter. */
const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));

describe('the plan of a trip', () => {
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
    for (const { drinkableL, washingL, totalL } of plan.levels.water) {
      expect(drinkableL! + washingL!).toBeCloseTo(totalL, 6);
      expect(drinkableL!).toBeGreaterThanOrEqual(-1e-6);
    }
  });
});

describe('where there is no plan', () => {
  // Without cans the second gap is 9.442 l short.
  const noCans: RigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, cans: { litres: 20, owned: 0 } } };
  const input = (more: AnalyseInput['supplies']['features'] = []) =>
    inputOf({ rig: noCans, features: [...TAPS, pointFeature('node/1', 640, DIESEL, 2), ...more] });

  it('says which stretch breaks it and by how much', () => {
    const { plan } = planOf(input());
    expect(plan.status).toBe('none');
    expect(plan.breaks).toHaveLength(1);
    expect(plan.breaks[0]).toMatchObject({ cause: 'fuel', from: { id: 'node/1' }, to: { kind: 'end' } });
    expect(plan.breaks[0]!.missingL).toBeCloseTo(9.442, 3);
  });

  it('finds one can more, and a depot that each make a plan when tried', () => {
    const found = waysOutOf(input());
    expect(found.map(({ kind }) => kind)).toEqual(['more-cans', 'depot']);
    const [cans, depot] = found;
    expect(cans).toMatchObject({ amount: 1, unit: 'cans', cans: { fuel: 1, water: 0 } });
    // One diesel can of 20 l, 4.7 kg empty (K2), 845 kg/m3 (F1).
    expect(cans!.moreKg).toBeCloseTo(4.7 + 20 * 0.845, 9);
    const most = input();
    const withCan = planOf({ ...most, trip: { ...most.trip, plan: { mostCans: { fuel: 1 } } } });
    expect(withCan.plan.status).toBe('found');
    // The latest place: 110 l last for 647.06 km, 2.6 of them back to the route.
    expect(depot!.atKm).toBeCloseTo(640 + (127 - 17) / 0.17 - 2.6, 0);
    // 17 l aboard there; on to the end and the reserve of 17 l.
    expect(depot!.amount).toBe(Math.ceil((1340 - depot!.atKm!) * 0.17 - 1e-6));
  });

  it('offers a doubtful point only to telephone first, and never a smaller reserve', () => {
    const found = waysOutOf(input([pointFeature('node/5', 1000, { 'disused:amenity': 'fuel' })]));
    const other = found.filter(({ kind }) => kind === 'other-stop');
    expect(other).toHaveLength(1);
    expect(other[0]).toMatchObject({ id: 'node/5', telephoneFirst: true });
    expect(other[0]!.text).toMatch(/^Telephone first/);
    expect(found.some(({ text }) => text.includes('reserve of'))).toBe(false);
  });

  it('offers a way round by a stop that counts but lies off the corridor', () => {
    // 636 km each way: 110 l last for 647.
    const bare = inputOf({
      document: equatorDocument(1220),
      rig: noCans,
      features: [...TAPS, pointFeature('node/7', 610, DIESEL, 20)],
    });
    const [round] = waysOutOf(bare).filter(({ kind }) => kind === 'other-stop');
    expect(round).toMatchObject({ id: 'node/7', telephoneFirst: false, unit: 'km' });
    expect(round!.amount).toBeCloseTo(2 * 20 * 1.3, 1);
  });

  it('drives longer days where water is what is missing', () => {
    const found = waysOutOf(
      inputOf({
        rig: {
          ...EXAMPLE_RIG,
          water: { ...EXAMPLE_RIG.water, cans: { litres: 20, owned: 0 }, reserve: { litres: 0 } },
        },
        features: [pointFeature('node/1', 640, DIESEL), pointFeature('node/2', 300, TAP)],
      }),
    );
    const longer = found.find(({ kind }) => kind === 'longer-days');
    // From km 300 1,040 km: 70 l last 3 days of 18 l, so 347 km a day at 35 km/h: 9.905 h, by half hours 10.
    expect(longer).toMatchObject({ amount: 10, unit: 'hours a day' });
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
    return planOf(inputOf({ document: equatorDocument(lengthKm), rig })).plan.status;
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
    const { held } = planCarry(trip, options());
    const safe = oneFailure(trip, held!, options());
    expect(safe.status).toBe('found');
    expect(safe.failures.length).toBe(safe.legs.fuel.length + safe.legs.water.length - 2);
    expect(safe.moreCans.fuel).toBeGreaterThanOrEqual(0);
    for (const { arriveL } of safe.failures) expect(arriveL).toBeGreaterThanOrEqual(0);
  });
});
