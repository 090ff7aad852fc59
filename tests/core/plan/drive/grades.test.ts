import { describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import { gradesAfter } from '../../../../server/core/plan/drive/grades.ts';
import { settleRig } from '../../../../server/core/rig/settle-rig.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';

const even = (litres: number) => ({ low: litres, typical: litres, high: litres });

/** 30 l that serve both and 10 l kept for washing; of 5 l a day 3 are drunk and 1 is for teeth and hands, of drinking grade; 1 washes. */
const GRADED: RigFile = {
  ...EXAMPLE_RIG,
  water: {
    tanks: [
      { name: 'any', litres: 30 },
      { name: 'shower', litres: 10, grade: 'washing' },
    ],
    cans: { litres: 10, owned: 1 },
    reserve: { litres: 0 },
  },
  crew: {
    people: [{ drinking: even(3), cooking: even(0), washingUp: even(0), washing: even(2), shower: 0 }],
  },
};

describe('water aboard by what it is for', () => {
  const gradesWith = (usedL: number, cansDrinkable: boolean) =>
    gradesAfter(settleRig(GRADED).rig, { tankL: 40, cansL: 10, cansDrinkable }, usedL);

  it('has a fifth of the use drawn from what is kept for washing, the rest from what may be drunk', () => {
    // 10 l used: 2 washed, 8 of drinking grade.
    const levels = gradesWith(10, true);
    expect(levels?.drinkableL).toBeCloseTo(32, 9);
    expect(levels?.washingL).toBeCloseTo(8, 9);
  });

  it('counts cans kept for washing as such', () => {
    const levels = gradesWith(10, false);
    expect(levels?.drinkableL).toBeCloseTo(22, 9);
    expect(levels?.washingL).toBeCloseTo(18, 9);
  });

  it('is not told without a crew', () => {
    expect(
      gradesAfter(settleRig(EXAMPLE_RIG).rig, { tankL: 40, cansL: 0, cansDrinkable: true }, 5),
    ).toBeNull();
  });
});
