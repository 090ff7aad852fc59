import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../server/core/input/sources.ts';
import { textOf } from '../../../server/words/words-of.ts';
import { codesOf, pointOf, pointsOf } from './judged.ts';

/** tags, class, evidence, counts by default, codes of all reasons. */
const CASES: [Tags, string, string, boolean, string[]][] = [
  [{ natural: 'spring', drinking_water: 'no' }, 'washing', 'implied', false, ['not-fit', 'evidence-below']],
  [
    { man_made: 'water_well', drinking_water: 'no' },
    'washing',
    'doubtful',
    false,
    ['not-fit', 'salt-unknown', 'evidence-below'],
  ],
  [
    { amenity: 'fountain', drinking_water: 'no' },
    'none',
    'doubtful',
    false,
    ['decorative', 'not-fit', 'evidence-below'],
  ],
  [{ amenity: 'fountain', drinking_water: 'yes' }, 'drinking', 'stated', true, []],
  [{ amenity: 'watering_place', drinking_water: 'yes' }, 'drinking', 'stated', true, []],
  [{ man_made: 'water_tank', drinking_water: 'yes' }, 'drinking', 'stated', true, []],
  [{ man_made: 'water_tap', drinkable: 'yes' }, 'drinking', 'stated', true, []],
  [
    { man_made: 'water_tap', drinkable: 'yes', drinking_water: 'no' },
    'washing',
    'implied',
    false,
    ['not-fit', 'evidence-below'],
  ],
  [
    { emergency: 'water_tank', drinking_water: 'yes' },
    'drinking',
    'doubtful',
    false,
    ['for-fire-fighting', 'evidence-below'],
  ],
  [
    { emergency: 'water_tank', man_made: 'storage_tank', content: 'water' },
    'none',
    'doubtful',
    false,
    ['for-fire-fighting', 'evidence-below'],
  ],
  [{ waterway: 'water_point' }, 'drinking', 'doubtful', false, ['for-boats', 'evidence-below']],
  [{ natural: 'hot_spring' }, 'none', 'doubtful', false, ['minerals-unknown', 'evidence-below']],
  [{ natural: 'spring', 'drinking_water:legal': 'yes' }, 'drinking', 'stated', true, []],
  [
    { natural: 'spring', 'drinking_water:legal': 'no' },
    'treatable',
    'implied',
    false,
    ['not-controlled', 'not-stated-fit', 'evidence-below'],
  ],
  [
    { amenity: 'drinking_water', 'drinking_water:legal': 'no' },
    'treatable',
    'stated',
    false,
    ['not-controlled'],
  ],
  [
    { natural: 'spring', drinking_water: 'no', 'drinking_water:legal': 'yes' },
    'washing',
    'doubtful',
    false,
    ['tags-contradict', 'evidence-below'],
  ],
  [
    { natural: 'spring', drinking_water: 'conditional' },
    'treatable',
    'doubtful',
    false,
    ['fit-on-condition', 'evidence-below'],
  ],
  [
    { natural: 'spring', drinking_water: 'maybe' },
    'treatable',
    'doubtful',
    false,
    ['fit-unclear', 'evidence-below'],
  ],
  [
    { amenity: 'watering_place', drinking_water: 'maybe' },
    'none',
    'doubtful',
    false,
    ['fit-unclear', 'evidence-below'],
  ],
  [
    { amenity: 'drinking_water', drinking_water: 'unknown' },
    'treatable',
    'doubtful',
    false,
    ['fit-unclear', 'evidence-below'],
  ],
  [
    { natural: 'spring', drinking_water: 'seasonal' },
    'drinking',
    'doubtful',
    false,
    ['season-unknown', 'evidence-below'],
  ],
  [
    { natural: 'spring', drinking_water: 'yes', salt: 'yes' },
    'washing',
    'doubtful',
    false,
    ['salty', 'evidence-below'],
  ],
  [
    { natural: 'spring', drinking_water: 'yes', intermittent: 'yes' },
    'drinking',
    'doubtful',
    false,
    ['may-be-dry', 'evidence-below'],
  ],
  [{ natural: 'spring', drinking_water: 'yes', intermittent: 'no' }, 'drinking', 'stated', true, []],
  [
    { man_made: 'water_well', drinking_water: 'yes', pump: 'powered' },
    'drinking',
    'stated',
    true,
    ['powered-pump'],
  ],
  [{ man_made: 'water_well', drinking_water: 'yes', pump: 'manual' }, 'drinking', 'stated', true, []],
  [
    { man_made: 'water_well', drinking_water: 'yes', pump: 'no_pump' },
    'drinking',
    'stated',
    false,
    ['no-pump'],
  ],
  [
    { man_made: 'water_well', drinking_water: 'yes', 'pump:status': 'broken' },
    'drinking',
    'doubtful',
    false,
    ['broken', 'evidence-below'],
  ],
  [{ man_made: 'water_well', drinking_water: 'yes', 'pump:status': 'ok' }, 'drinking', 'stated', true, []],
  [
    { amenity: 'drinking_water', operational_status: 'closed' },
    'drinking',
    'doubtful',
    false,
    ['broken', 'evidence-below'],
  ],
  [
    { amenity: 'drinking_water', operational_status: 'constructor' },
    'drinking',
    'doubtful',
    false,
    ['status-unclear', 'evidence-below'],
  ],
  [
    { amenity: 'drinking_water', bottle: 'no' },
    'drinking',
    'doubtful',
    false,
    ['hard-to-fill', 'evidence-below'],
  ],
  [{ amenity: 'drinking_water', bottle: 'yes' }, 'drinking', 'stated', true, []],
  [{ amenity: 'drinking_water', fee: 'yes' }, 'drinking', 'stated', true, ['fee']],
  [{ amenity: 'drinking_water', fixme: 'moved?' }, 'drinking', 'stated', true, ['mapper-doubt']],
  [
    { tourism: 'caravan_site', water_point: 'yes' },
    'treatable',
    'implied',
    false,
    ['not-stated-fit', 'evidence-below'],
  ],
  [{ man_made: 'reservoir_covered' }, 'treatable', 'doubtful', false, ['use-unknown', 'evidence-below']],
];

describe('what a water is fit for', () => {
  it.each(CASES)('%j: %s, %s', (tags, waterClass, evidence, counts, codes) => {
    const point = pointOf('water', tags);
    expect([point.waterClass, point.evidence, point.counts, codesOf(point)]).toEqual([
      waterClass,
      evidence,
      counts,
      codes,
    ]);
  });

  it('makes a supply of any object that says it has drinking water, and of none that says it has not', () => {
    const kindsOf = (tags: Tags) => pointsOf(tags).map(({ kind }) => textOf(kind));
    expect(kindsOf({ building: 'yes', drinking_water: 'yes' })).toEqual(['place with water']);
    expect(kindsOf({ tourism: 'alpine_hut', drinking_water: 'yes' })).toEqual(['water at: mountain hut']);
    expect(pointsOf({ building: 'yes', drinking_water: 'no' })).toEqual([]);
    expect(pointsOf({ building: 'yes', 'drinking_water:legal': 'no' })).toEqual([]);
    expect(pointsOf({ shop: 'water' })).toEqual([]);
    expect(pointsOf({ natural: 'water', water: 'lake' })).toEqual([]);
  });
});
