import type { Commodity } from '../../contract/common.ts';
import type { Leg } from './leg.ts';
import { shortFillModel } from './mass-rows.ts';
import type { MipRow, MipSolver } from './mip.ts';
import { type Aim, type AimedCost, type CarryModel, carryModel } from './model.ts';
import { type CarryProblem, COMMODITIES } from './problem.ts';

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
export function solveCarry(problem: CarryProblem, { solver, seconds, clock }: SolveOptions): Solved {
  const model = carryModel(problem);
  const hasChain = COMMODITIES.every((commodity) => chained(problem, model, commodity));
  if (!hasChain) return { status: 'none' };
  const startS = clock();
  // All aims at once, weighted: the aims one by one then begin from a plan that is good already.
  const first = solver(model.mip, weighted(model), { seconds, start: null });
  if (first.status === 'infeasible') return { status: 'none' };
  if (first.values === null) return { status: 'out-of-time' };
  let values = first.values;
  const aims: AimReached[] = [];
  const held: MipRow[] = [];
  for (const aimed of model.aims) {
    const leftS = seconds - (clock() - startS);
    // No aim has a negative cost, so none can be below nothing.
    const floor = 0;
    if (leftS <= 0 || valueAt(aimed, values) <= floor + HELD) {
      aims.push(reached(aimed, values, floor));
    } else {
      const mip = { columns: model.mip.columns, rows: [...model.mip.rows, ...held] };
      const answer = solver(mip, aimed.cost, { seconds: Math.max(0.05, leftS), start: values });
      if (answer.values !== null && valueAt(aimed, answer.values) <= valueAt(aimed, values)) {
        values = answer.values;
      }
      aims.push(
        reached(
          aimed,
          values,
          answer.status === 'optimal' ? answer.bound : Math.max(floor, finite(answer.bound, floor)),
        ),
      );
    }
    held.push({
      lower: Number.NEGATIVE_INFINITY,
      upper: valueAt(aimed, values) + HELD,
      entries: entriesOf(aimed.cost),
    });
  }
  return { status: 'found', choice: withShortFills(problem, decode(model, values, aims), solver) };
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
