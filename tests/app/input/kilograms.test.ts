import { describe, expect, it } from 'vitest';
import { inLitres } from '../../../server/app/input/kilograms.ts';
import { checkRigValue } from '../../../server/app/input/plan-input.ts';

const rig = (fuel: object) => ({
  name: 'Gas van',
  fuel: { kind: 'cng', reserve: { km: 50 }, ...fuel },
  water: { litresPerDay: 14, tanks: [{ name: 'tank', litres: 70 }], reserve: { days: 1 } },
  pace: { hoursPerDay: 7, kmPerHour: 45 },
});

describe('CNG by the kilogram', () => {
  it('comes to litres of tank, 0.17 kg each, and goes as far', () => {
    // 24 kg at 6 kg in 100 km are 400 km, whatever a litre weighs.
    const outcome = checkRigValue(rig({ kgPer100Km: 6, tanks: [{ name: 'main', kg: 24 }] }), 'rig.yaml');
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
    const { tanks, litresPer100Km } = outcome.value.fuel;
    expect(tanks).toEqual([{ name: 'main', litres: 24 / 0.17 }]);
    expect(((tanks[0]?.litres ?? 0) / Number(litresPer100Km)) * 100).toBeCloseTo(400, 9);
  });

  it('may be a range', () => {
    expect(inLitres(rig({ kgPer100Km: { low: 5, typical: 6, high: 7 } }))).toMatchObject({
      fuel: { litresPer100Km: { low: 5 / 0.17, typical: 6 / 0.17, high: 7 / 0.17 } },
    });
  });

  it('is refused for another fuel, and told twice', () => {
    const twice = rig({ litresPer100Km: 30, kgPer100Km: 6, tanks: [{ name: 'main', litres: 140 }] });
    const diesel = { ...rig({ litresPer100Km: 15, tanks: [{ name: 'main', kg: 24 }] }) };
    for (const file of [twice, { ...diesel, fuel: { ...diesel.fuel, kind: 'diesel' } }]) {
      expect(inLitres(file)).toEqual(file);
      expect(checkRigValue(file, 'rig.yaml').ok).toBe(false);
    }
  });

  it('leaves what is no rig as it is', () => {
    for (const value of [null, 7, [], {}, { fuel: null }, { fuel: { kind: 'cng', tanks: 'none' } }])
      expect(inLitres(value)).toEqual(value);
  });
});
