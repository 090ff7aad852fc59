import type { Commodity } from '../../contract/common.ts';
import type { Leg } from './leg.ts';
import { shortFillModel } from './mass-rows.ts';
import type { MipAnswer, MipRow, MipSolver } from './mip.ts';
import { type Aim, type AimedCost, type CarryModel, carryModel } from './model.ts';
import {
  type CarryProblem,
  COMMODITIES,
  costOf,
  haltsBetween,
  haltsOf,
  otherOf,
  type SupplyEdge,
} from './problem.ts';
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
}

export type Solved = { status: 'found'; choice: Choice } | { status: 'none' } | { status: 'out-of-time' };

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
  if (asking === null) return { status: 'none' };
  const { model, ask, startS } = asking;
  // All aims at once, weighted: the aims one by one then begin from a plan that is good already.
  const first = ask(weighted(model), [], null);
  if (first.status === 'infeasible') return { status: 'none' };
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
      // With other supplies it might be anything down to nothing.
      aims.push(reached(aimed, values, problem.thinned === true ? floor : bound));
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

/** Whether there is any plan; null where the time was not enough to tell. */
export function canBeDone(problem: CarryProblem, options: SolveOptions): boolean | null {
  const asking = askingOf(problem, options);
  if (asking === null) return false;
  const { status, values } = asking.ask(new Float64Array(asking.model.mip.columns.length), [], null);
  if (values !== null) return true;
  return status === 'infeasible' ? false : null;
}

/** The model, and how it is asked so that every answer holds; null where no chain of legs leads to the end. */
function askingOf(problem: CarryProblem, { solver, seconds, clock }: SolveOptions) {
  const model = carryModel(problem);
  if (!COMMODITIES.every((commodity) => chained(problem, model, commodity))) return null;
  const startS = clock();
  /** Choices that were found not to hold, as rows that rule them out. */
  const cuts: MipRow[] = [];
  const ask = (cost: Float64Array, held: readonly MipRow[], start: Float64Array | null): MipAnswer => {
    for (;;) {
      const leftS = Math.max(0.05, seconds - (clock() - startS));
      const mip = { columns: model.mip.columns, rows: [...model.mip.rows, ...cuts, ...held] };
      const answer = solver(mip, cost, { seconds: leftS, start });
      if (answer.values === null) return answer;
      const broken = brokenTours(problem, model, answer.values);
      if (broken.length === 0) return answer;
      cuts.push(...broken);
      if (clock() - startS >= seconds) return { ...answer, status: 'out-of-time', values: null };
    }
  };
  return { model, ask, startS };
}

/**
 * Legs of several hops that do not hold with the halts of the other commodity that are made on them, each as a row that
 * rules them out together. The model sees to each hop by itself; that a halt leaves less for the next is seen to here.
 */
function brokenTours({ sides }: CarryProblem, model: CarryModel, values: Float64Array): MipRow[] {
  return COMMODITIES.flatMap((commodity) => {
    const side = sides[commodity];
    const tours = model.legs[commodity].filter(
      ({ leg, column }) => leg.hops.length > 1 && values[column] === 1,
    );
    if (tours.length === 0) return [];
    const other = sides[otherOf(commodity)];
    const used = model.legs[other.commodity]
      .filter(({ column }) => values[column] === 1)
      .flatMap(({ leg }) => leg.hops.map(({ to }) => other.edges[to]!));
    const halts = haltsOf({ ...other, edges: used }, side.course);
    const on = (from: SupplyEdge, to: SupplyEdge) => haltsBetween(halts, from, to);
    return tours
      .filter(({ leg }) => !holdsOver(side, leg, (from, to) => costOf(on(from, to))))
      .map(({ leg, column }): MipRow => {
        const made = leg.hops.flatMap(({ from, to }) => on(side.edges[from]!, side.edges[to]!));
        return {
          lower: Number.NEGATIVE_INFINITY,
          upper: made.length,
          entries: [
            [column, 1],
            ...made.map(({ key }): [number, number] => [model.made.get(key)!.column, 1]),
          ],
        };
      });
  });
}

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
  };
}

/** Solver noise is no litre. */
const tidied = (litres: number): number => (litres < 1e-6 ? 0 : litres);
