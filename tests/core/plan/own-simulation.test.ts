import { beforeAll, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { reckonTrip } from '../../../server/core/analyse/analyse.ts';
import { driveActual } from '../../../server/core/plan/drive/driven-plan.ts';
import type { Choice } from '../../../server/core/plan/model/choice.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { questionOf } from '../../../server/core/plan/question/question-of.ts';
import { solveCarry } from '../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { planCarry } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** The worked example with taps: its second gap takes one can of fuel. */
function solved(rig: RigFile) {
  const taps = [200, 400, 600, 800, 1000, 1200].map((km, index) => pointFeature(`node/9${index}`, km, TAP));
  const outcome = reckonTrip(inputOf({ rig, features: [...taps, pointFeature('node/1', 640, DIESEL, 2)] }));
  if (!outcome.ok) throw new Error('no route');
  const { question: problem } = questionOf(outcome.value);
  const found = solveCarry(problem, { solver, seconds: 30, clock: () => 0 });
  if (found.status !== 'found') throw new Error(found.status);
  return { reckoned: outcome.value, problem, choice: found.choice };
}

it('a plan without the can that it takes is a fault, not an answer', () => {
  const { reckoned, problem, choice } = solved(EXAMPLE_RIG);
  expect(driveActual(reckoned, problem, choice).legs.fuel[1]!.cans).toBe(1);
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

it('a can that comes full stays full, where that is not too heavy', () => {
  // The reserve of 45 l is more than the tank: two cans to the pump, one from there. Only 16.9 l are used on the way to
  // it, so both come full. Water for two days gets to the tap beside it, and not to the end, which takes three.
  const trip = {
    ...inputOf().trip,
    aboard: { fuelKmSinceFill: 0, waterLitres: 54 },
    plan: { fillAtStart: { fuel: true } },
  };
  const drivenWith = (permittedKg: number) => {
    const rig: RigFile = {
      ...EXAMPLE_RIG,
      fuel: {
        ...EXAMPLE_RIG.fuel,
        tanks: [{ name: 'main', litres: 40 }],
        cans: { litres: 20, owned: 2, emptyKg: 4 },
        reserve: { litres: 45, shareOfNeed: 0 },
        litresPer100Km: { low: 13, typical: 13, high: 13 },
      },
      water: { ...EXAMPLE_RIG.water, cans: { litres: 20, owned: 0 }, reserve: { days: 1 } },
      pace: { hoursPerDay: 7, kmPerHour: { slow: 10, typical: 10, fast: 10 } },
      vehicle: {
        kerbKg: 2000,
        includes: { fuelPercent: 0, waterPercent: 0, driverKg: 75 },
        people: [{ kg: 75 }],
        permitted: { totalKg: permittedKg },
      },
    };
    const document = equatorDocument(150);
    const features = [pointFeature('node/1', 130, DIESEL), pointFeature('node/2', 130, TAP)];
    const outcome = reckonTrip({ ...inputOf({ document, features, rig }), trip });
    if (!outcome.ok) throw new Error('no route');
    const { plan, driven: held } = planCarry(outcome.value, { solver, seconds: 30, clock: () => 0 });
    return { plan, fuel: held!.legs.fuel };
  };
  // 40 l and two cans of diesel at 0.845 kg/l (EN 590), 54 l of water, two empty cans, at the start: 2,129.6 kg.
  const startKg = 2000 + 80 * 0.845 + 54 + 2 * 4;
  const free = drivenWith(startKg + 100);
  expect(free.fuel.map(({ cans }) => cans)).toEqual([2, 2]);
  expect(free.plan.restsOn.map(({ code }) => code)).not.toContain('plan-lets-go');
  // Behind the pump there are 16 l more of water: with the second can still full that is too much.
  const tight = drivenWith(startKg + 10);
  expect(tight.fuel.map(({ cans }) => cans)).toEqual([2, 1]);
  expect(tight.plan.restsOn.map(({ code }) => code)).toContain('plan-lets-go');
});
