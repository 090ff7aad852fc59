import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { failuresOf } from '../../../../server/core/plan/drive/failures/driven-failures.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { stopFailures } from '../../../../server/core/plan/what-if/stop-fails.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { questionOf, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';
import { heldBasis } from '../what-if/solved-basis.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const NOISE_L = 1e-6;
const options = () => ({ solver, seconds: 60, clock: () => 0 });

/** Some of the objects are passed twice: the stops take turns at being so many. */
const withObjects = (drawn: SmallRoute, objects: number): SmallRoute => ({
  ...drawn,
  stops: [...drawn.stops]
    .sort((a, b) => a.atKm - b.atKm)
    .map((stop, index) => ({ ...stop, evidence: 'stated', id: `node/${index % objects}` })),
});

const safePlan = (route: SmallRoute) => {
  const solved = solveCarry({ ...questionOf(route), oneFailure: { spendReserve: false } }, options());
  return solved.status === 'found' ? heldBasis(route, solved.choice) : null;
};

describe('what is said of failures on one page', () => {
  it('of a plan against one failure no what-if says that a stop which fails leaves no way', {
    tags: 'slow',
  }, () => {
    let rows = 0;
    fc.assert(
      fc.property(smallRoute(5), fc.integer({ min: 1, max: 5 }), (drawn, objects) => {
        const route = withObjects(drawn, objects);
        const safe = safePlan(route);
        if (safe === null) return;
        const failures = failuresOf(safe.held, false);
        const whatIfs = stopFailures(safe.basis);
        for (const { row, used } of whatIfs) {
          rows += 1;
          const of = failures.filter(
            ({ commodity, at }) => commodity === row.commodity && used.some(({ id }) => id === at.id),
          );
          // None where the crew went back before it came to this commodity's.
          const wentBack = failures.some(
            ({ next, at }) => next === 'back' && at.atM < row.atM! && used.some(({ id }) => id === at.id),
          );
          if (wentBack) continue;
          expect(of.length).toBeGreaterThan(0);
          const keptBack = row.backMarginL !== null && row.backMarginL >= -NOISE_L;
          const kept = of.every(({ next }) =>
            next === 'on' ? row.marginL >= -NOISE_L || keptBack : keptBack,
          );
          if (used.length === 1) expect(kept).toBe(true);
          else expect(row.marginL >= -NOISE_L || keptBack).toBe(true);
        }
      }),
      { numRuns: 300, seed: 20_261_201 },
    );
    expect(rows).toBeGreaterThan(40);
  });
});
