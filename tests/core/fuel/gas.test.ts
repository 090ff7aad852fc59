import { beforeAll, describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { reckonTrip } from '../../../server/core/analyse/analyse.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { checkRig } from '../../../server/core/rig/check-rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { analysisOf, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { reckoned } from '../../helpers/reckoned.ts';
import { oneFailure, planCarry, waysOut } from '../plan/by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});
const options = () => ({ solver, seconds: 30, clock: () => 0 });

const gasRig = (kind: 'lpg' | 'cng' | 'lng', changes: Partial<RigFile['fuel']> = {}): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: {
    kind,
    litresPer100Km: 10,
    tanks: [{ name: 'gas', litres: 100 }],
    cans: { litres: 20, owned: 6 },
    reserve: { litres: 0 },
    ...changes,
  },
});

const TAPS = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));
const inputWith = (rig: RigFile, mostFuelCans = 10) =>
  inputOf({
    rig,
    features: TAPS,
    trip: { ...inputOf().trip, aboard: {}, plan: { mostCans: { fuel: mostFuelCans, water: 2 } } },
  });

describe('what a tank for LPG holds', () => {
  test('is 80 % of its water volume (UNECE Regulation 67): 80 l of 100, and that is said', () => {
    const { rig, assumptions } = settleRig(gasRig('lpg'));
    expect(rig.fuel.drawableL).toBeCloseTo(80, 12);
    expect(assumptions.map(({ path }) => path)).toContain('/fuel/tanks/0/fillPercent');
  });

  test('is as told where the filling limit is told', () => {
    const { rig } = settleRig(gasRig('lpg', { tanks: [{ name: 'gas', litres: 100, fillPercent: 85 }] }));
    expect(rig.fuel.drawableL).toBeCloseTo(85, 12);
  });

  test('bounds what can be unusable: 85 l of a tank of 100 are refused', () => {
    const tanks = [{ name: 'gas', litres: 100, unusableLitres: 85 }];
    expect(checkRig(gasRig('lpg', { tanks }))?.misfit).toBe('tank-undrawable');
    expect(checkRig(gasRig('cng', { tanks }))).toBeNull();
  });

  test('a tank for CNG is filled whole', () => {
    expect(settleRig(gasRig('cng')).rig.fuel.drawableL).toBe(100);
  });
});

describe.each(['lpg', 'cng', 'lng'] as const)('%s goes in no can', (kind) => {
  test('whatever the rig tells: none is owned, and that is said', () => {
    const { rig, settled, assumptions } = settleRig(gasRig(kind));
    expect(rig.fuel).toMatchObject({ cansOwned: 0, takesCans: false });
    expect(settled.fuel.cans?.owned).toBe(0);
    expect(assumptions.map(({ path }) => path)).toContain('/fuel/cans');
    expect(settleRig(settled).assumptions).toEqual([]);
  });

  test('not in gaps, nor in what to do', () => {
    const analysis = analysisOf(inputWith(gasRig(kind)));
    const [gap] = analysis.fuel.gaps;
    expect(gap).toMatchObject({ verdict: 'short', extraCans: 0 });
    expect(gap?.extraL).toBeGreaterThan(20);
    const todo = JSON.stringify(analysis.answer.todo);
    expect(todo).toContain('are missing from');
    expect(todo).toContain('It goes in no can');
    expect(todo).not.toMatch(/cans? of|\d cans?/);
    expect(todo).not.toContain('every stretch holds');
  });

  test('not in a plan, nor in a way out, whatever the trip allows', () => {
    const input = inputWith(gasRig(kind));
    const trip = reckoned(input);
    const { plan, driven } = planCarry(trip, options());
    expect(plan).toMatchObject({ status: 'none', mostCans: { fuel: 0 } });
    expect(driven).toBeNull();
    const { ways } = waysOut({
      ...options(),
      moreCans: true,
      until: 1,
      reckoned: trip,
      reckon: (rig: RigFile) => reckonTrip({ ...input, rig }),
    });
    expect(ways.map(({ kind: way }) => way)).not.toContain('more-cans');
    expect(ways.map(({ kind: way }) => way)).not.toContain('depot');
  });

  test('nor against the failure of a stop', () => {
    const pumps = [500, 900].map((km, index) =>
      pointFeature(`node/${index + 1}`, km, { amenity: 'fuel', [`fuel:${kind}`]: 'yes' }),
    );
    const rig = gasRig(kind, { tanks: [{ name: 'gas', litres: 130, fillPercent: 100 }] });
    const input = {
      ...inputWith(rig),
      supplies: { ...inputWith(rig).supplies, features: [...TAPS, ...pumps] },
    };
    const trip = reckoned(input);
    const { driven } = planCarry(trip, options());
    if (driven === null) throw new Error('no plan');
    const safe = oneFailure(trip, driven, options());
    expect(safe.cans.fuel).toBe(0);
    expect(safe.moreCans.fuel).toBe(0);
  });
});

test('a diesel rig of the same figures keeps its cans', () => {
  const rig: RigFile = { ...gasRig('lpg'), fuel: { ...gasRig('lpg').fuel, kind: 'diesel' } };
  expect(settleRig(rig).rig.fuel).toMatchObject({ cansOwned: 6, takesCans: true, drawableL: 100 });
});

test('CNG is told in kilograms as well: 100 l at 0.17 kg are 17 kg, 12.5 l/100 km are 2.1 kg', () => {
  const caution = analysisOf(inputWith(gasRig('cng'))).cautions.find(({ code }) => code === 'cng-kilograms');
  expect(caution?.text).toContain('17.0 kg');
  expect(caution?.text).toContain('2.1 kg in 100 km');
});
