import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Aim } from '../../../../server/core/plan/model/aims.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { solveCarry } from '../../../../server/core/plan/solve/solve.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bestByBruteForce, greatestMarginKm } from '../by-hand/brute-force.ts';
import { questionOf, townRoute } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** The aims of the brute force, in its order, each with how many of its own units one of the core's is. */
const AIMS: readonly [Aim, number][] = [
  ['doubtful-m', 0.001],
  ['implied-m', 0.001],
  ['stated-m', 0.001],
  ['cans-to-get', 1],
  ['lost-h', 1],
  ['driving-m', 0.001],
  ['can-m', 0.001],
];

/** Plans that differ by a metre are alike. */
const ALIKE_KM = 0.0011;

const cases = fc
  .sample(townRoute(5), { numRuns: 1000, seed: 20_261_130 })
  .map((route, index) => [index + 1, route] as const);

describe('a plan that is searched for is as good by every aim as the best of all by brute force', {
  tags: 'slow',
}, () => {
  it.each(cases)('case %i', (_number, route) => {
    const solution = solveCarry(questionOf(route), { solver, seconds: 60, clock: () => 0 });
    const best = bestByBruteForce(route);
    expect(solution.status).toBe(best === null ? 'none' : 'found');
    if (solution.status !== 'found' || best === null) return;
    const { aims } = solution.choice;
    const values = AIMS.map(([name, per]) => (aims.find(({ aim }) => aim === name)?.value ?? 0) * per);
    expect(values).toEqual(best.map((value) => expect.closeTo(value, 6)));
    const marginKm = (aims.find(({ aim }) => aim === 'least-margin-m')?.value ?? 0) / 1000;
    const greatestKm = greatestMarginKm(route, best);
    // By hand every leg has the fewest cans; one more that is poured at once costs nothing and spares some.
    expect(marginKm).toBeGreaterThan(greatestKm - ALIKE_KM);
    const { cans } = solution.choice;
    if (cans.fuel + cans.water === 0) expect(marginKm).toBeLessThan(greatestKm + ALIKE_KM);
  });
});
