import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Leg } from '../question/leg.ts';
import { type CarryProblem, costOf, type Halt, haltsBetween, haltsOf, otherOf } from '../question/problem.ts';
import { shortFillModel } from './mass-rows.ts';
import type { Mip, MipAnswer, MipRow, MipSolver } from './mip.ts';
import { type Aim, type AimedCost, type CarryModel, carryModel } from './model.ts';
import { holdsOver } from './tours.ts';

/** One aim's value in the plan, and whether nothing better exists. */
export interface AimReached {
  aim: Aim;
  value: number;
  proven: boolean;
  /** By how much it might be better at the most; 0 when proven. */
  gap: number;
}

/** A leg of the plan: `shortL` less in the tanks than they hold, for the sake of the permitted masses. */
export interface PlannedLeg extends Leg {
  shortL: number;
}

/** Which supplies are used, with how many cans; nothing is simulated yet. */
export interface Choice {
  legs: Record<Commodity, PlannedLeg[]>;
  cans: Record<Commodity, number>;
  aims: AimReached[];
  /** Whether every plan there is was looked at. */
  complete: boolean;
}

/** `complete`: there is none at all; else none of what was looked at. */
export type Solved =
  | { status: 'found'; choice: Choice }
  | { status: 'none'; complete: boolean }
  | { status: 'out-of-time' };

export interface SolveOptions {
  solver: MipSolver;
  /** For all aims together. */
  seconds: number;
  /** Seconds that have passed since some moment. */
  clock: () => number;
}

/** How far a value may be above an aim's best while the next aim is minimised: solver noise, in the aim's unit. */
const HELD = 1e-6;

/** Minimises one aim after the other, each held at its best while the next is minimised. */
export function solveCarry(problem: CarryProblem, options: SolveOptions): Solved {
  const { seconds, clock, solver } = options;
  const asking = askingOf(problem, options);
  const { model, ask, startS } = asking;
  if (ask === null) return { status: 'none', complete: model.complete };
  // All aims at once, weighted: the aims one by one then begin from a plan that is good already.
  const first = ask(weighted(model), [], null);
  if (first.status === 'infeasible') return { status: 'none', complete: model.complete };
  if (first.values === null) return { status: 'out-of-time' };
  let values = first.values;
  const aims: AimReached[] = [];
  const held: MipRow[] = [];
  for (const aimed of model.aims) {
    // No aim has a negative cost, so none can be below nothing.
    const floor = 0;
    if (clock() - startS >= seconds || valueAt(aimed, values) <= floor + HELD) {
      aims.push(reached(aimed, values, floor));
    } else {
      const answer = ask(aimed.cost, held, values);
      if (answer.values !== null && valueAt(aimed, answer.values) < valueAt(aimed, values) - HELD) {
        values = answer.values;
      }
      const bound = answer.status === 'optimal' ? answer.bound : Math.max(floor, finite(answer.bound, floor));
      // With what was not looked at it might be anything down to nothing.
      aims.push(reached(aimed, values, model.complete ? bound : floor));
    }
    held.push({
      lower: Number.NEGATIVE_INFINITY,
      upper: valueAt(aimed, values) + HELD,
      entries: entriesOf(aimed.cost),
    });
  }
  // Among plans alike by every aim, the one with the fewest stops: nobody fills twice at one place.
  if (clock() - startS < seconds) values = ask(fewestStops(model), held, values).values ?? values;
  return { status: 'found', choice: withShortFills(problem, decode(model, values, aims), solver) };
}

function fewestStops({ mip, legs }: CarryModel): Float64Array {
  const cost = new Float64Array(mip.columns.length);
  for (const commodity of COMMODITIES)
    for (const { leg, column } of legs[commodity]) cost[column] = leg.hops.length;
  return cost;
}

/** Whether there is any plan; null where the time was not enough to tell, or not all was looked at. */
export function canBeDone(problem: CarryProblem, options: SolveOptions): boolean | null {
  const asking = askingOf(problem, options);
  const none = asking.model.complete ? false : null;
  if (asking.ask === null) return none;
  const { status, values } = asking.ask(new Float64Array(asking.model.mip.columns.length), [], null);
  if (values !== null) return true;
  return status === 'infeasible' ? none : null;
}

