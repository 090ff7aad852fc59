import { describe, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { afterEdit, asJson, tripForAnotherRoute } from '../../../web/state/said.ts';

const BARE: RigFile = {
  name: 'bare',
  fuel: { kind: 'diesel', litresPer100Km: 12, tanks: [{ name: 'main', litres: 90 }] },
  water: { litresPerDay: 10, tanks: [{ name: 'jug', litres: 20 }] },
  pace: { hoursPerDay: 6, kmPerHour: 50 },
};

describe('an edit', () => {
  const settled = asJson(settleRig(BARE).settled);
  const edited = (path: string, value: number) => afterEdit(asJson(BARE), settled, path, value);

  it('of the typical value keeps the high end assumed from it', () => {
    expect(edited('/fuel/litresPer100Km/typical', 16)).toMatchObject({ fuel: { litresPer100Km: 16 } });
  });

  it('of one end of an assumed range makes the range said', () => {
    expect(edited('/fuel/litresPer100Km/high', 20)).toMatchObject({
      fuel: { litresPer100Km: { low: 9.6, typical: 12, high: 20 } },
    });
  });

  it('of one assumed figure keeps the other figures beside it', () => {
    expect(edited('/fuel/cans/owned', 3)).toMatchObject({ fuel: { cans: { litres: 20, owned: 3 } } });
    expect(edited('/water/reserve/days', 4)).toMatchObject({ water: { reserve: { days: 4 } } });
  });

  it('deep in a list that was only assumed brings the whole list along', () => {
    const rig: RigFile = { ...BARE, vehicle: { kerbKg: 2000 } };
    const next = afterEdit(asJson(rig), asJson(settleRig(rig).settled), '/vehicle/people/0/kg', 90);
    expect(next).toMatchObject({ vehicle: { people: [{ name: 'driver', kg: 90 }] } });
  });

  it('that takes the last value of a group takes the group: an empty one would count as told', () => {
    const rig: RigFile = { ...BARE, fuel: { ...BARE.fuel, climb: { giveBack: 0.2 } } };
    const next = afterEdit(asJson(rig), settled, '/fuel/climb/giveBack', undefined);
    expect(next).toEqual(BARE);
  });

  it('never takes an entry out of a list for being empty', () => {
    const rig: RigFile = { ...BARE, crew: { people: [{ level: 'basic' }, {}] } };
    const next = afterEdit(asJson(rig), settled, '/crew/people/0/level', undefined);
    expect(next).toMatchObject({ crew: { people: [{}, {}] } });
  });

  it('leaves the file it was made from untouched', () => {
    const before = JSON.stringify(BARE);
    edited('/fuel/tanks/0/litres', 1);
    expect(JSON.stringify(BARE)).toBe(before);
  });
});

describe("a trip's settings on another route", () => {
  it('drop places and days, which could make a gap there look better than it is', () => {
    expect(
      tripForAnotherRoute(
        {
          aboard: { fuelLitres: 100 },
          onward: { km: 0 },
          stays: [{ atKm: 3, days: 1 }],
          cover: [{ commodity: 'water', bbox: [0, 0, 1, 1] }],
          confirmations: [{ id: 'node/1', on: '2026-01-01', works: true }],
          corridorKm: 8,
          campDays: 2,
        },
        null,
      ),
    ).toEqual({ corridorKm: 8, campDays: 2 });
  });

  it('of the demo keep only what the user changed in it', () => {
    expect(tripForAnotherRoute({ corridorKm: 8, campDays: 0 }, { corridorKm: 5, campDays: 0 })).toEqual({
      corridorKm: 8,
    });
  });
});
