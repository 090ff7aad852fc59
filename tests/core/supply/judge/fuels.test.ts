import { describe, expect, it } from 'vitest';
import type { FuelKind } from '../../../../server/contract/rig.ts';
import type { Tags } from '../../../../server/core/input/sources.ts';
import { codesOf, pointOf } from '../judged.ts';

/** fuel of the rig, what the station's tags say, evidence, counts by default, codes of all reasons. */
const CASES: [FuelKind, Tags, string, boolean, string[]][] = [
  ['diesel', { 'fuel:HGV_diesel': 'yes' }, 'stated', true, ['lorry-pump']],
  ['diesel', { 'fuel:HGV_diesel': 'yes', 'fuel:diesel': 'yes' }, 'stated', true, []],
  ['diesel', { 'fuel:HGV_diesel': 'no', 'fuel:diesel': 'yes' }, 'stated', true, []],
  ['diesel', { 'fuel:GTL_diesel': 'yes' }, 'stated', true, ['diesel-kin']],
  ['diesel', { 'fuel:HVO100': 'yes' }, 'stated', true, ['diesel-kin']],
  ['diesel', { 'fuel:HVO': 'yes' }, 'stated', true, ['diesel-kin']],
  [
    'diesel',
    { 'fuel:GTL_diesel': 'yes', 'fuel:diesel': 'no' },
    'doubtful',
    false,
    ['fuel-may-not-suit', 'evidence-below', 'diesel-kin'],
  ],
  ['diesel', { 'fuel:biodiesel': 'yes' }, 'doubtful', false, ['fuel-may-not-suit', 'evidence-below']],
  ['diesel', { 'fuel:biodiesel': 'no' }, 'implied', true, []],
  ['diesel', { 'fuel:adblue': 'yes' }, 'implied', true, []],
  ['diesel', { 'fuel:octane_95': 'no' }, 'implied', true, []],
  ['diesel', { 'fuel:diesel': 'sometimes' }, 'doubtful', false, ['fuel-unclear', 'evidence-below']],
  ['diesel', { 'fuel:Diesel': 'yes' }, 'doubtful', false, ['other-fuels-listed', 'evidence-below']],
  ['petrol', { 'fuel:octane_95': 'yes' }, 'stated', true, []],
  ['petrol', { 'fuel:octane_98': 'yes', 'fuel:octane_95': 'no' }, 'stated', true, []],
  ['petrol', { 'fuel:octane_80': 'yes' }, 'stated', true, ['low-octane']],
  ['petrol', { 'fuel:octane_80': 'yes', 'fuel:octane_92': 'yes' }, 'stated', true, []],
  ['petrol', { 'fuel:e10': 'yes' }, 'stated', true, ['ethanol-blend']],
  ['petrol', { 'fuel:e10': 'yes', 'fuel:octane_95': 'yes' }, 'stated', true, []],
  ['petrol', { 'fuel:gasoline': 'yes' }, 'stated', true, []],
  ['petrol', { 'fuel:octane_95': 'no' }, 'doubtful', false, ['grade-not-sold', 'evidence-below']],
  ['petrol', { 'fuel:diesel': 'yes' }, 'doubtful', false, ['other-fuels-listed', 'evidence-below']],
  ['petrol', { 'fuel:e85': 'yes' }, 'doubtful', false, ['other-fuels-listed', 'evidence-below']],
  ['petrol', {}, 'implied', true, []],
  ['lpg', { 'fuel:lpg': 'yes' }, 'stated', true, []],
  ['lpg', { 'fuel:lpg': 'no' }, 'doubtful', false, ['fuel-not-sold', 'evidence-below']],
  ['lpg', { 'fuel:propane': 'yes' }, 'doubtful', false, ['fuel-may-not-suit', 'evidence-below']],
  ['cng', { 'fuel:cng': 'yes' }, 'stated', true, []],
  [
    'cng',
    { 'fuel:diesel': 'yes' },
    'doubtful',
    false,
    ['never-implied', 'other-fuels-listed', 'evidence-below'],
  ],
  ['lng', { 'fuel:lng': 'yes' }, 'stated', true, []],
  ['lng', {}, 'doubtful', false, ['never-implied', 'evidence-below']],
  ['e85', { 'fuel:e85': 'yes' }, 'stated', true, []],
  [
    'e85',
    { 'fuel:e10': 'yes' },
    'doubtful',
    false,
    ['never-implied', 'other-fuels-listed', 'evidence-below'],
  ],
];

describe('what a station sells', () => {
  it.each(CASES)('%s at a station with %j: %s', (fuelKind, tags, evidence, counts, codes) => {
    const point = pointOf('fuel', { amenity: 'fuel', ...tags }, { fuelKind });
    expect([point.evidence, point.counts, codesOf(point)]).toEqual([evidence, counts, codes]);
  });

  it('a refused fuel counts at no level', () => {
    const counting = { fuel: 'doubtful', water: 'doubtful' } as const;
    const refused = pointOf('fuel', { amenity: 'fuel', 'fuel:diesel': 'no' }, { counting });
    expect([refused.counts, codesOf(refused)]).toEqual([false, ['fuel-not-sold']]);
    const other = pointOf('fuel', { amenity: 'fuel', 'fuel:octane_95': 'yes' }, { counting });
    expect([other.counts, codesOf(other)]).toEqual([true, ['other-fuels-listed']]);
  });

  it.each([
    [{ shop: 'fuel' }, 'doubtful', 'stated'],
    [{ amenity: 'vending_machine', vending: 'fuel' }, 'doubtful', 'stated'],
    [{ waterway: 'fuel' }, 'doubtful', 'doubtful'],
    [{ aeroway: 'fuel' }, 'doubtful', 'doubtful'],
  ] as [Tags, string, string][])('%j is %s, with fuel:diesel=yes %s', (tags, bare, told) => {
    expect(pointOf('fuel', tags).evidence).toBe(bare);
    expect(pointOf('fuel', { ...tags, 'fuel:diesel': 'yes' }).evidence).toBe(told);
  });

  it('a station for heavy vehicles only is doubtful', () => {
    const point = pointOf('fuel', { amenity: 'fuel', 'fuel:diesel': 'yes', hgv: 'only' });
    expect([point.evidence, point.counts, codesOf(point)]).toEqual([
      'doubtful',
      false,
      ['lorries-only', 'evidence-below'],
    ]);
  });

  it('is called by name, else brand, else operator', () => {
    const nameOf = (tags: Tags) => pointOf('fuel', { amenity: 'fuel', ...tags }).name;
    expect(nameOf({ name: 'North Pump', brand: 'Blue', operator: 'Shire' })).toBe('North Pump');
    expect(nameOf({ name: ' ', brand: 'Blue', operator: 'Shire' })).toBe('Blue');
    expect(nameOf({ operator: 'Shire' })).toBe('Shire');
    expect(nameOf({})).toBeNull();
  });
});
