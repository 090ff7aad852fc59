import type { Commodity } from '../../contract/common.ts';
import type { Leg } from './leg.ts';
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
  let values: Float64Array | null = null;
  const aims: AimReached[] = [];
  const held: MipRow[] = [];
  for (const aimed of model.aims) {
    const leftS = seconds - (clock() - startS);
    // No aim has a negative cost, so none can be below nothing.
    const floor = 0;
    if (values !== null && valueAt(aimed, values) <= floor + HELD) {
      aims.push(reached(aimed, values, floor));
    } else if (values !== null && leftS <= 0) {
      aims.push(reached(aimed, values, floor));
    } else {
      const mip = { columns: model.mip.columns, rows: [...model.mip.rows, ...held] };
      const answer = solver(mip, aimed.cost, { seconds: Math.max(0.05, leftS), start: values });
      if (answer.values !== null) {
        const better: boolean = values === null || valueAt(aimed, answer.values) <= valueAt(aimed, values);
        if (better) values = answer.values;
      } else if (values === null) {
        return { status: answer.status === 'infeasible' ? 'none' : 'out-of-time' };
      }
      if (values === null) return { status: 'out-of-time' };
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
  return values === null ? { status: 'none' } : { status: 'found', choice: decode(model, values, aims) };
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
      .map(({ leg, shortFill }) => ({ ...leg, shortL: shortFill === null ? 0 : tidied(values[shortFill]!) }))
      .sort((a, b) => a.from - b.from);
  return {
    legs: { fuel: chosen('fuel'), water: chosen('water') },
    cans: { fuel: values[model.owned.fuel]!, water: values[model.owned.water]! },
    aims,
  };
}

/** Solver noise is no litre. */
const tidied = (litres: number): number => (litres < 1e-6 ? 0 : litres);
