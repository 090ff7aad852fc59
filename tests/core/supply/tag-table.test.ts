import { describe, expect, it } from 'vitest';
import type { Commodity, Evidence, WaterClass } from '../../../server/contract/common.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import type { SupplyReasonCode } from '../../../server/core/phrases/supply.ts';
import type { Judging } from '../../../server/core/supply/judge/rules.ts';
import { effectOf } from '../../../server/core/supply/tags/reasons.ts';
import { textOf } from '../../../server/words/words-of.ts';
import { codesOf, pointsOf } from './judged.ts';

interface Row {
  tags: Tags;
  judge?: Partial<Judging>;
  lat?: number;
  commodity: Commodity;
  waterClass?: WaterClass;
  evidence: Evidence;
  counts: boolean;
  /** The reason that must be among those that block or weaken; null: none may be. */
  whyNot: SupplyReasonCode | null;
}

const fuel = (
  tags: Tags,
  evidence: Evidence,
  counts: boolean,
  whyNot: SupplyReasonCode | null,
  judge: Partial<Judging> = {},
): Row => ({ tags, judge, commodity: 'fuel', evidence, counts, whyNot });
const water = (
  tags: Tags,
  waterClass: WaterClass,
  evidence: Evidence,
  counts: boolean,
  whyNot: SupplyReasonCode | null,
  judge: Partial<Judging> = {},
  lat = -35,
): Row => ({ tags, judge, lat, commodity: 'water', waterClass, evidence, counts, whyNot });

const SUMMER_TAP = { amenity: 'drinking_water', seasonal: 'summer' };
const NO_PUMP = { man_made: 'water_well', drinking_water: 'yes', pump: 'no' };

/** The expected answers, row by row: diesel, no treatment line, no date unless the row says otherwise. */
const ROWS: Row[] = [
  fuel({ amenity: 'fuel', 'fuel:diesel': 'yes' }, 'stated', true, null),
  fuel({ amenity: 'fuel' }, 'implied', true, null),
  fuel({ amenity: 'fuel' }, 'doubtful', false, 'never-implied', { fuelKind: 'lpg' }),
  fuel({ amenity: 'fuel' }, 'doubtful', false, 'never-implied', { fuelKind: 'cng' }),
  fuel({ amenity: 'fuel', 'fuel:octane_95': 'yes' }, 'doubtful', false, 'other-fuels-listed'),
  fuel({ amenity: 'fuel', 'fuel:diesel': 'no' }, 'doubtful', false, 'fuel-not-sold'),
  ...[
    'disused',
    'abandoned',
    'was',
    'removed',
    'razed',
    'demolished',
    'destroyed',
    'construction',
    'proposed',
  ].map((prefix) => fuel({ [`${prefix}:amenity`]: 'fuel' }, 'doubtful', false, 'out-of-use')),
  fuel({ amenity: 'fuel', access: 'private' }, 'implied', false, 'not-public'),
  fuel({ amenity: 'fuel', access: 'no' }, 'implied', false, 'not-public'),
  fuel({ amenity: 'fuel', 'fuel:diesel': 'yes', access: 'private' }, 'stated', false, 'not-public'),
  fuel({ amenity: 'fuel', 'fuel:diesel': 'yes', access: 'no' }, 'stated', false, 'not-public'),
  fuel({ amenity: 'fuel', 'fuel:diesel': 'yes', access: 'customers' }, 'stated', true, null),
  fuel({ waterway: 'fuel' }, 'doubtful', false, 'for-boats'),
  fuel({ aeroway: 'fuel' }, 'doubtful', false, 'for-aircraft'),
  water({ amenity: 'drinking_water' }, 'drinking', 'stated', true, null),
  water({ amenity: 'drinking_water', access: 'private' }, 'drinking', 'stated', false, 'not-public'),
  water({ amenity: 'drinking_water', drinking_water: 'no' }, 'washing', 'doubtful', false, 'tags-contradict'),
  water({ amenity: 'water_point' }, 'drinking', 'stated', true, null),
  water({ man_made: 'water_tap' }, 'treatable', 'implied', false, 'not-stated-fit'),
  water({ man_made: 'water_tap', drinking_water: 'yes' }, 'drinking', 'stated', true, null),
  water({ man_made: 'water_well' }, 'washing', 'doubtful', false, 'salt-unknown'),
  water({ man_made: 'water_well', drinking_water: 'yes' }, 'drinking', 'stated', true, null),
  water(NO_PUMP, 'drinking', 'stated', false, 'no-pump'),
  water(NO_PUMP, 'drinking', 'stated', true, null, { ropeAndBucket: true }),
  water({ natural: 'spring' }, 'treatable', 'implied', false, 'not-stated-fit'),
  water({ natural: 'spring', drinking_water: 'yes' }, 'drinking', 'stated', true, null),
  water({ natural: 'spring', intermittent: 'yes' }, 'treatable', 'doubtful', false, 'may-be-dry'),
  water(SUMMER_TAP, 'drinking', 'doubtful', false, 'season-unknown'),
  water(SUMMER_TAP, 'drinking', 'stated', true, null, { on: '2026-01-15' }),
  water(SUMMER_TAP, 'drinking', 'doubtful', false, 'out-of-season', { on: '2026-07-15' }),
  water(SUMMER_TAP, 'drinking', 'stated', true, null, { on: '2026-07-15' }, 46),
  water(SUMMER_TAP, 'drinking', 'doubtful', false, 'out-of-season', { on: '2026-01-15' }, 46),
  ...[
    { natural: 'spring' },
    { man_made: 'water_tap' },
    { man_made: 'water_well' },
    { amenity: 'drinking_water' },
    { amenity: 'fountain' },
    { tourism: 'camp_site' },
    { amenity: 'watering_place' },
    { building: 'yes' },
  ].flatMap((host: Tags) => [
    water(
      { ...host, drinking_water: 'yes', 'drinking_water:legal': 'no' },
      'treatable',
      'stated',
      false,
      'not-controlled',
    ),
    water({ ...host, drinking_water: 'untreated' }, 'treatable', 'stated', false, 'untreated'),
  ]),
  water({ tourism: 'camp_site', drinking_water: 'yes' }, 'drinking', 'stated', true, null),
  water({ amenity: 'fountain' }, 'none', 'doubtful', false, 'decorative'),
  water({ amenity: 'watering_place' }, 'none', 'doubtful', false, 'for-animals'),
  water({ natural: 'waterhole' }, 'none', 'doubtful', false, 'for-animals'),
  water({ man_made: 'storage_tank', content: 'water' }, 'treatable', 'doubtful', false, 'use-unknown'),
  water({ emergency: 'water_tank' }, 'none', 'doubtful', false, 'for-fire-fighting'),
];

