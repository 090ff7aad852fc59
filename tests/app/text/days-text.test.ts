import { expect, test } from 'vitest';
import { daysText } from '../../../server/app/text/days-text.ts';
import type { Days } from '../../../server/contract/pace.ts';

const DAYS: Days = {
  rows: [
    {
      day: 1,
      date: '2026-05-04',
      fromKm: 0,
      toKm: 245,
      hours: 7,
      halt: { kind: 'pace', name: null },
      arrive: { earliest: '2026-05-04T12:05', latest: '2026-05-04T15:00' },
      fuelL: 85.35,
      waterL: 64.75,
      waterByGrade: null,
    },
    {
      day: 2,
      date: '2026-05-05',
      fromKm: 245,
      toKm: 300,
      hours: 55 / 35,
      halt: { kind: 'camp', name: 'Dry \u001b[31m Fork' },
      arrive: { earliest: '2026-05-04T13:00', latest: '2026-05-05T09:34' },
      fuelL: 76,
      waterL: 50.8,
      waterByGrade: null,
    },
    {
      day: 3,
      date: null,
      fromKm: 300,
      toKm: 300,
      hours: 0,
      halt: { kind: 'stay', name: null },
      arrive: null,
      fuelL: 76,
      waterL: -1.2,
      waterByGrade: null,
    },
  ],
  allListed: true,
  drivingHours: { slow: 8.571, typical: 6.667, fast: 5 },
  elapsedDays: { slow: 1.0655, typical: 0.2778, fast: 0.2083 },
  waterCharge: 'elapsed',
};

test('days are a line each under a line that says what they go by', () => {
  expect(daysText({ days: DAYS })).toEqual([
    'Days at the slow pace: 8.6 h of driving in 1.1 days (typical 0.3, fast 0.2). Water goes by the time that passes, nights included.',
    'day  date         from     to  drive  night at             arrive                     fuel left  water left',
    '                    km     km      h                                                          l           l',
    "  1  2026-05-04    0.0  245.0    7.0  the day's hours end  12:05 to 15:00                  85.3        64.8",
    '  2  2026-05-05  245.0  300.0    1.6  Dry [31m Fork        2026-05-04 13:00 to 09:34       76.0        50.8',
    '  3              300.0  300.0    0.0  stay                                                 76.0        -1.2',
  ]);
});

test('more days than are listed are said', () => {
  const lines = daysText({ days: { ...DAYS, allListed: false } });
  expect(lines.at(-1)).toBe('The drive goes on for more days than the 3 listed.');
});

test('where a crew tells the grades, what is left of each has a column of its own', () => {
  const [first, ...rest] = DAYS.rows;
  const graded = { ...first!, waterByGrade: { drinkingL: 40.5, washingL: 24.25 } };
  const lines = daysText({ days: { ...DAYS, rows: [graded, ...rest] } });
  expect(lines[1]).toMatch(/water left {2}drinking {2}washing$/);
  expect(lines[3]).toMatch(/64\.8 +40\.5 +24\.3$/);
});
