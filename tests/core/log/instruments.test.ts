import { describe, expect, test } from 'vitest';
import { csvOf, fuelLog, refusal } from './learn-helpers.ts';

/** Further fill-ups, four of them: fewer intervals teach nothing. */
const tail = (...lines: string[]): string[] =>
  lines.length === 1 ? Array.from({ length: 4 }, () => lines[0] ?? '') : lines;

describe('a log by trip meter', () => {
  const log = csvOf(
    'trip_km,litres,full',
    ',40,full',
    '400,48,full',
    '200,30,part',
    '300,40,full',
    ...tail('100,10,full'),
  );

  test('sums the ways: 400 km on 48 l, 500 km on 70 l', () => {
    const { intervals } = fuelLog(log);
    expect(intervals.slice(0, 2).map(({ km, litres }) => [km, litres])).toEqual([
      [400, 48],
      [500, 70],
    ]);
  });

  test('asks for the way in every line but the first', () => {
    const problem = refusal(csvOf('trip_km,litres,full', '0,40,full', ',48,full'));
    expect(problem.place).toContain('3');
  });

  test('asks for its unit', () => {
    expect(refusal(csvOf('trip,litres,full', '0,40,full')).expected).toContain('trip_km');
  });

  test('is the same in miles', () => {
    const { intervals } = fuelLog(
      csvOf('trip_mi,litres,full', '0,40,full', '100,20,full', ...tail('100,10,full')),
    );
    expect(intervals[0]?.km).toBeCloseTo(160.9344, 9);
  });
});

describe('a change of odometer', () => {
  test('goes on by the trip meter of its line', () => {
    const log = csvOf(
      'odometer_km,trip_km,litres,full,odometer changed',
      '150000,,40,full,',
      '150400,400,48,full,',
      '120,500,60,full,yes',
      '520,400,44,full,',
      ...tail(...[620, 720, 820, 920].map((km) => `${km},100,10,full,`)),
    );
    const { intervals, leftOut } = fuelLog(log);
    expect(leftOut).toEqual([]);
    expect(intervals.slice(0, 3).map(({ km, litres }) => [km, litres])).toEqual([
      [400, 48],
      [500, 60],
      [400, 44],
    ]);
  });

  test('without one leaves out the way to it, and only that', () => {
    const log = csvOf(
      'odometer_km,litres,full,odometer changed',
      '150000,40,full,',
      '150400,48,full,',
      '120,60,full,yes',
      '520,44,full,',
      ...tail(...[620, 720, 820, 920].map((km) => `${km},10,full,`)),
    );
    const { intervals, leftOut } = fuelLog(log);
    expect(intervals.slice(0, 2).map(({ km, litres }) => [km, litres])).toEqual([
      [400, 48],
      [400, 44],
    ]);
    expect(leftOut.map(({ code, fromLine, toLine }) => [code, fromLine, toLine])).toEqual([
      ['fill-missing', 3, 4],
    ]);
  });

  test('that is not told is still refused, with the way to tell it', () => {
    const problem = refusal(csvOf('odometer_km,litres,full', '150000,40,full', '120,60,full', '500,9,full'));
    expect(problem.remedy).toContain('odometer changed');
  });
});
