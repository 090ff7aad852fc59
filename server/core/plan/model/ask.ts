import { COMMODITIES } from '../../quantity/commodities.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, endOf } from '../side/carry-side.ts';
import { brokenTours } from './broken-tours.ts';
import type { LegColumn } from './columns.ts';
import type { Mip, MipAnswer, MipRow } from './mip.ts';
import { type CarryModel, carryModel } from './model.ts';
import { type SolveOptions, type Timer, timerOf } from './time.ts';

/** The solver gets this much time at the least, seconds. */
const LEAST_S = 0.05;

/** What the solver is asked of a question. */
export interface AskFacts {
  readonly question: CarryQuestion;
  readonly model: CarryModel;
  /** The model, perhaps with more rows, or columns behind its own. */
  readonly mip: Mip;
  readonly cost: Float64Array;
  readonly start: Float64Array | null;
  /** Choices that were found not to hold, as rows that rule them out; more are added. */
  readonly cuts: MipRow[];
}

/** Asks the solver till its answer holds when the hops of each leg are driven one after the other. */
export function askHolding(facts: AskFacts, options: SolveOptions): MipAnswer {
  const { question, model, mip, cost, start, cuts } = facts;
  const timer = timerOf(options);
  for (;;) {
    const seconds = Math.max(LEAST_S, timer.leftS());
    const answer = options.solver({ ...mip, rows: [...mip.rows, ...cuts] }, cost, { seconds, start });
    if (answer.values === null) return answer;
    const broken = brokenTours(question, model, answer.values);
    if (broken.length === 0) return answer;
    cuts.push(...broken);
    if (timer.leftS() <= 0) return { ...answer, status: 'out-of-time', values: null };
  }
}

/** A question as a model, asked so that every answer holds, within the time there is for all of it. */
export interface Asking {
  readonly model: CarryModel;
  readonly timer: Timer;
  /** Whether a chain of legs leads to the end for each commodity: else there is nothing to ask. */
  readonly hasChain: boolean;
  /** Minimises a cost over the model with more rows, from a solution known before. */
  readonly minimise: (cost: Float64Array, more: readonly MipRow[], start: Float64Array | null) => MipAnswer;
}

export function askingOf(question: CarryQuestion, options: SolveOptions): Asking {
  const model = carryModel(question);
  const timer = timerOf(options);
  const cuts: MipRow[] = [];
  return {
    model,
    timer,
    hasChain: COMMODITIES.every((commodity) => isChained(question.sides[commodity], model.legs[commodity])),
    minimise: (cost, more, start) => {
      const mip = { columns: model.mip.columns, rows: [...model.mip.rows, ...more] };
      const seconds = Math.max(LEAST_S, timer.leftS());
      return askHolding({ question, model, mip, cost, start, cuts }, { ...options, seconds });
    },
  };
}

/** Whether any chain of legs leads from start to end. */
function isChained(side: CarrySide, legs: readonly LegColumn[]): boolean {
  const reached = new Set([0]);
  // Legs come in the order of where they begin.
  for (const { leg } of legs) if (reached.has(leg.from)) reached.add(leg.to);
  return reached.has(endOf(side));
}
