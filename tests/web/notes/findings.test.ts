import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import { TripFile } from '../../../server/contract/trip.ts';
import { type Finding, withChecked, withFinding } from '../../../web/notes/findings.ts';
import { sampleReply } from '../sample-reply.ts';

const { analysis } = sampleReply();
const passing = { ...analysis.passings[0]!, id: 'node/7', commodity: 'water' } as Passing;
const said = { rig: analysis.rig, trip: {} as TripFile };
const ON = '2026-05-01';

describe('what the user found out', () => {
  test('is dated, and replaces what was found before', () => {
    const works = withFinding(said, passing, { report: { works: true } }, '2026-04-01');
    const fails = withFinding(works, passing, { report: { works: false } }, ON);
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

  test('of the depth of a well is no test of its salt: that keeps its day, or is told as well', () => {
    const trip = { waterNotes: [{ id: 'node/7', on: '2025-01-01', saltOk: true }] };
    expect(withFinding({ ...said, trip }, passing, { depthM: 14 }, ON).trip.waterNotes).toEqual([
      { id: 'node/7', on: '2025-01-01', saltOk: true, depthM: 14 },
    ]);
    const tasted = withFinding({ ...said, trip }, passing, { depthM: 14, saltOk: false }, ON);
    expect(tasted.trip.waterNotes).toEqual([{ id: 'node/7', on: ON, saltOk: false, depthM: 14 }]);
    const fresh = withFinding(said, passing, { depthM: 8, saltOk: true }, ON);
    expect(fresh.trip.waterNotes).toEqual([{ id: 'node/7', on: ON, saltOk: true, depthM: 8 }]);
    expect(Value.Check(TripFile, fresh.trip)).toBe(true);
    expect(withFinding(said, passing, { depthM: 8 }, ON).trip).toEqual({});
  });

  test('of skin can be taken back', () => {
    const safe = withFinding(said, passing, 'safe-for-skin', ON);
    expect(safe.trip.washingSources).toEqual(['node/7']);
    expect(withFinding(safe, passing, 'not-for-skin', ON).trip.washingSources).toEqual([]);
  });

  test('is confirmed for all that a stop gives where it is ticked off', () => {
    const both = [
      passing,
      { ...passing, commodity: 'fuel' as const },
      { ...passing, id: 'node/8', lat: passing.lat },
    ];
    const checked = withChecked(
      said,
      { id: 'node/7' },
      { analysis: { ...analysis, passings: both }, on: ON },
    );
    const { lon, lat, tags } = passing;
    const was = { lon, lat, tags, near: ['node/8'] };
    expect(checked.trip.confirmations).toEqual([
      { id: 'node/7', on: ON, commodity: 'water', works: true, was },
      { id: 'node/7', on: ON, commodity: 'fuel', works: true, was },
    ]);
  });

  test('of litres and price stands with the stop, and keeps what else is told of it', () => {
    const trip: TripFile = { plan: { stops: [{ id: 'node/7', waitHours: 2, mostLitres: { fuel: 9 } }] } };
    const correction = { mostLitres: 40, pricePerLitre: 0.5, by: 'Ann' };
    expect(withFinding({ ...said, trip }, passing, { correction }, ON).trip).toEqual({
      plan: {
        stops: [
          {
            id: 'node/7',
            waitHours: 2,
            mostLitres: { fuel: 9, water: 40 },
            pricePerLitre: { water: 0.5 },
            on: ON,
            by: 'Ann',
          },
        ],
      },
    });
  });

  test('fits the trip file', () => {
    const saidBy = { by: 'Ann', phone: '555 123', words: 'till six' };
    const was = { lon: 88, lat: -35, tags: { amenity: 'fuel' }, near: ['node/8'] };
    const findings: Finding[] = [
      { report: { works: true, ...saidBy, from: ON, until: ON }, was },
      { report: { works: false, words: 'dry' } },
      {
        correction: { fuels: ['diesel'], openingHours: '24/7', ...saidBy, mostLitres: 40, pricePerLitre: 2 },
        was,
      },
      { correction: { grade: 'drinking' } },
      'not-salty',
      'salty',
      'safe-for-skin',
    ];
    for (const finding of findings) {
      expect(Value.Check(TripFile, withFinding(said, passing, finding, ON).trip)).toBe(true);
    }
  });
});
