import { beforeAll, expect, it } from 'vitest';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { restsOn } from '../../../../server/core/plan/shown/rests-on.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bareRoute } from '../by-hand/small-routes.ts';
import { solvedBasis } from '../what-if/solved-basis.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const planOver = (lengthKm: number) => {
  const solved = solvedBasis(bareRoute({ lengthKm, mostCans: { fuel: 2, water: 0 } }), solver);
  if (solved === null) throw new Error('no plan');
  return solved.held;
};
const cautionsOver = (lengthKm: number) => restsOn(planOver(lengthKm));

it('a plan rests on cans that are full at the start, and only where it has some; on no sketch where none is crossed', () => {
  // 20 l for 200 km; a can of 5 l for the next 50.
  expect(cautionsOver(200)).toEqual([]);
  expect(cautionsOver(250)).toEqual([
    { code: 'plan-cans-at-start', facts: { commodity: 'fuel', cans: 1 }, fromM: 0, toM: 0 },
  ]);
});

it('a plan rests on what no extract covers, for each leg that crosses such a stretch', () => {
  const plan = planOver(200);
  const [leg, ...others] = plan.legs.water;
  if (leg === undefined) throw new Error('no leg');
  const across = { ...leg, figures: { ...leg.figures, acrossNoData: true } };
  expect(restsOn({ ...plan, legs: { ...plan.legs, water: [across, ...others] } })).toEqual([
    { code: 'plan-across-no-data', facts: { commodity: 'water' }, fromM: 0, toM: 200_000 },
  ]);
});
