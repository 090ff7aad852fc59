import { beforeAll, describe, expect, it } from 'vitest';
import { MipBuilder, type MipSolver } from '../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../server/io/solver.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Whole numbers x and y, 3x + 5y >= 19: worked by hand. */
function wholeNumbers() {
  const builder = new MipBuilder();
  const x = builder.column(0, 10, true);
  const y = builder.column(0, 10, true);
  builder.row(19, Number.POSITIVE_INFINITY, [
    [x, 3],
    [y, 5],
  ]);
  return builder;
}

describe('the solver', () => {
  it('gives the least of whole numbers, rounded, with its bound', () => {
    const answer = solver(wholeNumbers(), Float64Array.of(2, 3), { seconds: 10, start: null });
    // x 3, y 2: 9 + 10 = 19 at a cost of 12; y 4 costs as much.
    expect(answer).toMatchObject({ status: 'optimal', objective: 12, bound: 12 });
    const [x, y] = answer.values!;
    expect(3 * x! + 5 * y!).toBeGreaterThanOrEqual(19);
    expect(Number.isInteger(x) && Number.isInteger(y)).toBe(true);
  });

  it('says that nothing can be', () => {
    const builder = wholeNumbers();
    builder.row(Number.NEGATIVE_INFINITY, 1, [
      [0, 1],
      [1, 1],
    ]);
    expect(solver(builder, Float64Array.of(1, 1), { seconds: 10, start: null }).status).toBe('infeasible');
  });

  it('takes a start that it is given, and forgets one model before the next', () => {
    const start = Float64Array.of(0, 4);
    const first = solver(wholeNumbers(), Float64Array.of(1, 0), { seconds: 10, start });
    expect(first.objective).toBe(0);
    const second = solver(wholeNumbers(), Float64Array.of(0, 1), { seconds: 10, start: null });
    expect(second.objective).toBe(0);
    expect(second.values![0]).toBeGreaterThanOrEqual(7);
  });
});