/** The model, and how it is asked so that every answer holds: not at all where no chain of legs leads to the end. */
function askingOf(problem: CarryProblem, { solver, seconds, clock }: SolveOptions) {
  const model = carryModel(problem);
  const startS = clock();
  const hasChain = COMMODITIES.every((commodity) => chained(problem, model, commodity));
  if (!hasChain) return { model, ask: null, startS };
  /** Choices that were found not to hold, as rows that rule them out. */
  const cuts: MipRow[] = [];
  const ask = (cost: Float64Array, held: readonly MipRow[], start: Float64Array | null): MipAnswer => {
    const leftS = Math.max(0.05, seconds - (clock() - startS));
    const mip = { columns: model.mip.columns, rows: [...model.mip.rows, ...held] };
    return askHolding({ problem, model, mip, cost, start, cuts }, { solver, seconds: leftS, clock });
  };
  return { model, ask, startS };
}

interface Asked {
  problem: CarryProblem;
  model: CarryModel;
  /** The model, perhaps with more rows, or columns behind its own. */
  mip: Mip;
  cost: Float64Array;
  start: Float64Array | null;
  /** Choices that were found not to hold, as rows that rule them out; more are added. */
  cuts: MipRow[];
}

/** Asks the solver till its answer holds when the hops of each leg are driven one after the other. */
export function askHolding(
  { problem, model, mip, cost, start, cuts }: Asked,
  { solver, seconds, clock }: SolveOptions,
): MipAnswer {
  const startS = clock();
  for (;;) {
    const leftS = Math.max(0.05, seconds - (clock() - startS));
    const answer = solver({ ...mip, rows: [...mip.rows, ...cuts] }, cost, { seconds: leftS, start });
    if (answer.values === null) return answer;
    const broken = brokenTours(problem, model, answer.values);
    if (broken.length === 0) return answer;
    cuts.push(...broken);
    if (clock() - startS >= seconds) return { ...answer, status: 'out-of-time', values: null };
  }
}

/**
 * Legs of several hops that do not hold with the halts of the other commodity that are made on them, as rows that rule
 * both out together: the leg, with every other over the same supplies that does not hold either, and of the halts as few
 * as already break them. The model sees to each hop by itself; that a halt leaves less for the next is seen to here.
 */
function brokenTours({ sides }: CarryProblem, model: CarryModel, values: Float64Array): MipRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const side = sides[commodity];
    const tours = model.legs[commodity].filter(({ leg }) => leg.hops.length > 1);
    const chosen = tours.filter(({ column }) => values[column] === 1);
    if (chosen.length === 0) return [];
    const other = sides[otherOf(commodity)];
    const used = model.legs[other.commodity]
      .filter(({ column }) => values[column] === 1)
      .flatMap(({ leg }) => leg.hops.map(({ to }) => other.edges[to]!));
    const halts = haltsOf({ ...other, edges: used }, side.course);
    const holds = (leg: Leg, made: readonly Halt[]) =>
      holdsOver(side, leg, (from, to) => costOf(haltsBetween(made, from, to)));
    return chosen
      .filter(({ leg }) => !holds(leg, halts))
      .map(({ leg }): MipRow => {
        let made = leg.hops.flatMap(({ from, to }) =>
          haltsBetween(halts, side.edges[from]!, side.edges[to]!),
        );
        for (const halt of made) {
          const fewer = made.filter((each) => each !== halt);
          if (!holds(leg, fewer)) made = fewer;
        }
        const path = pathOf(leg);
        const alike = tours.filter((tour) => pathOf(tour.leg) === path && !holds(tour.leg, made));
        const one = (column: number): [number, number] => [column, 1];
        return {
          lower: Number.NEGATIVE_INFINITY,
          upper: made.length,
          entries: [
            ...alike.map(({ column }) => one(column)),
            ...made.map(({ key }) => one(model.made.get(key)!.column)),
          ],
        };
      });
  });
}

