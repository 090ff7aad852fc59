import loadHighs, { type Model } from 'highs';
import { at, numberAt } from '../core/lists/at.ts';
import type { Mip, MipAnswer, MipSolver } from '../core/plan/model/mip.ts';

/** How far from a whole number an integer column may be and still be taken for one: HiGHS' own tolerance is 1e-6. */
const INTEGRALITY = 1e-5;
/** HiGHS' code for a solution that keeps all bounds and rows. */
const FEASIBLE = 2;

/**
 * HiGHS as a solver of mixed-integer models. It blocks its thread: call it in a worker. Loaded once; answers are the same
 * for the same input (one thread, fixed seed).
 */
export async function loadSolver(): Promise<MipSolver> {
  const highs = await loadHighs();
  const { infinity, constants } = highs;
  const bounded = (value: number) => (Number.isFinite(value) ? value : value > 0 ? infinity : -infinity);

  return (mip, cost, { seconds, start }) =>
    highs.withModel((model: Model): MipAnswer => {
      model.options.set({ ...OPTIONS, time_limit: Math.max(0.01, seconds) });
      model.passModel(modelData(mip, cost, bounded));
      if (start !== null) model.setSolution({ colValue: start });
      model.run();
      return answerOf(model, constants.modelStatus, mip, cost);
    });
}

function answerOf(
  model: Model,
  { infeasible, optimal, timeLimit }: { infeasible: number; optimal: number; timeLimit: number },
  mip: Mip,
  cost: Float64Array,
): MipAnswer {
  const status = model.getModelStatus();
  if (status === infeasible) return { status: 'infeasible', ...NOTHING };
  if (status !== optimal && status !== timeLimit) throw new Error(`the solver ended with status ${status}`);
  if (model.info.get('primal_solution_status') !== FEASIBLE) return { status: 'out-of-time', ...NOTHING };
  const values = soundValues(mip, model.getSolution().colValue);
  const objective = values.reduce((sum, value, column) => sum + numberAt(cost, column) * value, 0);
  return status === optimal
    ? { status: 'optimal', values, objective, bound: objective }
    : { status: 'out-of-time', values, objective, bound: Number(model.info.get('mip_dual_bound')) };
}

const OPTIONS = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 1e-7,
  mip_feasibility_tolerance: 1e-7,
  random_seed: 0,
  // The models are nearly networks: presolve takes four fifths of the time and wins nothing (measured, 60 stops).
  presolve: 'off',
} as const;

/** An answer without a solution. */
const NOTHING = { values: null, objective: Number.NaN, bound: Number.NaN } as const;

function modelData(mip: Mip, cost: Float64Array, bounded: (value: number) => number) {
  const starts = new Int32Array(mip.rows.length + 1);
  let entryCount = 0;
  for (const [index, row] of mip.rows.entries()) {
    entryCount += row.entries.length;
    starts[index + 1] = entryCount;
  }
  const indices = new Int32Array(entryCount);
  const values = new Float64Array(entryCount);
  let next = 0;
  for (const { entries } of mip.rows) {
    for (const [column, value] of entries) {
      indices[next] = column;
      values[next] = value;
      next += 1;
    }
  }
  return {
    numCols: mip.columns.length,
    numRows: mip.rows.length,
    colCost: cost,
    colLower: Float64Array.from(mip.columns, (column) => bounded(column.lower)),
    colUpper: Float64Array.from(mip.columns, (column) => bounded(column.upper)),
    rowLower: Float64Array.from(mip.rows, (row) => bounded(row.lower)),
    rowUpper: Float64Array.from(mip.rows, (row) => bounded(row.upper)),
    matrix: {
      format: 'csr' as const,
      numRows: mip.rows.length,
      numCols: mip.columns.length,
      starts,
      indices,
      values,
    },
    // 0: continuous, 1: integer.
    integrality: Int32Array.from(mip.columns, (column) => (column.integer ? 1 : 0)),
  };
}

/** The columns that came back, integers rounded; a model that was misread would come back with others. */
function soundValues(mip: Mip, values: Float64Array): Float64Array {
  if (values.length !== mip.columns.length) {
    throw new Error(`the solver gave ${values.length} columns of ${mip.columns.length}`);
  }
  return values.map((value, index) => {
    const { integer, lower, upper } = at(mip.columns, index);
    const rounded = integer ? Math.round(value) : value;
    if (Math.abs(rounded - value) > INTEGRALITY) throw new Error(`column ${index} is ${value}, not whole`);
    return Math.min(upper, Math.max(lower, rounded));
  });
}
