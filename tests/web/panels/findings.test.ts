import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import { TripFile } from '../../../server/contract/trip.ts';
import { withFinding } from '../../../web/panels/findings.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const passing = { ...analysis.passings[0]!, id: 'node/7', commodity: 'water' } as Passing;
const said = { rig: analysis.rig, trip: {} as TripFile };
const ON = '2026-05-01';

describe('what the user found out', () => {
  test('is dated, and replaces what was found before', () => {
    const works = withFinding(said, passing, 'works', '2026-04-01');
    const fails = withFinding(works, passing, 'fails', ON);
    expect(fails.trip.confirmations).toEqual([{ id: 'node/7', on: ON, works: false, commodity: 'water' }]);
  });

  test('of salt keeps what else was noted of the water', () => {
    const trip = { waterNotes: [{ id: 'node/7', on: '2025-01-01', saltOk: false, depthM: 12 }] };
    const { waterNotes } = withFinding({ ...said, trip }, passing, 'not-salty', ON).trip;
    expect(waterNotes).toEqual([{ id: 'node/7', on: ON, saltOk: true, depthM: 12 }]);
  });

  test('of salt by an instrument replaces the one before, and tells whether people drink it', () => {
    const trip = {
      waterNotes: [{ id: 'node/7', on: '2025-01-01', saltOk: true, tdsMgPerLitre: 300, depthM: 12 }],
    };
    const salty = withFinding(
      { ...said, trip },
      passing,
      { key: 'conductivityMicroSPerCm', value: 5000 },
      ON,
    );
    expect(salty.trip.waterNotes).toEqual([
      { id: 'node/7', on: ON, saltOk: false, conductivityMicroSPerCm: 5000, depthM: 12 },
    ]);
    const sweet = withFinding(salty, passing, { key: 'tdsMgPerLitre', value: 1000 }, ON);
    expect(sweet.trip.waterNotes).toEqual([
      { id: 'node/7', on: ON, saltOk: true, tdsMgPerLitre: 1000, depthM: 12 },
    ]);
    expect(Value.Check(TripFile, sweet.trip)).toBe(true);
  });

  test('of skin can be taken back', () => {
    const safe = withFinding(said, passing, 'safe-for-skin', ON);
    expect(safe.trip.washingSources).toEqual(['node/7']);
    expect(withFinding(safe, passing, 'not-for-skin', ON).trip.washingSources).toEqual([]);
  });

  test('fits the trip file', () => {
    for (const finding of ['works', 'fails', 'not-salty', 'salty', 'safe-for-skin'] as const) {
      expect(Value.Check(TripFile, withFinding(said, passing, finding, ON).trip)).toBe(true);
    }
  });
});
