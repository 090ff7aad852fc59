import { describe, expect, it } from 'vitest';
import { surroundingKinds } from '../../../server/core/surroundings/kinds.ts';

describe('water that may be treated and drunk', () => {
  const kindsOf = (tags: Record<string, string>) => surroundingKinds({ natural: 'water', ...tags }, 'ring');

  it('is a lake, also where nobody says what kind of water it is', () => {
    expect(kindsOf({})).toEqual(['lake']);
    expect(kindsOf({ water: 'lake' })).toEqual(['lake']);
    expect(kindsOf({ water: 'reservoir' })).toEqual(['lake']);
  });

  it.each([{ water: 'wastewater' }, { water: 'basin' }, { water: 'Pool' }, { water: 'salt_pool' }])(
    'is none where it was built for something else: %j',
    (tags) => {
      expect(kindsOf(tags)).toEqual([]);
    },
  );

  it.each([{ salt: 'yes' }, { intermittent: 'yes' }, { seasonal: 'spring' }, { tidal: 'yes' }])(
    'is none where it is not fresh all year: %j',
    (tags) => {
      expect(kindsOf(tags)).toEqual([]);
    },
  );
});

it('a border is that of a country, not of what lies within one', () => {
  const kindsOf = (level: string) =>
    surroundingKinds({ boundary: 'administrative', admin_level: level }, 'line');
  expect(kindsOf('2')).toEqual(['border']);
  expect(kindsOf('4')).toEqual([]);
});

it('an object is of a kind by its shape as well as by its tags: a river is a line', () => {
  expect(surroundingKinds({ waterway: 'river' }, 'line')).toEqual(['river']);
  expect(surroundingKinds({ waterway: 'river' }, 'point')).toEqual([]);
  expect(surroundingKinds({ natural: 'water' }, 'line')).toEqual([]);
});

it('an object that is of a kind by two of its tags is of it once', () => {
  expect(surroundingKinds({ landuse: 'military', military: 'range' }, 'ring')).toEqual(['military']);
});
