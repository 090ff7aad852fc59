import { describe, expect, test } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';

const BARE: RigFile = {
  fuel: { kind: 'diesel', litresPer100Km: 16, tanks: [{ name: 'main', litres: 90 }] },
  water: { litresPerDay: 10, tanks: [{ name: 'tank', litres: 60 }] },
  pace: { hoursPerDay: 6, kmPerHour: 50 },
};

describe('a rig of one number each', () => {
  const { rig, settled } = settleRig(BARE);

  test('gets the high ends and the slow pace of the design (design.md 4, ours)', () => {
    expect(rig.fuel.litresPer100Km.high).toBeCloseTo(16 * 1.25, 12);
    expect(rig.water.litresPerDay.high).toBeCloseTo(10 * 1.5, 12);
    expect(rig.pace.kmPerHour.slow).toBeCloseTo(50 * 0.7, 12);
  });

  test('gets the design’s reserves: 100 km and 10 % of the need, 2 days', () => {
    expect(rig.fuel.reserve).toEqual({ base: { unit: 'km', value: 100 }, shareOfNeed: 0.1 });
    expect(rig.water.reserve).toEqual({ base: { unit: 'days', value: 2 }, shareOfNeed: 0 });
  });

  test('says which figures were assumed, and why', () => {
    const { assumptions } = settleRig(BARE);
    const why = Object.fromEntries(toContract(assumptions).map((one) => [one.path, one.why]));
    expect(why['/fuel/litresPer100Km/high']).toMatch(/1\.25 \(ours\)/);
    expect(why['/water/litresPerDay/high']).toMatch(/1\.5 \(ours\)/);
    expect(why['/pace/kmPerHour/slow']).toMatch(/0\.7 \(ours\)/);
    expect(why['/fuel/reserve']).toMatch(/ours/);
    expect(why['/water/reserve']).toMatch(/ours/);
  });

  test('settled once, is settled for good: a second time nothing is assumed', () => {
    expect(settleRig(settled).rig).toEqual(rig);
    expect(settleRig(settled).assumptions).toEqual([]);
  });
});

test('a reserve that is told is taken as told: no share where only a base is given', () => {
  const { rig } = settleRig({ ...BARE, fuel: { ...BARE.fuel, reserve: { litres: 15 } } });
  expect(rig.fuel.reserve).toEqual({ base: { unit: 'litres', value: 15 }, shareOfNeed: 0 });
  const share = settleRig({ ...BARE, fuel: { ...BARE.fuel, reserve: { shareOfNeed: 0.2 } } });
  expect(share.rig.fuel.reserve).toEqual({ base: { unit: 'litres', value: 0 }, shareOfNeed: 0.2 });
});

test('what can be drawn is what the tanks hold less what stays in them', () => {
  const tanks = [
    { name: 'main', litres: 90, unusableLitres: 4 },
    { name: 'second', litres: 40 },
  ];
  expect(settleRig({ ...BARE, fuel: { ...BARE.fuel, tanks } }).rig.fuel.drawableL).toBe(126);
});

test('a reserve with nothing in it is the default, and that is said', () => {
  const { rig, assumptions } = settleRig({
    ...BARE,
    fuel: { ...BARE.fuel, reserve: {} },
    water: { ...BARE.water, reserve: {} },
  });
  expect(rig.fuel.reserve).toEqual({ base: { unit: 'km', value: 100 }, shareOfNeed: 0.1 });
  expect(rig.water.reserve).toEqual({ base: { unit: 'days', value: 2 }, shareOfNeed: 0 });
  const paths = assumptions.map(({ path }) => path);
  expect(paths).toContain('/fuel/reserve');
  expect(paths).toContain('/water/reserve');
});
