import { expect, test } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';

test('an empty trip gets the design’s defaults, each with where it comes from (design.md 3, ours)', () => {
  const { trip, assumptions } = settleTrip({});
  expect(trip).toMatchObject({
    corridorM: 5000,
    counting: { fuel: 'implied', water: 'stated' },
    allowancePercent: 5,
    detourFactor: 1.3,
    part: 'all',
    aboard: {},
    onward: null,
    departure: null,
  });
  for (const path of [
    '/corridorKm',
    '/allowancePercent',
    '/detourFactor',
    '/counting/fuel',
    '/counting/water',
  ]) {
    expect(toContract(assumptions).find((one) => one.path === path)?.why).toMatch(/ours/);
  }
});

test('what the user says is not assumed', () => {
  const file = {
    corridorKm: 2,
    allowancePercent: 0,
    detourFactor: 1,
    counting: { fuel: 'stated' as const },
    onward: { km: 3 },
  };
  const { trip, settled, assumptions } = settleTrip(file);
  expect(trip).toMatchObject({
    corridorM: 2000,
    allowancePercent: 0,
    detourFactor: 1,
    onward: { m: 3000, hours: 0 },
  });
  expect(trip.counting).toEqual({ fuel: 'stated', water: 'stated' });
  expect(settled).toMatchObject({ ...file, counting: { fuel: 'stated', water: 'stated' } });
  const paths = assumptions.map((one) => one.path);
  expect(paths).not.toContain('/corridorKm');
  expect(paths).toContain('/counting/water');
});
