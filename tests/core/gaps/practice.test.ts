import { describe, expect, test } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { gapsOf } from '../../../server/core/gaps/gaps-of.ts';
import { courseOf, EXAMPLE_RIG, endEdge, startEdge } from '../../helpers/course.ts';

const gapOver = (km: number, rigFile: RigFile, commodity: 'fuel' | 'water' = 'fuel') => {
  const course = courseOf({ rigFile, commodity, lengthM: km * 1000 });
  return gapsOf(course, [startEdge, endEdge(km * 1000)], course.rig[commodity].drawableL)[0]!;
};

const fuelRig = (
  litres: number[],
  high: number,
  reserve: NonNullable<RigFile['fuel']['reserve']>,
): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    litresPer100Km: { low: high, typical: high, high },
    tanks: litres.map((size, index) => ({ name: `tank ${index + 1}`, litres: size })),
    reserve,
  },
});

/** The longest whole km that still holds with the reserve. */
const healthyRangeKm = (rigFile: RigFile): number => {
  let km = 0;
  while (gapOver(km + 1, rigFile).verdict === 'enough') km += 1;
  return km;
};

describe('figures of practice', () => {
  test('two 90 l tanks at 13 to 14 l/100 km give about 1,200 to 1,300 km (common practice, no source)', () => {
    // 180 l / 13 and / 14 are 1,384 and 1,285 km to the last drop; 100 km of reserve off make the range quoted.
    expect(healthyRangeKm(fuelRig([90, 90], 13, { km: 100 }))).toBe(1284);
    expect(healthyRangeKm(fuelRig([90, 90], 14, { km: 100 }))).toBe(1185);
    expect(Math.abs(healthyRangeKm(fuelRig([90, 90], 13, { km: 100 })) - 1300)).toBeLessThanOrEqual(20);
    expect(Math.abs(healthyRangeKm(fuelRig([90, 90], 14, { km: 100 })) - 1200)).toBeLessThanOrEqual(20);
  });

  test('about 1,000 km without refuelling holds on such tanks (common practice, no source)', () => {
    expect(gapOver(1000, fuelRig([90, 90], 14, { km: 100, shareOfNeed: 0.1 })).verdict).toBe('enough');
  });

  test('a crew of two on 10 to 15 l a day needs at least 90 l for seven days (common practice, no source)', () => {
    const crew = (high: number): RigFile => ({
      ...EXAMPLE_RIG,
      water: {
        litresPerDay: { low: 10, typical: 12.5, high },
        tanks: [{ name: 'tank', litres: 90 }],
        reserve: { days: 0 },
      },
    });
    const sevenDaysKm = 7 * 7 * 35;
    expect(gapOver(sevenDaysKm, crew(10), 'water').needL).toBeCloseTo(70, 9);
    expect(gapOver(sevenDaysKm, crew(15), 'water').needL).toBeCloseTo(105, 9);
    // 90 l is what the middle of that range takes for seven days, so it lies between the two needs.
    expect(gapOver(sevenDaysKm, crew(12.5), 'water').needL).toBeCloseTo(87.5, 9);
    expect(gapOver(sevenDaysKm, crew(12.5), 'water').verdict).toBe('enough');
    expect(gapOver(sevenDaysKm, crew(15), 'water').verdict).toBe('short');
  });

  test.each([
    { fraction: 1 / 3, km: 400 },
    { fraction: 0.1, km: 540 },
    { fraction: 0, km: 600 },
  ])(
    'a reserve of $fraction of a 90 l tank at 15 l/100 km holds over $km km, not over one more (P21)',
    ({ fraction, km }) => {
      const rigFile = fuelRig([90], 15, { fraction });
      expect(gapOver(km, rigFile).verdict).toBe('enough');
      expect(gapOver(km + 1, rigFile).verdict).not.toBe('enough');
    },
  );

  test('basic water needs of 7.5 to 15 l a person a day are the sums of their parts (Sphere, W1-W4)', () => {
    const parts = { low: [2.5, 2, 3], high: [3, 6, 6] };
    const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
    const person = (litresPerDay: number): RigFile => ({
      ...EXAMPLE_RIG,
      water: { ...EXAMPLE_RIG.water, litresPerDay: { low: 1, typical: 1, high: litresPerDay } },
    });
    expect(gapOver(245, person(sum(parts.low)), 'water').needL).toBeCloseTo(7.5, 9);
    expect(gapOver(245, person(sum(parts.high)), 'water').needL).toBeCloseTo(15, 9);
  });
});
