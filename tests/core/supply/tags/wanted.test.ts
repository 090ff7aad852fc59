import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../server/core/input/sources.ts';
import { KIND_RULES, LIFECYCLE_PREFIXES } from '../../../../server/core/supply/tags/kinds.ts';
import { WANTED_KEYS, wantedFor } from '../../../../server/core/supply/tags/wanted.ts';
import { anyTags } from '../any-tags.ts';

const hasWantedKey = (tags: Tags): boolean => Object.keys(tags).some((key) => WANTED_KEYS.includes(key));

describe('what readers keep', () => {
  it('wants every kind of the table, in every form, live and former', () => {
    for (const rule of KIND_RULES) {
      for (const form of rule.forms) {
        expect(wantedFor(form)).toEqual([rule.commodity]);
        expect(hasWantedKey(form)).toBe(true);
        const [[key, value], ...rest] = Object.entries(form) as [[string, string], ...[string, string][]];
        for (const prefix of LIFECYCLE_PREFIXES) {
          const former = { [`${prefix}:${key}`]: value, ...Object.fromEntries(rest) };
          expect(wantedFor(former), JSON.stringify(former)).toEqual([rule.commodity]);
          expect(hasWantedKey(former)).toBe(true);
        }
      }
    }
  });

  it.each([
    [{ tourism: 'camp_site', drinking_water: 'yes' }, ['water']],
    [{ tourism: 'camp_site', drinking_water: 'untreated' }, ['water']],
    [{ tourism: 'camp_site', drinkable: 'yes' }, ['water']],
    [{ building: 'yes', 'drinking_water:legal': 'yes' }, ['water']],
    [{ building: 'yes', drinking_water: 'no' }, []],
    [{ building: 'yes', drinkable: 'no' }, []],
    [{ building: 'yes', 'drinking_water:legal': 'no' }, []],
    [{ amenity: 'fuel', drinking_water: 'no' }, ['fuel']],
    [{ amenity: 'fuel', drinking_water: 'yes' }, ['fuel', 'water']],
    [{ amenity: 'fuel;drinking_water' }, ['fuel', 'water']],
    [{ amenity: 'toilets; drinking_water' }, ['water']],
    [{ man_made: 'storage_tank' }, []],
    [{ man_made: 'storage_tank', content: 'oil' }, []],
    [{ 'disused:man_made': 'storage_tank', 'disused:content': 'water' }, ['water']],
    [{ amenity: 'vending_machine', vending: 'water' }, []],
    [{ shop: 'gas' }, []],
    [{ amenity: 'bench' }, []],
    [{ natural: 'water' }, []],
    [{}, []],
  ] as [Tags, string[]][])('%j: %j', (tags, wanted) => {
    expect(wantedFor(tags)).toEqual(wanted);
  });

  it('wants nothing that has none of the keys to look for', () => {
    fc.assert(
      fc.property(anyTags, (tags) => {
        if (wantedFor(tags).length > 0) expect(hasWantedKey(tags)).toBe(true);
      }),
    );
  });
});