const inShort = (row: Row): string =>
  [
    Object.entries(row.tags)
      .map(([key, value]) => `${key}=${value}`)
      .join(', '),
    row.judge?.fuelKind === undefined ? '' : `(${row.judge.fuelKind})`,
    row.judge?.ropeAndBucket === true ? '(rope and bucket)' : '',
    row.judge?.on ? `(${row.judge.on} at ${row.lat}°)` : '',
  ]
    .filter((part) => part !== '')
    .join(' ');

describe('supply from tags, row by row', () => {
  it.each(ROWS.map((row) => [inShort(row), row] as const))('%s', (_, row) => {
    const points = pointsOf(row.tags, row.judge, { lat: row.lat ?? -35 });
    expect(points).toHaveLength(1);
    const point = points[0]!;
    expect({
      commodity: point.commodity,
      waterClass: point.waterClass,
      evidence: point.evidence,
      counts: point.counts,
    }).toEqual({
      commodity: row.commodity,
      waterClass: row.waterClass,
      evidence: row.evidence,
      counts: row.counts,
    });
    const against = codesOf(point).filter((code) => effectOf(code as SupplyReasonCode) !== 'advises');
    if (row.whyNot === null) expect(against).toEqual([]);
    else expect(against).toContain(row.whyNot);
    expect(point.reasons.every((reason) => textOf(reason).length > 10)).toBe(true);
  });
});

describe('counting', () => {
  it('takes each commodity from its own level up, and says where evidence is below it', () => {
    const station = { amenity: 'fuel' };
    expect(pointsOf(station, { counting: { fuel: 'stated', water: 'doubtful' } })[0]).toMatchObject({
      evidence: 'implied',
      counts: false,
      reasons: [{ code: 'evidence-below' }],
    });
    const well = { ...NO_PUMP, pump: 'yes', intermittent: 'yes' };
    expect(pointsOf(well)[0]).toMatchObject({ evidence: 'doubtful', counts: false });
    expect(pointsOf(well, { counting: { fuel: 'confirmed', water: 'doubtful' } })[0]?.counts).toBe(true);
  });

  it('never counts water that is not fit to drink, however low the level', () => {
    const counting = { fuel: 'doubtful', water: 'doubtful' } as const;
    for (const row of ROWS.filter(
      ({ waterClass }) => waterClass !== undefined && waterClass !== 'drinking',
    )) {
      expect(pointsOf(row.tags, { counting })[0]?.counts).toBe(false);
    }
  });

  it('gives one object a point for each commodity', () => {
    const both = pointsOf({ amenity: 'fuel', 'fuel:diesel': 'yes', drinking_water: 'yes', name: 'Last Tap' });
    expect(both.map(({ commodity, kind, counts, name }) => [commodity, textOf(kind), counts, name])).toEqual([
      ['fuel', 'fuel station', true, 'Last Tap'],
      ['water', 'water at: fuel station', true, 'Last Tap'],
    ]);
    expect(pointsOf({ amenity: 'fuel', drinking_water: 'no' }).map((point) => point.commodity)).toEqual([
      'fuel',
    ]);
  });
});
