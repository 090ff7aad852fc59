import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { reckon } from '../../../../server/core/gaps/reckon.ts';
import type { Basis } from '../../../../server/core/plan/drive/basis.ts';
import { pointsAt, runOf } from '../../../../server/core/plan/drive/run.ts';
import type { Stretch } from '../../../../server/core/plan/drive/stretch.ts';
import { turnBackOf } from '../../../../server/core/plan/drive/turn-back/turn-back.ts';
import { turnBacksOf } from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { passingEdge } from '../../../helpers/course.ts';
import { gaugeOf } from '../by-hand/contracted.ts';
import { FUEL_L_PER_KM, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';
import { solvedBasis } from '../what-if/solved-basis.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const runs = { numRuns: 80, seed: 20_270_107 };

/** Every line of the gauge of a plan with the stretch that it speaks of, for each commodity. */
function linesOf(route: SmallRoute) {
  const solved = solvedBasis(route, solver);
  if (solved === null) return [];
  const { basis } = solved;
  return gaugeOf(basis, turnBacksOf(basis)).rows.flatMap((row) =>
    COMMODITIES.map((commodity) => {
      const side = row[commodity];
      return { row, commodity, side, stretch: stretchOf(basis, commodity, side.from.atKm, side.to.atKm) };
    }),
  );
}

const stretchOf = (basis: Basis, commodity: 'fuel' | 'water', fromKm: number, toKm: number): Stretch =>
  basis.sides[commodity].stretches.find(
    ({ from, to }) => from.atM / 1000 === fromKm && to.atM / 1000 === toKm,
  )!;

describe('the gauge of a plan', { tags: 'slow' }, () => {
  it('asks for what arrives with exactly the reserve, left behind with so much less', () => {
    let lines = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        for (const { row, commodity, side, stretch } of linesOf(route)) {
          const lessL = side.plannedL - side.onL;
          const lower = runOf({ ...stretch, tankL: stretch.tankL - lessL });
          expect(lower.marginL).toBeCloseTo(0, 6);
          if (row.at === 'start' || row.commodities.includes(commodity)) continue;
          lines += 1;
          const there = pointsAt(lower, row.atKm * 1000).map(({ litres }) => litres);
          expect(Math.min(...there.map((litres) => Math.abs(litres - side.onL)))).toBeLessThan(1e-6);
        }
      }),
      runs,
    );
    expect(lines).toBeGreaterThan(80);
  });

  it('asks for the fuel of the way that is left, reckoned from there, and the reserve', () => {
    let lines = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        for (const { row, commodity, side, stretch } of linesOf(route)) {
          if (commodity !== 'fuel' || row.at !== 'step') continue;
          const atM = row.atKm * 1000;
          // A halt at the very place is still to come.
          const viaM = stretch.detours
            .filter((detour) => detour.atM >= atM)
            .reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
          const left = reckon(stretch.course, passingEdge(atM), stretch.to, { departL: side.onL, viaM });
          expect(left.arriveL).toBeCloseTo(runOf(stretch).figures.reserveL, 6);
          lines += 1;
          // Home: the way back along the route, off it to the supply behind, and the reserve.
          const backKm = (atM - stretch.from.atM + stretch.from.detourM) / 1000;
          expect(side.backL).toBeCloseTo(backKm * FUEL_L_PER_KM + runOf(stretch).figures.reserveL, 6);
        }
      }),
      runs,
    );
    expect(lines).toBeGreaterThan(40);
  });

  it('has enough aboard to go back before the turn-back point of the stretch, and not behind it', () => {
    let behind = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        for (const { row, side, stretch } of linesOf(route)) {
          if (row.at !== 'step' || side.backL === null) continue;
          const turnM = turnBackOf(runOf(stretch)) ?? stretch.from.atM;
          const atM = row.atKm * 1000;
          if (atM < turnM - 1) expect(side.plannedL).toBeGreaterThanOrEqual(side.backL - 1e-6);
          if (atM > turnM + 1) {
            expect(side.plannedL).toBeLessThan(side.backL);
            behind += 1;
          }
        }
      }),
      runs,
    );
    expect(behind).toBeGreaterThan(20);
  });
});
