import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../server/core/input/sources.ts';
import { goesByDates, hoursOf, openingOf, withoutSun } from '../../../../server/core/supply/tags/hours.ts';

const textsOf = (tags: Tags, commodity: 'fuel' | 'water' = 'fuel') =>
  hoursOf(tags, commodity, ['fuel:diesel']).map(({ text }) => text);

describe('hours of a supply', () => {
  it("are the commodity's own before those of the place", () => {
    const tags = {
      opening_hours: 'Mo-Fr',
      'opening_hours:fuel': ' 24/7 ',
      'opening_hours:drinking_water': 'Sa',
    };
    expect(openingOf(tags, 'fuel')).toEqual({ text: '24/7', tag: 'opening_hours:fuel=24/7' });
    expect(openingOf(tags, 'water')?.text).toBe('Sa');
    expect(openingOf({ opening_hours: 'Mo-Fr' }, 'water')?.text).toBe('Mo-Fr');
    expect(openingOf({ opening_hours: ' ', 'opening_hours:fuel': '' }, 'fuel')).toBeNull();
  });

  it.each<[Tags, string[]]>([
    [{ 'access:conditional': 'no @ (Nov-Mar)' }, ['24/7; Nov-Mar off']],
    [{ 'access:conditional': 'no @ Nov-Mar' }, ['24/7; Nov-Mar off']],
    [{ 'access:conditional': 'Private @ (Nov-Mar; Su)' }, ['24/7; Nov-Mar off; Su off']],
    [{ 'access:conditional': 'no @ (Nov-Mar); no @ (Su)' }, ['24/7; Nov-Mar off', '24/7; Su off']],
    [{ 'access:conditional': 'yes @ (May-Sep)' }, ['May-Sep']],
    [{ access: 'yes', 'access:conditional': 'yes @ (May-Sep)' }, []],
    [{ access: 'no', 'access:conditional': 'yes @ (May-Sep)' }, []],
    [{ 'motor_vehicle:conditional': 'no @ (wet)' }, ['24/7; wet off']],
    [{ 'fuel:diesel:conditional': 'no @ (Jan)' }, ['24/7; Jan off']],
    [{ 'fuel:octane_95:conditional': 'no @ (Jan)' }, []],
    [{ 'fee:conditional': 'no @ (Jan)' }, []],
    [{ 'access:conditional': 'in summer' }, ['in summer']],
    [{ 'access:conditional': ' ' }, []],
  ])('%j are %j', (tags, texts) => {
    expect(textsOf(tags)).toEqual(texts);
  });

  it('of one fuel say nothing of water', () => {
    expect(textsOf({ 'fuel:diesel:conditional': 'no @ (Jan)' }, 'water')).toEqual([]);
    expect(textsOf({ 'drinking_water:conditional': 'no @ (Jan)' }, 'water')).toEqual(['24/7; Jan off']);
  });

  it.each([
    ['Mo-Fr 08:00-17:00', false],
    ['24/7', false],
    ['May-Sep', true],
    ['week 10-20 Mo', true],
    ['2019 Mo-Fr', true],
    ['easter off', true],
    ['Mo-Fr 08:00-17:00 "not in May"', false],
    ['Mo 1900:00', false],
  ])('%s go by dates: %s', (text, expected) => {
    expect(goesByDates(text)).toBe(expected);
  });

  it('that go by the sun hold from six to eighteen', () => {
    expect(withoutSun('May-Sep sunrise-sunset')).toBe('May-Sep 06:00-18:00');
    expect(withoutSun('(sunrise-01:00)-(sunset+00:30)')).toBe('06:00-18:00');
    expect(withoutSun('dawn-dusk')).toBe('06:00-18:00');
  });
});
