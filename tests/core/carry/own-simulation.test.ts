import { beforeAll, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { reckonTrip } from '../../../server/core/analyse.ts';
import { driveActual } from '../../../server/core/carry/drive-actual.ts';
import type { MipSolver } from '../../../server/core/carry/mip.ts';
import { problemOf } from '../../../server/core/carry/problem-of.ts';
import { type Choice, solveCarry } from '../../../server/core/carry/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** The worked example with taps: its second gap takes one can of fuel. */
function solved(rig: RigFile) {
  const taps = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));
  const outcome = reckonTrip(inputOf({ rig, features: [...taps, pointFeature('node/1', 640, DIESEL, 2)] }));
  if (!outcome.ok) throw new Error('no route');
  const { problem } = problemOf(outcome.value);
  const found = solveCarry(problem, { solver, seconds: 30, clock: () => 0 });
  if (found.status !== 'found') throw new Error(found.status);
  return { reckoned: outcome.value, problem, choice: found.choice };
}

it('a plan without the can that it takes is a fault, not an answer', () => {
  const { reckoned, problem, choice } = solved(EXAMPLE_RIG);
  expect(driveActual(reckoned, problem, choice).driven.fuel[1]!.cans).toBe(1);
  const without: Choice = {
    ...choice,
    legs: {
      ...choice.legs,
      fuel: choice.legs.fuel.map((leg) => ({ ...leg, hops: [{ ...leg.hops[0], cans: 0 }] })),
    },
  };
  expect(() => driveActual(reckoned, problem, without)).toThrow(
    /fails its own simulation: 9\.44\d* l of fuel from km (640|639\.9)/,
  );
});

it('a plan over a permitted mass is a fault, not an answer', () => {
  const vehicle = {
    kerbKg: 2000,
    includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
    people: [{ kg: 75 }],
  };
  const heavy: RigFile = { ...EXAMPLE_RIG, vehicle: { ...vehicle, permitted: { totalKg: 2300 } } };
  const light: RigFile = { ...EXAMPLE_RIG, vehicle: { ...vehicle, permitted: { totalKg: 2150 } } };
  const { problem, choice, reckoned } = solved(heavy);
  expect(() => driveActual(reckoned, problem, choice)).not.toThrow();
  // The same choice in a vehicle that may weigh less.
  const other = reckonTrip(inputOf({ rig: light }));
  if (!other.ok) throw new Error('no route');
  expect(() => driveActual(other.value, problem, choice)).toThrow(/kg over the total limit/);
});
