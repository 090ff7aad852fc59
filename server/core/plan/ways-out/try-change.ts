import type { RigFile } from '../../../contract/rig.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { at } from '../../lists/at.ts';
import { drive } from '../drive/drive.ts';
import { type DrivenPlan, driveActual, throwWhereBroken } from '../drive/driven-plan.ts';
import type { Choice } from '../model/choice.ts';
import type { SolveOptions } from '../model/time.ts';
import type { Cans } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type QuestionChanges, questionOf } from '../question/question-of.ts';
import type { CarrySide } from '../side/carry-side.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { solveCarry } from '../solve/solve.ts';

/** What ways out are asked for. */
export interface WaysOutAsk extends SolveOptions {
  readonly reckoned: Reckoned;
  /** Whether more cans are to be among them: not where the plan itself is one with more. */
  readonly moreCans: boolean;
  /** By the clock: no change is tried any more after this. */
  readonly until: number;
  /** Reckons the trip again with another rig. */
  readonly reckon: (rig: RigFile) => { readonly ok: true; readonly value: Reckoned } | { readonly ok: false };
}

/** What they are computed with. */
export interface WaysOutContext extends WaysOutAsk {
  /** `ranOut` is set once a change ran out of time: whether it makes a plan is not known. */
  readonly state: { ranOut: boolean };
}

/** Whether no change is to be tried any more. */
export const isOver = ({ clock, until }: WaysOutAsk): boolean => clock() >= until;

/** The plan that a change leads to, driven and held; null where none was found (`ranOut` is set where the time ran out). */
export function planWith(
  reckoned: Reckoned,
  context: WaysOutContext,
  changes: QuestionChanges = {},
): DrivenPlan | null {
  const { question } = questionOf(reckoned, changes);
  const choice = choiceOf(question, context);
  return choice === null ? null : driveActual(reckoned, question, choice);
}

/** Cans of the plan that a change leads to, held at the heaviest mass that it may have; null where there is none. */
export function cansWith(
  reckoned: Reckoned,
  context: WaysOutContext,
  changes: QuestionChanges = {},
): Cans | null {
  const { question } = questionOf(reckoned, changes);
  const choice = choiceOf(question, context);
  if (choice === null) return null;
  throwWhereBroken(drive(question.sides, choice));
  return choice.cans;
}

function choiceOf(question: CarryQuestion, context: WaysOutContext): Choice | null {
  const solution = solveCarry(question, context);
  if (solution.status === 'out-of-time') context.state.ranOut = true;
  return solution.status === 'found' ? solution.choice : null;
}

/** A side with further supplies, each in its place of the route. */
export function withEdges(side: CarrySide, more: readonly SupplyEdge[]): CarrySide {
  if (more.length === 0) return side;
  const { edges } = side;
  const passings = [...edges.slice(1, -1), ...more].sort((a, b) => a.atM - b.atM);
  return { ...side, edges: [at(edges, 0), ...passings, at(edges, edges.length - 1)] };
}
