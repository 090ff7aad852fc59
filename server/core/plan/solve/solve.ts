import type { Commodity } from '../../../contract/common.ts';
import { numberAt } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Aim, AimCost } from '../model/aims.ts';
import { type Asking, askingOf } from '../model/ask.ts';
import { cansAboard } from '../model/cans-aboard.ts';
import type { AimReached, Choice, PlannedLeg, Solution } from '../model/choice.ts';
import { legSearches } from '../model/leg-searches.ts';
import { atMost, type MipAnswer, type MipEntry, type MipRow } from '../model/mip.ts';
import type { CarryModel } from '../model/model.ts';
import type { SolveOptions } from '../model/time.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type FoundPlan, searchPlan } from '../search/search-plan.ts';
import { byCommodity } from '../side/other-of.ts';
import { aimsReached, type BestPlan } from './aims-reached.ts';
import { withShortFills } from './short-fill.ts';
import { planWithoutLittle } from './without-little.ts';

/** How far a value may be above an aim's best while the next aim is minimised: solver noise, in what the aim costs. */
const NOISE = 1e-6;

/** No aim has a negative cost, so none can be below nothing. */
const FLOOR = 0;

/**
 * The best plan by one aim after the other: searched for exactly where that can be, else by the solver, which holds each
 * aim at its best while the next is minimised. Where the solver finds none in its time there is still the one that passes
 * by the supplies which do not give all that is wanted.
 */
export function solveCarry(question: CarryQuestion, options: SolveOptions, onSoFar?: OnSoFar): Solution {
  const complete = question.suppliesLeftOut !== true;
  const tell =
    onSoFar && ((plan: FoundPlan) => onSoFar(choiceBySearch(question, { ...plan, complete: false })));
  const ask = { greatestMargin: true, onSoFar: tell };
  const searched = searchPlan(question, legSearches(question), ask);
  switch (searched.status) {
    case 'found':
      return foundBySearch(question, { ...searched, complete: complete && searched.proven }, options);
    case 'none':
      return { status: 'none', complete };
    case 'not searched': {
      const solution = solvedByModel(question, options, onSoFar);
      const plan = solution.status === 'out-of-time' ? planWithoutLittle(question) : null;
      return plan === null ? solution : foundBySearch(question, { ...plan, complete: false }, options);
    }
  }
}

/** Told a good choice of which nothing is proven yet, where the best takes longer than a moment. */
export type OnSoFar = (choice: Choice) => void;

function foundBySearch(question: CarryQuestion, plan: BestPlan, { solver }: SolveOptions): Solution {
  return { status: 'found', choice: withShortFills(question, choiceBySearch(question, plan), solver) };
}

function choiceBySearch(question: CarryQuestion, plan: BestPlan): Choice {
  const { legs, cans, complete } = plan;
  return {
    legs: byCommodity((commodity) => legs[commodity].map((leg) => ({ ...leg, shortL: 0 }))),
    cans,
    aims: aimsReached(question, legSearches(question), plan),
    complete,
  };
}

/** Seconds that are a moment (ours). */
const MOMENT_S = 0.3;

/** Minimises one aim after the other, each held at its best while the next is minimised. */
export function solvedByModel(question: CarryQuestion, options: SolveOptions, onSoFar?: OnSoFar): Solution {
  const startS = options.clock();
  const asking = askingOf(question, options);
  const { model } = asking;
  if (!asking.hasChain) return { status: 'none', complete: model.complete };
  // All aims at once, weighted: the aims one by one then begin from a plan that is good already.
  const first = asking.minimise(weightedSum(model), [], null);
  if (first.status === 'infeasible') return { status: 'none', complete: model.complete };
  if (first.values === null) return { status: 'out-of-time' };
  const soFar = { values: first.values, aims: aimsAt(model, first.values), rows: [] };
  if (options.clock() - startS > MOMENT_S) onSoFar?.(choiceOf(question, model, soFar));
  const best = withFewestStops(asking, minimiseEach(asking, first.values));
  return {
    status: 'found',
    choice: withShortFills(question, choiceOf(question, model, best), options.solver),
  };
}

/** What a solution reaches of each aim, of which nothing is known but that none is below nothing. */
const aimsAt = ({ aims }: CarryModel, values: Float64Array): AimReached[] =>
  aims.map((aim) => reachedBy(aim, values, FLOOR));

/** A solution with what it reaches of each aim, and the rows that hold it there. */
interface Held {
  readonly values: Float64Array;
  readonly aims: readonly AimReached[];
  readonly rows: readonly MipRow[];
}

