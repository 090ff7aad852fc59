import { expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { usableL } from '../../../server/core/gaps/gap-grades.ts';
import { reckon } from '../../../server/core/gaps/reckon.ts';
import { runOf } from '../../../server/core/plan/drive/run.ts';
import { courseOf, EXAMPLE_RIG, endEdge, startEdge } from '../../helpers/course.ts';

/** Two litres to drink and two to wash with a day for one person, the first litre of washing being of drinking grade. */
const RIG: RigFile = {
  ...EXAMPLE_RIG,
  water: { tanks: [{ name: 'any', litres: 40 }], cans: { litres: 20, owned: 1 }, reserve: { litres: 5 } },
  crew: {
    people: [
      {
        drinking: { low: 2, typical: 2, high: 2 },
        cooking: { low: 0, typical: 0, high: 0 },
        washingUp: { low: 0, typical: 0, high: 0 },
        washing: { low: 2, typical: 2, high: 2 },
        shower: 0,
      },
    ],
  },
};
const course = courseOf({ commodity: 'water', rigFile: RIG, lengthM: 735_000 });
const end = endEdge(735_000);

it('water in cans kept for washing is nobody’s drinking water', () => {
  const { drinkingPerDay, washingPerDay } = course.rig.water.grades!;
  // 735 km of 245 km a day are three days.
  const [drinksL, washesL] = [3 * drinkingPerDay.high, 3 * washingPerDay.high];
  expect(washesL).toBeLessThan(20);
  const apart = reckon(course, startEdge, end, { departL: 60, washingCansL: 20 }).grades!;
  expect(apart.drinking.arriveL).toBeCloseTo(40 - drinksL, 9);
  expect(apart.washing.arriveL).toBeCloseTo(20 - washesL, 9);
  const shared = reckon(course, startEdge, end, { departL: 60 }).grades!;
  expect(shared.drinking.arriveL).toBeCloseTo(60 - drinksL - washesL, 9);
  const share = drinksL / (drinksL + washesL);
  expect(usableL(course.rig, 60, 5, 20)).toBeCloseTo(Math.min(55, 35 / share), 9);
  const run = (washingCans: boolean) =>
    runOf({ course, from: startEdge, to: end, tankL: 40, cans: 1, canL: 20, detours: [], washingCans });
  expect(run(true).arriveL).toBeCloseTo(40 - drinksL, 9);
  expect(run(true).marginL).toBeLessThan(run(false).marginL);
});
