import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aboardAfter, pourAfterL } from '../../../../server/core/plan/legs/pour.ts';

describe('pouring', () => {
  it('pours a can when the tank first has room for a whole one', () => {
    const facts = { capacityL: 100, tankL: 100, canL: 20, cans: 3 };
    expect(pourAfterL(facts)).toEqual([20, 40, 60]);
    expect(aboardAfter(facts, 19)).toEqual({ tankL: 81, cansL: [20, 20, 20] });
    expect(aboardAfter(facts, 20)).toEqual({ tankL: 100, cansL: [0, 20, 20] });
    expect(aboardAfter(facts, 110)).toEqual({ tankL: 50, cansL: [0, 0, 0] });
  });

  it('pours at once where the tank has room from the first', () => {
    expect(pourAfterL({ capacityL: 100, tankL: 70, canL: 20, cans: 2 })).toEqual([0, 10]);
  });

  it('draws from a can larger than the tank once the tank is empty', () => {
    const facts = { capacityL: 10, tankL: 10, canL: 20, cans: 2 };
    expect(aboardAfter(facts, 10)).toEqual({ tankL: 0, cansL: [20, 20] });
    expect(aboardAfter(facts, 25)).toEqual({ tankL: 0, cansL: [5, 20] });
    expect(aboardAfter(facts, 35)).toEqual({ tankL: 0, cansL: [0, 15] });
  });

  it('loses no litre and never overfills the tank', () => {
    fc.assert(
      fc.property(
        fc.record({
          capacityL: fc.integer({ min: 1, max: 200 }),
          short: fc.double({ min: 0, max: 1, noNaN: true }),
          canL: fc.integer({ min: 1, max: 60 }),
          cans: fc.integer({ min: 0, max: 8 }),
          used: fc.double({ min: 0, max: 1, noNaN: true }),
        }),
        ({ capacityL, short, canL, cans, used }) => {
          const tankL = capacityL * (1 - short);
          const usedL = used * (tankL + cans * canL);
          const held = aboardAfter({ capacityL, tankL, canL, cans }, usedL);
          const sumL = held.tankL + held.cansL.reduce((sum, litres) => sum + litres, 0);
          expect(sumL).toBeCloseTo(tankL + cans * canL - usedL, 6);
          expect(held.tankL).toBeLessThanOrEqual(capacityL + 1e-9);
          expect(held.tankL).toBeGreaterThanOrEqual(-1e-9);
        },
      ),
    );
  });
});
