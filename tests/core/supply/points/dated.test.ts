import { describe, expect, it } from 'vitest';
import type { MapExtract, MappedFeature } from '../../../../server/core/input/sources.ts';
import { datedSupplies, type VouchedExtract } from '../../../../server/core/supply/points/dated.ts';

const TODAY = '2026-05-04';
const extractOf = (asOf: string | null): MapExtract =>
  ({ source: 'maps/area.osm', asOf, newestEdit: null }) as MapExtract;
const featureOf = (editedAt: string | null, id = 'node/1'): MappedFeature => ({
  id,
  geometry: { type: 'Point', coordinates: [88, -35] },
  tags: { amenity: 'fuel' },
  editedAt,
  source: 'maps/area.osm',
});
const dated = (asOf: string | null, features: MappedFeature[] = [], vouched: VouchedExtract[] = []) =>
  datedSupplies({ extracts: [extractOf(asOf)], features }, vouched, TODAY);

describe('the date of a file', () => {
  const told = (asOf: string | null, usersAsOf?: string) => {
    const { extracts, cautions } = dated(asOf, [], [{ file: 'area.osm', asOf: usersAsOf }]);
    return [extracts[0]?.asOf, extracts[0]?.asOfBy, cautions.map(({ facts }) => facts)];
  };

  it('is what it says itself, what the user vouches for where it says nothing, and the older where both do', () => {
    expect(told('2026-01-02T03:04:05Z')).toEqual(['2026-01-02T03:04:05Z', 'file', []]);
    expect(told(null, '2025-06-07')).toEqual(['2025-06-07', 'user', []]);
    expect(told('2026-01-02T03:04:05Z', '2026-01-01')).toEqual(['2026-01-01', 'user', []]);
    expect(told('2026-01-02T03:04:05Z', '2026-01-02')).toEqual(['2026-01-02T03:04:05Z', 'file', []]);
  });

  it('is none, and that is said with the reason, where it lies ahead or before there was a map', () => {
    const source = 'maps/area.osm';
    // OpenStreetMap began on 9 August 2004; a server may be a day ahead of the calendar.
    expect(told('2004-08-08T00:00:00Z')).toEqual([
      null,
      null,
      [{ source, why: 'absurd', on: '2004-08-08', objects: 0 }],
    ]);
    expect(told('2026-05-06T00:00:00Z')).toEqual([
      null,
      null,
      [{ source, why: 'ahead', on: '2026-05-06', objects: 0 }],
    ]);
    expect(told('2004-08-09T00:00:00Z')[0]).toBe('2004-08-09T00:00:00Z');
    expect(told('2026-05-05T00:00:00Z')[0]).toBe('2026-05-05T00:00:00Z');
  });
});

describe('the age of an object', () => {
  it('is its own edit, never newer than its file; the file alone stands in for one that is not told', () => {
    const edits = ['2025-01-01T00:00:00Z', '2026-04-01T00:00:00Z', null];
    const { features } = dated(
      '2026-03-01T00:00:00Z',
      edits.map((at, index) => featureOf(at, `node/${index}`)),
    );
    expect(features.map(({ editedAt, mapOn, undated }) => [editedAt, mapOn, undated])).toEqual([
      ['2025-01-01T00:00:00Z', '2026-03-01', undefined],
      ['2026-03-01T00:00:00Z', '2026-03-01', undefined],
      [null, '2026-03-01', undefined],
    ]);
  });

  it('is unknown where neither it nor its file is dated, and only those objects are counted', () => {
    const edits = ['2025-01-01T00:00:00Z', null, null];
    const { features, cautions } = dated(
      null,
      edits.map((at, index) => featureOf(at, `node/${index}`)),
    );
    expect(features.map(({ undated }) => undated)).toEqual([undefined, true, true]);
    expect(cautions).toEqual([
      { code: 'age-unknown', facts: { source: 'maps/area.osm', why: 'untold', on: null, objects: 2 } },
    ]);
  });
});
