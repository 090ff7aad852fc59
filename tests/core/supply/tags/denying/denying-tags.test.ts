import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../../server/core/input/sources.ts';
import { deniedBy } from '../../../../../server/core/supply/tags/denying/denying-tags.ts';

const codes = (tags: Tags, commodity: 'fuel' | 'water' = 'fuel') =>
  deniedBy(tags, commodity).map(({ code }) => code);

describe('tags that speak against a supply', () => {
  it('are those of boats, aircraft and trains, until the tags say that motor vehicles may come', () => {
    const kinds: [Tags, string][] = [
      [{ waterway: 'fuel' }, 'for-boats'],
      [{ aeroway: 'fuel' }, 'for-aircraft'],
      [{ railway: 'fuel' }, 'for-trains'],
    ];
    for (const [tags, code] of kinds) {
      expect(codes(tags)).toEqual([code]);
      expect(codes({ ...tags, motor_vehicle: 'yes' })).toEqual([]);
      expect(codes({ ...tags, motor_vehicle: 'no' })).toContain(code);
    }
  });

  it('hold against the commodity that they are of', () => {
    expect(codes({ aeroway: 'fuel' }, 'water')).toEqual([]);
    expect(codes({ waterway: 'fuel' }, 'water')).toEqual(['for-boats']);
  });
});
