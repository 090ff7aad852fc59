import { reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import { evenLoad } from '../../../../server/core/mass/load.ts';
import { type Basis, basisOf } from '../../../../server/core/plan/drive/basis.ts';
import { drive } from '../../../../server/core/plan/drive/drive.ts';
import type { DrivenPlan } from '../../../../server/core/plan/drive/driven-plan.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { inputOf } from '../../../helpers/analyse-input.ts';
import { questionOf, type SmallRoute } from '../by-hand/small-routes.ts';

/** A plan of a small route, driven. */
export interface SolvedBasis {
  held: DrivenPlan;
  basis: Basis;
}

/** With a plan all is told by the plan: the trip that it is a plan of does not matter. */
const anyTrip = reckonTrip(inputOf());

/** The plan of a small route as what-ifs and gauge go on from it; null where there is none. */
export function solvedBasis(route: SmallRoute, solver: MipSolver): SolvedBasis | null {
  const problem = questionOf(route);
  const solved = solveCarry(problem, { solver, seconds: 60, clock: () => 0 });
  return solved.status === 'found' ? heldBasis(route, solved.choice) : null;
}

/** A choice driven on a small route, whether it holds there or not. */
export function heldBasis(route: SmallRoute, choice: DrivenPlan['choice']): SolvedBasis {
  const problem = questionOf(route);
  const driven = drive(problem.sides, choice);
  const held = { question: problem, heaviest: problem.sides, load: evenLoad(0), choice, legs: driven };
  if (!anyTrip.ok) throw new Error(anyTrip.refusal.code);
  return { held, basis: basisOf(anyTrip.value, held) };
}
