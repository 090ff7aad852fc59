import { beforeAll, expect, it } from 'vitest';
import type { Choice, PlannedLeg } from '../../../../server/core/plan/model/choice.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { withShortFills } from '../../../../server/core/plan/solve/short-fill.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

const leg = (from: number, cans: number, tankL: number): PlannedLeg => ({
  from,
  to: from + 1,
  hops: [{ from, to: from + 1, tankL, cans, filledL: 0, spareM: 0 }],
  spareL: 0,
  canM: 0,
  shortL: 0,
});

it('the tanks are left short by as much as the cans of a leg weigh too much, on that leg alone', () => {
  // Two cans of 5 l at a kilogram a litre from km 100 on, where 6 kg are permitted: 4 l less in the tank.
  const question = questionOf(bareRoute({ lengthKm: 200, stops: [bareStop(100)] }));
  const can = { empty: 0, filling: 5 };
  const limit = {
    name: 'total' as const,
    leftKg: 6,
    canKg: { fuel: can, water: can },
    perLitreKg: { fuel: 1, water: 1 },
  };
  const choice: Choice = {
    legs: { fuel: [leg(0, 0, 20), leg(1, 2, 20)], water: [leg(0, 0, 40)] },
    cans: { fuel: 2, water: 0 },
    aims: [],
    complete: true,
  };
  const withLimits = (leftKg: number) =>
    withShortFills({ ...question, room: { limits: [{ ...limit, leftKg }] } }, choice, solver);
  const short = withLimits(6);
  expect(short.legs.fuel.map(({ shortL }) => shortL)).toEqual([0, expect.closeTo(4, 9)]);
  expect(short.legs.water.map(({ shortL }) => shortL)).toEqual([0]);
  expect(short.aims).toEqual([{ aim: 'short-fill-l', value: expect.closeTo(4, 9), proven: true, gap: 0 }]);
  // Where all is permitted the choice stays as it is.
  expect(withLimits(10)).toEqual(choice);
});