const pathOf = ({ from, hops }: Leg): string => `${from} ${hops.map(({ to }) => to)}`;

/**
 * Weights with which the aims are summed for a first plan (ours). They decide nothing: each aim is minimised by itself
 * afterwards.
 */
const WEIGHT: Record<Aim, number> = {
  'doubtful-km': 100,
  'implied-km': 10,
  'stated-km': 1,
  cans: 50,
  'driving-km': 0.1,
  'can-km': 0.001,
  'short-fill-l': 0,
};

function weighted({ mip, aims }: CarryModel): Float64Array {
  const sum = new Float64Array(mip.columns.length);
  for (const { aim, cost } of aims) {
    cost.forEach((value, column) => {
      sum[column] = sum[column]! + WEIGHT[aim] * value;
    });
  }
  return sum;
}

/** The last aim: as little as may be left out of the tanks for the sake of the permitted masses. */
function withShortFills(problem: CarryProblem, choice: Choice, solver: MipSolver): Choice {
  if (problem.room === null) return choice;
  const model = shortFillModel(problem, problem.room, choice.legs, choice.cans);
  if (model === null) return choice;
  const { mip, columns } = model;
  const cost = new Float64Array(mip.columns.length).fill(1);
  const { values, status } = solver(mip, cost, { seconds: 5, start: null });
  if (values === null) throw new Error(`what to leave out of the tanks came out ${status}`);
  const shortL = (leg: PlannedLeg) => tidied(values[columns.get(leg)!]!);
  return {
    ...choice,
    legs: {
      fuel: choice.legs.fuel.map((leg) => ({ ...leg, shortL: shortL(leg) })),
      water: choice.legs.water.map((leg) => ({ ...leg, shortL: shortL(leg) })),
    },
    aims: [
      ...choice.aims,
      {
        aim: 'short-fill-l',
        value: values.reduce((sum, litres) => sum + tidied(litres), 0),
        proven: status === 'optimal',
        gap: 0,
      },
    ],
  };
}

const finite = (value: number, otherwise: number): number => (Number.isFinite(value) ? value : otherwise);

const valueAt = ({ cost, whole }: AimedCost, values: Float64Array): number => {
  const sum = cost.reduce((total, each, column) => total + each * values[column]!, 0);
  return whole ? Math.round(sum) : sum;
};

function reached(aimed: AimedCost, values: Float64Array, bound: number): AimReached {
  const value = valueAt(aimed, values);
  const best = aimed.whole ? Math.ceil(bound - HELD) : bound;
  const gap = Math.max(0, value - best);
  return { aim: aimed.aim, value, proven: gap <= 2 * HELD, gap: gap <= 2 * HELD ? 0 : gap };
}

const entriesOf = (cost: Float64Array): [number, number][] => {
  const entries: [number, number][] = [];
  cost.forEach((value, column) => {
    if (value !== 0) entries.push([column, value]);
  });
  return entries;
};

/** Whether any chain of legs leads from start to end. */
function chained({ sides }: CarryProblem, { legs }: CarryModel, commodity: Commodity): boolean {
  const reachedEdges = new Set([0]);
  // Legs come in the order of where they begin.
  for (const { leg } of legs[commodity]) if (reachedEdges.has(leg.from)) reachedEdges.add(leg.to);
  return reachedEdges.has(sides[commodity].edges.length - 1);
}

function decode(model: CarryModel, values: Float64Array, aims: AimReached[]): Choice {
  const chosen = (commodity: Commodity): PlannedLeg[] =>
    model.legs[commodity]
      .filter(({ column }) => values[column] === 1)
      .map(({ leg }) => ({ ...leg, shortL: 0 }))
      .sort((a, b) => a.from - b.from);
  return {
    legs: { fuel: chosen('fuel'), water: chosen('water') },
    cans: { fuel: values[model.owned.fuel]!, water: values[model.owned.water]! },
    aims,
    complete: model.complete,
  };
}

/** Solver noise is no litre. */
const tidied = (litres: number): number => (litres < 1e-6 ? 0 : litres);
