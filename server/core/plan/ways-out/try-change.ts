import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Outcome } from '../../input/problem.ts';
import { driveActual, type HeldPlan } from '../drive/drive-actual.ts';
import { type SolveOptions, solveCarry } from '../model/solve.ts';
import type { CarrySide, SupplyEdge } from '../question/problem.ts';
import { type ProblemChanges, problemOf } from '../question/problem-of.ts';

/** What ways out are computed with. */
export interface WaysOutContext extends SolveOptions {
  reckoned: Reckoned;
  /** Whether more cans are to be among them: not where the plan itself is one with more. */
  moreCans: boolean;
  /** By the clock: no change is tried any more after this. */
  until: number;
  /** Set once a change ran out of time: whether it makes a plan is not known. */
  ranOut?: boolean;
  /** Reckons the trip again with another rig. */
  reckon: (rig: RigFile) => Outcome<Reckoned>;
}

/** The plan that a change leads to, driven and held; null where none was found (`ranOut` is set where the time ran out). */
export function heldWith(
  reckoned: Reckoned,
  options: SolveOptions & Pick<WaysOutContext, 'ranOut'>,
  changes: ProblemChanges = {},
): HeldPlan | null {
  const { problem } = problemOf(reckoned, changes);
  const solved = solveCarry(problem, options);
  if (solved.status === 'out-of-time') options.ranOut = true;
  return solved.status === 'found' ? driveActual(reckoned, problem, solved.choice) : null;
}

/** Cans of the plan that a change leads to; null where there is none. */
export const plannedCans = (
  reckoned: Reckoned,
  options: SolveOptions & Pick<WaysOutContext, 'ranOut'>,
  changes: ProblemChanges = {},
): Record<Commodity, number> | null => heldWith(reckoned, options, changes)?.choice.cans ?? null;

/** A side with further supplies, each in its place of the route. */
export function withEdges(side: CarrySide, more: readonly SupplyEdge[]): CarrySide {
  if (more.length === 0) return side;
  const [start, ...rest] = side.edges;
  const passings = [...rest.slice(0, -1), ...more].sort((a, b) => a.atM - b.atM);
  return { ...side, edges: [start!, ...passings, rest.at(-1)!] };
}