/** The aims in their order, from a solution known before. */
function minimiseEach(asking: Asking, start: Float64Array): Held {
  return asking.model.aims.reduce<Held>((held, aim) => minimiseNext(asking, held, aim), {
    values: start,
    aims: [],
    rows: [],
  });
}

function minimiseNext({ model, timer, minimise }: Asking, held: Held, aim: AimCost): Held {
  const atBest = costAt(aim, held.values) <= FLOOR + NOISE;
  const answer = timer.leftS() <= 0 || atBest ? null : minimise(aim.cost, held.rows, held.values);
  const values = betterOf(aim, held.values, answer);
  // With what was not looked at it might be anything down to nothing.
  const bound = answer === null || !model.complete ? FLOOR : boundOf(answer);
  return {
    values,
    aims: [...held.aims, reachedBy(aim, values, bound)],
    rows: [...held.rows, atMost(costAt(aim, values) + NOISE, entriesOfCost(aim.cost))],
  };
}

const betterOf = (aim: AimCost, known: Float64Array, answer: MipAnswer | null): Float64Array =>
  answer !== null && answer.values !== null && costAt(aim, answer.values) < costAt(aim, known) - NOISE
    ? answer.values
    : known;

const boundOf = ({ status, bound }: MipAnswer): number =>
  status === 'optimal' ? bound : Math.max(FLOOR, Number.isFinite(bound) ? bound : FLOOR);

function costAt({ cost, whole }: AimCost, values: Float64Array): number {
  const sum = cost.reduce((total, each, column) => total + each * numberAt(values, column), 0);
  return whole ? Math.round(sum) : sum;
}

function reachedBy(aim: AimCost, values: Float64Array, bound: number): AimReached {
  const cost = costAt(aim, values);
  const best = aim.whole ? Math.ceil(bound - NOISE) : bound;
  const gap = Math.max(0, cost - best);
  const proven = gap <= 2 * NOISE;
  return { aim: aim.aim, value: cost * aim.per, proven, gap: proven ? 0 : gap * aim.per };
}

function entriesOfCost(cost: Float64Array): MipEntry[] {
  const entries: MipEntry[] = [];
  for (const [column, value] of cost.entries()) if (value !== 0) entries.push([column, value]);
  return entries;
}

/** Fewer stops come before fewer cans aboard. */
const CAN_PER_STOP = 1e-3;

/** Among plans alike by every aim, the one with the fewest stops: nobody fills twice at one place. */
function withFewestStops({ model, timer, minimise }: Asking, held: Held): Held {
  if (timer.leftS() <= 0) return held;
  const cost = new Float64Array(model.mip.columns.length);
  for (const commodity of COMMODITIES) {
    cost[model.aboard[commodity]] = CAN_PER_STOP;
    for (const { leg, column } of model.legs[commodity]) cost[column] = leg.hops.length;
  }
  const { values } = minimise(cost, held.rows, held.values);
  return values === null ? held : { ...held, values };
}

/**
 * Weights with which the aims are summed for a first plan (ours). They decide nothing: each aim is minimised by itself
 * afterwards.
 */
const WEIGHT: Record<Aim, number> = {
  'doubtful-m': 100,
  'implied-m': 10,
  'stated-m': 1,
  'cans-to-get': 50,
  'lost-h': 0.1,
  'driving-m': 0.1,
  'can-m': 0.001,
  'least-margin-m': 0,
  'short-fill-l': 0,
};

function weightedSum({ mip, aims }: CarryModel): Float64Array {
  const sum = new Float64Array(mip.columns.length);
  for (const { aim, cost } of aims)
    for (const [column, value] of cost.entries()) sum[column] = numberAt(sum, column) + WEIGHT[aim] * value;
  return sum;
}

function choiceOf({ room }: CarryQuestion, model: CarryModel, { values, aims }: Held): Choice {
  const legsOf = (commodity: Commodity): PlannedLeg[] =>
    model.legs[commodity]
      .filter(({ column }) => numberAt(values, column) === 1)
      .map(({ leg }) => ({ ...leg, shortL: 0 }))
      .sort((a, b) => a.from - b.from);
  const legs = byCommodity(legsOf);
  return {
    legs,
    cans: cansAboard(
      room?.limits ?? [],
      legs,
      byCommodity((commodity) => numberAt(values, model.aboard[commodity])),
    ),
    aims,
    complete: model.complete,
  };
}
