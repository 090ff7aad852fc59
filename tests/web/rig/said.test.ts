import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../../server/contract/analysis.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';
import { afterEdit, asJson, saidIn, tripForAnotherRoute } from '../../../web/rig/said.ts';
import { sampleReply } from '../sample-reply.ts';

const BARE: RigFile = {
  name: 'bare',
  fuel: { kind: 'diesel', litresPer100Km: 12, tanks: [{ name: 'main', litres: 90 }] },
  water: { litresPerDay: 10, tanks: [{ name: 'jug', litres: 20 }] },
  pace: { hoursPerDay: 6, kmPerHour: 50 },
};

/** An analysis as the core would give it back for this rig and an empty trip. */
function analysisOf(rig: RigFile): Analysis {
  const settledRig = settleRig(rig);
  const settledTrip = settleTrip({});
  return {
    ...sampleReply().analysis,
    rig: settledRig.settled,
    trip: settledTrip.settled,
    assumptions: [
      ...settledRig.assumptions.map((each) => ({ ...each, path: `/rig${each.path}` })),
      ...settledTrip.assumptions.map((each) => ({ ...each, path: `/trip${each.path}` })),
    ],
  };
}

describe('what the user said, apart from what was assumed', () => {
  it('leaves every assumption out, so that it is assumed again', () => {
    const analysis = analysisOf(BARE);
    const said = saidIn(analysis);
    expect(settleRig(said.rig).assumptions).toEqual(settleRig(BARE).assumptions);
    expect(settleRig(said.rig).rig).toEqual(settleRig(BARE).rig);
    expect(settleTrip(said.trip).assumptions).toEqual(settleTrip({}).assumptions);
  });

  it('keeps what was said in full', () => {
    const full: RigFile = {
      ...BARE,
      fuel: { ...BARE.fuel, cans: { litres: 20, owned: 2 }, reserve: { km: 150, shareOfNeed: 0 } },
    };
    const said = saidIn(analysisOf(full));
    expect(said.rig.fuel.cans).toEqual({ litres: 20, owned: 2 });
    expect(said.rig.fuel.reserve).toEqual({ km: 150, shareOfNeed: 0 });
    expect(said.rig.water.cans).toBeUndefined();
  });
});

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
