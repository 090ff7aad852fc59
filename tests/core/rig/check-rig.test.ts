import { describe, expect, it } from 'vitest';
import { checkRig } from '../../../server/core/rig/check-rig.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

describe('a rig that contradicts itself', () => {
  it('in the base of a reserve is told which bases it has, and which there are', () => {
    const fuel = { ...EXAMPLE_RIG.fuel, reserve: { km: 100, litres: 20 } };
    expect(checkRig({ ...EXAMPLE_RIG, fuel })).toEqual({
      path: '/fuel/reserve',
      misfit: 'bases-several',
      facts: { told: ['km', 'litres'], bases: ['km', 'litres', 'fraction'] },
    });
    const water = { ...EXAMPLE_RIG.water, reserve: { days: 1, fraction: 0.2 } };
    expect(checkRig({ ...EXAMPLE_RIG, water })).toMatchObject({
      path: '/water/reserve',
      facts: { told: ['days', 'fraction'] },
    });
    expect(checkRig(EXAMPLE_RIG)).toBeNull();
  });

  it('in its pace is told the speeds that are out of order', () => {
    const pace = { ...EXAMPLE_RIG.pace, kmPerHour: { slow: 50, typical: 45, fast: 60 } };
    expect(checkRig({ ...EXAMPLE_RIG, pace })).toEqual({
      path: '/pace/kmPerHour',
      misfit: 'pace-order',
      facts: { slow: 50, typical: 45, fast: 60 },
    });
  });
});
