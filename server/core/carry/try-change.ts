import type { Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { Reckoned } from '../analyse.ts';
import type { Outcome } from '../problem.ts';
import { driveActual } from './drive-actual.ts';
import { problemOf } from './problem-of.ts';
import { type SolveOptions, solveCarry } from './solve.ts';

/** What ways out are computed with. */
export interface WaysOutContext extends SolveOptions {
  reckoned: Reckoned;
  /** By the clock: no change is tried any more after this. */
  until: number;
  /** Reckons the trip again with another rig. */
  reckon: (rig: RigFile) => Outcome<Reckoned>;
}

/** Cans of the plan that a change leads to, driven and held; null where there is none. */
export function plannedCans(
  reckoned: Reckoned,
  options: SolveOptions,
  changes: Parameters<typeof problemOf>[1] = {},
): Record<Commodity, number> | null {
  const { problem } = problemOf(reckoned, changes);
  const solved = solveCarry(problem, options);
  if (solved.status !== 'found') return null;
  driveActual(reckoned, problem, solved.choice);
  return solved.choice.cans;
}

/** Fields of a way out that most leave as they are. */
export const bare = { telephoneFirst: false, atKm: null, id: null, commodity: null, moreKg: 0 };
