import { beforeAll, describe, expect, it } from 'vitest';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { basisOf } from '../../../server/core/plan/drive/basis.ts';
import type { MipSolver } from '../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { reckoned } from '../../helpers/reckoned.ts';
import { planCarry, stopFailsRows } from './by-hand/contracted.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** 10 l/100 km; 1 l of water an hour; 8 hours a day at 50 km/h, so that a night takes 16 l; no reserve and no cans. */
const rigOf = (fuelL: number, waterL: number): RigFile => ({
  fuel: {
    kind: 'diesel',
    litresPer100Km: { low: 10, typical: 10, high: 10 },
    tanks: [{ name: 'main', litres: fuelL }],
    cans: { litres: 5, owned: 0 },
    reserve: { litres: 0 },
  },
  water: {
    litresPerDay: { low: 24, typical: 24, high: 24 },
    tanks: [{ name: 'main', litres: waterL }],
    cans: { litres: 5, owned: 0 },
    reserve: { litres: 0 },
  },
  pace: { hoursPerDay: 8, kmPerHour: { slow: 50, typical: 50, fast: 50 } },
});

interface Drive {
  readonly lengthKm: number;
  readonly rig: RigFile;
  readonly features: MappedFeature[];
  readonly trip: TripFile;
}

function planned({ lengthKm, rig, features, trip }: Drive) {
  const input = inputOf({ document: equatorDocument(lengthKm), rig, features });
  const mostCans = { fuel: 0, water: 0 };
  const of = reckoned({
    ...input,
    trip: { ...input.trip, detourFactor: 1, ...trip, plan: { mostCans, ...trip.plan } },
  });
  const { plan, driven } = planCarry(of, { solver, seconds: 60, clock: () => 0 });
  const rows = stopFailsRows(basisOf(of, driven));
  return { plan, waterRow: rows.find(({ commodity }) => commodity === 'water') };
}

describe('halts on the way out', () => {
  it('take their hours of driving once from the days of the way home', () => {
    // The pump 4 km off takes 0.16 h: out and home 792 km and it are 16 h, two days with one night. A km farther on a
    // second night falls, and 40 l are too few.
    const { plan } = planned({
      lengthKm: 600,
      rig: rigOf(55, 40),
      features: [pointFeature('node/1', 100, DIESEL, 4)],
      trip: {},
    });
    expect(plan.legs.fuel[0]?.to.id).toBe('node/1');
    expect(plan.legs.water[0]?.turnBackKm).toBeCloseTo(396, 1);
  });
});

describe('a tap that keeps one waiting and gives nothing', () => {
  it('brings a night onto the way on where its hours of waiting do', () => {
    // 750 km are 15 h with a night: 31 l. Three hours of waiting push the arrival, 7 h into its day, past another.
    const { waterRow } = planned({
      lengthKm: 750,
      rig: rigOf(100, 50),
      features: [pointFeature('node/1', 100, TAP)],
      trip: {
        aboard: { fuelKmSinceFill: 0, waterLitres: 20 },
        plan: { stops: [{ id: 'node/1', waitHours: 3 }] },
      },
    });
    expect(waterRow?.arriveL).toBeCloseTo(20 - (31 + 3 + 16), 1);
  });

  it('takes no more of the day than is left of it on the way home', () => {
    // Seven hours out, of the nine of waiting one is an hour of driving, seven home: 15 h with one night.
    const { waterRow } = planned({
      lengthKm: 700,
      rig: rigOf(100, 27),
      features: [pointFeature('node/1', 350, TAP)],
      trip: { plan: { stops: [{ id: 'node/1', waitHours: 9 }] } },
    });
    expect(waterRow?.backMarginL).toBeCloseTo(27 - (7 + 9 + 7 + 16), 1);
  });
});

it('a slow well that is gone to instead takes the time of its filling', () => {
  // At km 300 36 l are filled at 1 l in 2.4 min, with what is drunk meanwhile in an hour and a half. The end is reached
  // 7 h into its day: a night falls, and 50 l are left with 25 + 16 fewer.
  const spring = { natural: 'spring', drinking_water: 'yes' };
  const { waterRow } = planned({
    lengthKm: 750,
    rig: rigOf(100, 50),
    features: [pointFeature('node/1', 100, TAP), pointFeature('node/2', 300, spring)],
    trip: {
      aboard: { fuelKmSinceFill: 0, waterLitres: 20 },
      waterNotes: [{ id: 'node/2', on: '2026-05-01', saltOk: true, litresPerMinute: 1 / 2.4 }],
    },
  });
  expect(waterRow).toMatchObject({ id: 'node/1', instead: { at: { id: 'node/2' } } });
  expect(waterRow?.marginL).toBeCloseTo(50 - 25 - 16, 1);
});
