import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Commodity } from '../../../../server/contract/common.ts';
import { runOf } from '../../../../server/core/plan/drive/run.ts';
import { turnBackOf } from '../../../../server/core/plan/drive/turn-back/turn-back.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { otherOf } from '../../../../server/core/plan/side/other-of.ts';
import { COMMODITIES } from '../../../../server/core/quantity/commodities.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { stopFailsRows } from '../by-hand/contracted.ts';
import { FUEL_L_PER_KM, KM_PER_DAY, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';
import { heldBasis, type SolvedBasis, solvedBasis } from './solved-basis.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const runs = { numRuns: 80, seed: 20_270_106 };

/** Where a plan fills a commodity, with the km off the route. */
const usedBy = ({ held }: SolvedBasis, commodity: Commodity) =>
  held.legs[commodity].map(({ to }) => ({ km: to.atM / 1000, offKm: to.detourM / 1000, kind: to.kind }));

/** By hand: where along the route, metres, the supplies of both commodities lie that are one stop with that at a place. */
function stopAround({ basis }: SolvedBasis, km: number): number[] {
  const passings = COMMODITIES.flatMap((commodity) => basis.sides[commodity].side.edges)
    .filter(({ kind }) => kind === 'passing')
    .map(({ atM }) => atM)
    .sort((a, b) => a - b);
  let stop: number[] = [];
  for (const atM of passings) {
    if (stop.length > 0 && atM - stop[0]! > 3000) {
      if (stop.includes(km * 1000)) return stop;
      stop = [];
    }
    stop.push(atM);
  }
  return stop;
}

/** By hand: litres for a way with both its ends' detours and those that are made on it. */
function needL(route: SmallRoute, commodity: Commodity, km: number): number {
  if (commodity === 'fuel') return km * FUEL_L_PER_KM;
  return (km / KM_PER_DAY) * route.waterLPerDay;
}

describe('a stop of a plan that fails', () => {
  it('leaves what the route without it leaves, driven by hand', { tags: 'slow' }, () => {
    let rows = 0;
    let byAnother = 0;
    fc.assert(
      fc.property(smallRoute(), (route) => {
        const solved = solvedBasis(route, solver);
        if (solved === null) return;
        for (const row of stopFailsRows(solved.basis)) {
          rows += 1;
          const { commodity } = row;
          const legs = solved.held.legs[commodity];
          const stop = stopAround(solved, row.atKm!);
          const index = legs.findIndex(({ to }) => stop.includes(to.atM));
          const count = legs.slice(index).findIndex(({ to }) => !stop.includes(to.atM));
          const before = legs[index]!;
          const after = legs[index + count]!;
          const ends = [before.from, after.to];
          // What fails is sought in vain, and every halt of the other commodity made on the way, each once.
          const inVain = legs
            .slice(index, index + count)
            .map(({ to }) => ({ km: to.atM / 1000, offKm: to.detourM / 1000, kind: to.kind }));
          const halts = [...inVain, ...usedBy(solved, otherOf(commodity))].filter(
            ({ km, kind }) =>
              kind === 'passing' &&
              km > before.from.atM / 1000 &&
              km <= after.to.atM / 1000 &&
              !ends.some((end) => end.kind === 'passing' && end.atM === km * 1000),
          );
          const offKm = new Map(halts.map((halt) => [halt.km, halt.offKm]));
          const viaKm = [...offKm.values()].reduce((sum, km) => sum + 2 * km, 0);
          const km = (after.to.atM - before.from.atM + before.from.detourM + after.to.detourM) / 1000 + viaKm;
          const need = needL(route, commodity, km);
          const left = before.tankL + before.cans * route.canL[commodity] - need;
          const reserve = route.reserveL[commodity] + route.shareOfNeed[commodity] * need;
          if (row.instead !== null) {
            byAnother += 1;
            expect(row.marginL).toBeGreaterThan(left - reserve);
            continue;
          }
          expect(row.arriveL).toBeCloseTo(left, 6);
          expect(row.marginL).toBeCloseTo(left - reserve, 6);
        }
      }),
      runs,
    );
    expect(rows - byAnother).toBeGreaterThan(30);
  });
});

describe('the turn-back points of a plan', () => {
  it('never come later with more in reserve, the same stops and cans', { tags: 'slow' }, () => {
    let earlier = 0;
    fc.assert(
      fc.property(
        smallRoute(),
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 0, max: 8 }),
        (route, fuel, water) => {
          const solved = solvedBasis(route, solver);
          if (solved === null) return;
          const reserveL = { fuel: route.reserveL.fuel + fuel, water: route.reserveL.water + water };
          const more = heldBasis({ ...route, reserveL }, solved.held.choice);
          for (const commodity of COMMODITIES) {
            more.basis.sides[commodity].stretches.forEach((stretch, index) => {
              const before = turnBackOf(runOf(solved.basis.sides[commodity].stretches[index]!));
              const now = turnBackOf(runOf(stretch));
              if (before === null) expect(now).toBeNull();
              else if (now !== null) {
                expect(now).toBeLessThanOrEqual(before + 1e-6);
                if (now < before - 1) earlier += 1;
              }
            });
          }
        },
      ),
      runs,
    );
    expect(earlier).toBeGreaterThan(8);
  });
});
