import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockOf, formatDate, formatLocalTime, hoursOf, today } from '../../../web/words/local-time.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('times on the page', () => {
  it('are the local ones of the plan, whatever the reader’s own zone', () => {
    expect(plain(formatDate('2027-05-03'))).toBe('Mon 3 May');
    expect(plain(formatLocalTime('2027-12-31T23:59'))).toBe('Fri 31 Dec 23:59');
    expect(formatDate('soon')).toBe('soon');
  });

  it('stand in the file as hours of the day', () => {
    expect(hoursOf('07:30')).toBe(7.5);
    expect(hoursOf('24:00')).toBeNull();
    expect(hoursOf('')).toBeNull();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 24 * 60 - 1 }), (minutes) => {
        const clock = clockOf(minutes / 60);
        expect(Math.round((hoursOf(clock) ?? -1) * 60)).toBe(minutes);
      }),
    );
  });
});

it('a day is that of the reader’s own calendar', () => {
  // Local time: what it is in UTC goes by where the test runs.
  expect(today(new Date(2026, 4, 3, 23, 59))).toBe('2026-05-03');
  expect(today(new Date(2026, 11, 31, 0, 1))).toBe('2026-12-31');
});
