import { describe, expect, it } from 'vitest';
import { type CabStore, readingL } from '../../../server/core/cab/aboard.ts';

const main = { name: 'main', litres: 130, filledL: 130, unusableL: 3 };
const store: CabStore = {
  tanks: [main, { ...main, name: 'second', litres: 40, filledL: 36, unusableL: 0 }],
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
