import { describe, expect, it } from 'vitest';
import { safeWater } from '../../../../server/core/crew/aboard/safe-water.ts';

describe('drinking water that no single failure empties', () => {
  const joined = { name: 'floor', litres: 60 };
  const apart = { name: 'roof', litres: 40, apart: true };

  it('is what stands apart where there are no cans', () => {
    expect(safeWater({ tanks: [joined, apart] })).toEqual({
      safeL: 40,
      worstLoss: { phrase: 'tank-lost', facts: { names: ['floor'] } },
    });
  });

  it('is nothing with all tanks on one pump, and each can that may be drunk from beside it', () => {
    expect(safeWater({ tanks: [joined] }).safeL).toBe(0);
    expect(safeWater({ tanks: [joined], cans: { litres: 20, owned: 2 } }).safeL).toBe(40);
    expect(safeWater({ tanks: [joined], cans: { litres: 20, owned: 2, grade: 'washing' } }).safeL).toBe(0);
  });
});
