import type { OneFailure } from '../../contract/plan.ts';
import type { Reckoned } from '../analyse.ts';
import { reckon } from '../gaps/reckon.ts';
import { canBeDrivenBack } from '../gaps/turn-back.ts';
import { driveActual, type HeldPlan } from './drive-actual.ts';
import { backNeedL, bearableOnFailureL } from './failure.ts';
import { COMMODITIES, haltsBetween, haltsOf, otherOf } from './problem.ts';
import { canKgOf, problemOf } from './problem-of.ts';
import { carriesOf, edgeOf, legShown } from './show.ts';
import { type SolveOptions, solveCarry } from './solve.ts';

/** So many cans beyond those there may be are tried for each commodity (ours). */
const MORE_CANS = 6;
/** Float noise, litres. */
const NOISE_L = 1e-6;

/**
 * The plan that still arrives when any one of its stops turns out dry or shut: on to the next stop it uses, or back to the
 * one before. With the cans there may be, else with more.
 */
export function oneFailure(reckoned: Reckoned, plain: HeldPlan, options: SolveOptions): OneFailure {
  const { rig, trip } = reckoned.analysis;
  const spendsReserve = trip.plan?.spendReserveOnFailure ?? false;
  const most = { fuel: plain.problem.sides.fuel.mostCans, water: plain.problem.sides.water.mostCans };
  const nothing: OneFailure = {
    status: 'none',
    spendsReserve,
    cans: { fuel: 0, water: 0 },
    moreCans: { fuel: 0, water: 0 },
    moreKg: 0,
    moreDrivingKm: 0,
    proven: true,
    carries: [],
    legs: { fuel: [], water: [] },
    breaks: [],
    failures: [],
  };
  for (const more of [0, MORE_CANS]) {
    const mostCans = { fuel: most.fuel + more, water: most.water + more };
    const { problem } = problemOf(reckoned, { mostCans });
    const solved = solveCarry({ ...problem, oneFailure: { spendReserve: spendsReserve } }, options);
    if (solved.status === 'out-of-time') return { ...nothing, status: 'out-of-time', proven: false };
    if (solved.status === 'none') continue;
    const held = driveActual(reckoned, problem, solved.choice);
    const { sides } = held.problem;
    const { cans, aims } = solved.choice;
    const moreCans = {
      fuel: cans.fuel - plain.choice.cans.fuel,
      water: cans.water - plain.choice.cans.water,
    };
    const kgOf = (each: 'fuel' | 'water') => canKgOf(rig, each).empty + canKgOf(rig, each).filling;
    const drivingKm = (choice: typeof solved.choice) =>
      choice.aims.find(({ aim }) => aim === 'driving-km')?.value ?? 0;
    return {
      ...nothing,
      status: 'found',
      cans,
      moreCans,
      moreKg: moreCans.fuel * kgOf('fuel') + moreCans.water * kgOf('water'),
      moreDrivingKm: drivingKm(solved.choice) - drivingKm(plain.choice),
      proven: aims.every(({ proven }) => proven),
      carries: carriesOf(sides, held.driven),
      legs: {
        fuel: held.driven.fuel.map((leg) => legShown(sides.fuel, leg)),
        water: held.driven.water.map((leg) => legShown(sides.water, leg)),
      },
      failures: failuresOf(held, spendsReserve),
    };
  }
  return nothing;
}

/** Each stop failing in turn, driven: on where that arrives, else back. Throws where neither does: a fault of the program. */
export function failuresOf({ problem, driven }: HeldPlan, spendReserve: boolean): OneFailure['failures'] {
  return COMMODITIES.flatMap((commodity) => {
    const side = problem.sides[commodity];
    const { course } = side;
    const other = otherOf(commodity);
    const foreign = haltsOf({ ...problem.sides[other], edges: driven[other].map(({ to }) => to) });
    return driven[commodity].slice(0, -1).map((leg, index): OneFailure['failures'][number] => {
      const next = driven[commodity][index + 1]!;
      const { departL } = leg.figures;
      const viaM = (to: typeof leg.to) =>
        haltsBetween(foreign, leg.from, to).reduce((sum, halt) => sum + halt.bothWaysM, 0);
      const on = reckon(course, leg.from, next.to, departL, 2 * leg.to.detourM + viaM(next.to));
      const leftL = spendReserve
        ? Math.min(on.arriveL, on.grades?.drinking.arriveL ?? on.arriveL)
        : Math.min(on.marginL, on.grades?.drinking.marginL ?? on.marginL);
      const at = edgeOf(leg.to);
      if (leftL >= -NOISE_L) return { commodity, at, next: 'on', to: edgeOf(next.to), arriveL: on.arriveL };
      const needL = backNeedL(side, leg.from, leg.to, viaM(leg.to));
      const mostL = bearableOnFailureL(side, leg.tankL, leg.cans, spendReserve);
      if (needL > mostL + NOISE_L || !canBeDrivenBack(course, leg.from, leg.to)) {
        throw new Error(`the plan against one failure fails when ${commodity} fails at km ${at.atKm}`);
      }
      return { commodity, at, next: 'back', to: edgeOf(leg.from), arriveL: departL - needL };
    });
  });
}
