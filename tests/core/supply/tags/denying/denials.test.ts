import { describe, expect, it } from 'vitest';
import { denialsIn, denies, deniesInNote } from '../../../../../server/core/supply/tags/denying/denials.ts';

describe('words that deny', () => {
  it('are quoted as they stand, with their key, long ones cut', () => {
    expect(
      denialsIn({ amenity: 'fuel', 'name:fr': 'Station\n fermée', note: 'Nice. No diesel! Toilets.' }),
    ).toEqual([
      { key: 'name:fr', quote: 'Station fermée' },
      { key: 'note', quote: 'No diesel' },
    ]);
    const [long] = denialsIn({ description: `closed ${'and so on '.repeat(30)}` });
    expect(long?.quote).toHaveLength(100);
    expect(long?.quote.endsWith('…')).toBe(true);
  });

  it('are not sought in tags that hold no words of mappers', () => {
    for (const key of ['brand', 'website', 'addr:street', 'source', 'amenity', 'opening_hours']) {
      expect(denialsIn({ [key]: 'closed' }), key).toEqual([]);
    }
    expect(
      denialsIn({ opening_hours: 'Mo-Fr "closed in Ramadan"', 'opening_hours:note': 'often closed' }),
    ).toEqual([
      { key: 'opening_hours', quote: 'closed in Ramadan' },
      { key: 'opening_hours:note', quote: 'often closed' },
    ]);
  });

  it('are sought as names in names and operators, as sentences elsewhere', () => {
    const keys = (text: string) =>
      [
        'name',
        'name:en',
        'operator',
        'note',
        'note:en',
        'drinking_water:note',
        'fixme',
        'opening_hours:note',
      ].filter((key) => denialsIn({ [key]: text }).length > 0);
    const prose = ['note', 'note:en', 'drinking_water:note', 'fixme', 'opening_hours:note'];
    expect(keys('a dry creek')).toEqual(prose);
    expect(keys('closed')).toEqual(['name', 'name:en', 'operator', ...prose]);
    expect(denialsIn({ 'opening_hours:fuel': '24/7 "out of order"' })).toEqual([
      { key: 'opening_hours:fuel', quote: 'out of order' },
    ]);
    expect(denialsIn({ description: `${'a'.repeat(93)} closed` })[0]?.quote).toHaveLength(100);
  });

  it.each([
    'Coldry',
    'Dry Creek Roadhouse',
    'Enclosure Bore',
    'Laguna Seca',
    'Arroyo Seco',
    'Broken Hill',
    'Ruinas de Quilmes',
    'Сухой Лог',
    'Kuru Köprü',
    'خشکرود',
    'Nowhere Else',
    'Watertown',
  ])('are no part of the name %s', (name) => {
    expect(denies(name, true)).toBe(false);
  });

  it.each([
    'Dry',
    'Bore (dry)',
    'Well 7 - dry since 2019',
    'Dry Well',
    'Tank: empty',
    'Pozo Seco',
    'CLOSED',
    'Сухой колодец',
  ])('stand apart in the name %s', (name) => {
    expect(denies(name, true)).toBe(true);
  });

  it('are taken back by what stands beside them', () => {
    for (const text of [
      'not closed',
      'never shut',
      'no longer abandoned',
      'nicht geschlossen',
      'kapalı değil',
      '从不关闭',
    ]) {
      expect(denies(text, false), text).toBe(false);
    }
    expect(denies('not closed then, but closed now', false)).toBe(true);
  });

  it('are the bare ones as well in a note on nothing but a supply', () => {
    expect([denies('no', false), deniesInNote('no', false)]).toEqual([false, true]);
    expect(deniesInNote('Fuel station', true)).toBe(false);
  });
});
