import { describe, expect, it } from 'vitest';
import { type CabStore, cabTank, leastEighths, readingL } from '../../../server/core/cab/aboard.ts';

const main = { name: 'main', filledL: 130, unusableL: 3 };
const store: CabStore = {
  tanks: [main, { ...main, name: 'second', filledL: 36, unusableL: 0 }],
  canL: 20,
  cans: 4,
};

describe('what is read of the gauges', () => {
  it.each([
    ['five eighths, and two full cans', { tanks: [{ eighths: 5 }, { eighths: 0 }], cans: 2 }, 81.25 - 3 + 40],
    ['nothing below what cannot be drawn', { tanks: [{ eighths: 0 }, { litres: 0 }], cans: 0 }, 0],
    ['no more than is filled in', { tanks: [{ litres: 0 }, { eighths: 8 }], cans: 0 }, 36],
    ['litres as they are', { tanks: [{ litres: 71 }, { litres: 2 }], cans: 0 }, 73],
    ['a tank that was not read as empty', { tanks: [{ litres: 10 }], cans: 1 }, 30],
  ])('takes %s', (_, reading, litres) => {
    expect(readingL(store, reading)).toBeCloseTo(litres, 9);
  });
});

describe('the marks of a gauge', () => {
  it('are those from which so much can be drawn', () => {
    expect(leastEighths(main, 0)).toBe(0);
    expect(leastEighths(main, 0.1)).toBe(1);
    expect(leastEighths(main, 130 / 8 - 3)).toBe(1);
    expect(leastEighths(main, 130 / 8 - 2.9)).toBe(2);
    expect(leastEighths(main, 127)).toBe(8);
    expect(leastEighths(main, 127.1)).toBeNull();
  });

  it('reach as far as the tank may be filled', () => {
    const tank = cabTank({ name: 'gas', litres: 100, fillPercent: 80, unusableLitres: 2 });
    expect(tank).toEqual({ name: 'gas', filledL: 80, unusableL: 2 });
    expect(leastEighths(tank, 38)).toBe(4);
  });
});
