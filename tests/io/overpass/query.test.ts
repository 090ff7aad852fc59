import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../server/core/input/sources.ts';
import { KIND_RULES, LIFECYCLE_PREFIXES } from '../../../server/core/supply/tags/kinds.ts';
import { wantedFor } from '../../../server/core/supply/tags/wanted.ts';
import { isDriven, surroundingKinds } from '../../../server/core/surroundings/kinds.ts';
import { overpassQuery } from '../../../server/io/overpass/query.ts';

const QUERY = overpassQuery([84.5, -35.25, 84.75, -35]);

/** Whether a statement of the query asks for an object of a type: its tag filters, read as Overpass does. */
function asksFor(type: 'node' | 'way' | 'rel', tags: Tags): boolean {
  return QUERY.split('\n').some((line) => {
    const statement = /^ {2}(nwr|node|way|rel)(\[.*\])/.exec(line);
    if (statement === null || (statement[1] !== 'nwr' && statement[1] !== type)) return false;
    const filters = [...(statement[2] ?? '').matchAll(/\[(~?)"([^"]+)"(?:(~|=)"([^"]+)")?(,i)?\]/g)];
    expect(filters.map(([whole]) => whole).join(''), line).toBe(statement[2]);
    return filters.every(([, byKey, key = '', sign, value = '', flag]) =>
      Object.entries(tags).some(
        ([tag, said]) =>
          (byKey === '~' ? new RegExp(key, 'i').test(tag) : tag === key) &&
          (sign === undefined || (sign === '=' ? said === value : new RegExp(value, flag && 'i').test(said))),
      ),
    );
  });
}

describe('the query of a box', () => {
  it('names the box as south, west, north, east, in every statement that finds something', () => {
    const found = QUERY.split('\n').filter((line) => /^ {2}|way\(r/.test(line));
    expect(found.length).toBeGreaterThan(20);
    for (const line of found) expect(line).toContain('(-35.25,84.5,-35,84.75)');
  });

  it.each(KIND_RULES.flatMap(({ forms }) => forms))(
    'asks for %j, alone, in a list, and out of use',
    (form) => {
      const [[key, value] = ['', '']] = Object.entries(form);
      const forms: Tags[] = [
        form,
        { ...form, [key]: `${value};cafe` },
        { ...form, [key]: `cafe; ${value.toUpperCase()}` },
        ...LIFECYCLE_PREFIXES.map((prefix) => {
          const { [key]: _, ...rest } = form;
          return { ...rest, [`${prefix}:${key}`]: value };
        }),
      ];
      for (const tags of forms) {
        expect(wantedFor(tags), JSON.stringify(tags)).not.toEqual([]);
        expect(asksFor('node', tags), JSON.stringify(tags)).toBe(true);
        expect(asksFor('way', tags)).toBe(true);
      }
    },
  );

  it('asks for lakes that are relations, of no more parts than a bound, and through no other statement', () => {
    const lake = { natural: 'water', type: 'multipolygon' };
    expect(surroundingKinds(lake, 'area')).toContain('lake');
    expect(asksFor('rel', lake)).toBe(true);
    const lines = QUERY.split('\n').filter((line) => line.startsWith('  rel["natural"'));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('(if:count_members() <= 50)(-35.25,84.5,-35,84.75);');
  });

  it('asks for whatever speaks of drinking water, and for nothing else of that kind', () => {
    for (const key of ['drinking_water', 'drinkable', 'drinking_water:legal'])
      expect(asksFor('rel', { tourism: 'camp_site', [key]: 'yes' })).toBe(true);
    expect(asksFor('node', { amenity: 'bench' })).toBe(false);
    expect(asksFor('node', { amenity: 'biofuel' })).toBe(false);
  });

  it('asks for the ground that bears on supplies, and for all roads', () => {
    const ground: [Tags, 'node' | 'way' | 'rel', Parameters<typeof surroundingKinds>[1]][] = [
      [{ waterway: 'river' }, 'way', 'line'],
      [{ railway: 'rail' }, 'way', 'line'],
      [{ natural: 'coastline' }, 'way', 'line'],
      [{ boundary: 'administrative', admin_level: '2' }, 'way', 'line'],
      [{ boundary: 'administrative', admin_level: '2' }, 'rel', 'boundary'],
      [{ railway: 'level_crossing' }, 'node', 'point'],
      [{ highway: 'track', ford: 'yes' }, 'way', 'line'],
      [{ route: 'ferry' }, 'way', 'line'],
      [{ natural: 'water' }, 'way', 'ring'],
      [{ place: 'hamlet', name: 'Ollin' }, 'node', 'point'],
      [{ military: 'range' }, 'rel', 'area'],
      [{ access: 'private' }, 'way', 'ring'],
    ];
    for (const [tags, type, shape] of ground) {
      expect(surroundingKinds(tags, shape), JSON.stringify(tags)).not.toEqual([]);
      expect(asksFor(type, tags), JSON.stringify(tags)).toBe(true);
    }
    expect(isDriven({ highway: 'service' })).toBe(true);
    expect(asksFor('way', { highway: 'service' })).toBe(true);
    expect(asksFor('way', { highway: 'steps' })).toBe(false);
  });
});
