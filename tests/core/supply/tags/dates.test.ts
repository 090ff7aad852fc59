import { describe, expect, it } from 'vitest';
import { datesAgainst } from '../../../../server/core/supply/tags/dates.ts';

const on = '2026-05-04';
const states = (tags: Record<string, string>) => datesAgainst(tags, on).map(({ state }) => state);

describe('dates of beginning and end', () => {
  it.each([
    ['end_date', '2026-05-04', ['gone']],
    ['end_date', '2026-05-05', []],
    ['end_date', '2026-05', ['gone']],
    ['end_date', '2026-06', []],
    ['end_date', '2026', ['gone']],
    ['end_date', '2027', []],
    ['end_date', '2019-5-4', ['gone']],
    ['end_date', '~2010', ['unclear']],
    ['end_date', 'no idea', ['unclear']],
    ['end_date', ' ', []],
    ['start_date', '2026-05-04', []],
    ['start_date', '2026-05-05', ['gone']],
    // Mapped as there, so it began early enough in its month or year.
    ['start_date', '2026-05', []],
    ['start_date', '2026', []],
    ['start_date', '2027', ['gone']],
    ['start_date', '1970s', []],
    ['start_date', 'C19', []],
    ['opening_date', '2026-05-04', []],
    ['opening_date', '2026-05-05', ['gone']],
    // May open on the last day of its month or year.
    ['opening_date', '2026-05', ['gone']],
    ['opening_date', '2026-04', []],
    ['opening_date', '2026', ['gone']],
    ['opening_date', 'soon', ['unclear']],
  ])('%s=%s', (key, value, expected) => {
    expect(states({ [key]: value })).toEqual(expected);
  });

  it('each say for themselves', () => {
    expect(datesAgainst({ end_date: '2019', start_date: '2199' }, on)).toEqual([
      { key: 'start_date', state: 'gone' },
      { key: 'end_date', state: 'gone' },
    ]);
    expect(datesAgainst({}, on)).toEqual([]);
  });
});
