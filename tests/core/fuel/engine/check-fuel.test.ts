import { describe, expect, it } from 'vitest';
import type { RigFile } from '../../../../server/contract/rig.ts';
import { checkFuel } from '../../../../server/core/fuel/engine/check-fuel.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';

const misfitOf = (changes: Partial<RigFile['fuel']>) => {
  const found = checkFuel({ ...EXAMPLE_RIG.fuel, ...changes });
  return found === null ? null : [found.path, found.misfit];
};

describe('urea solution', () => {
  const urea = { tankLitres: 20, litresPer1000Km: 12 };

  it('has a reserve that its tank holds more than', () => {
    expect(misfitOf({ urea })).toBeNull();
    expect(misfitOf({ urea: { ...urea, reserveLitres: 19.9 } })).toBeNull();
    expect(misfitOf({ urea: { ...urea, reserveLitres: 20 } })).toEqual([
      '/fuel/urea/reserveLitres',
      'tank-undrawable',
    ]);
  });

  it('goes by the way or by the fuel, one of both', () => {
    expect(misfitOf({ urea: { tankLitres: 20, percentOfFuel: 5 } })).toBeNull();
    expect(misfitOf({ urea: { ...urea, percentOfFuel: 5 } })).toEqual(['/fuel/urea', 'bases-several']);
    expect(misfitOf({ urea: { tankLitres: 20 } })).toEqual(['/fuel/urea', 'urea-untold']);
  });
});

describe('an engine', () => {
  it('runs no more hours in a day than there are', () => {
    expect(misfitOf({ hours: { idlingPerDay: 12, airConditioningPerDay: 12 } })).toBeNull();
    expect(misfitOf({ hours: { idlingPerDay: 12, airConditioningPerDay: 12.5 } })).toEqual([
      '/fuel/hours',
      'engine-hours',
    ]);
  });

  it('is of the fuel that it burns', () => {
    expect(misfitOf({ engine: { octane: 95 } })).toEqual(['/fuel/engine/octane', 'engine-fuel']);
    expect(misfitOf({ kind: 'petrol', engine: { octane: 95 } })).toBeNull();
  });
});
