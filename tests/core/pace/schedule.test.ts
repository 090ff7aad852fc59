import { describe, expect, test } from 'vitest';
import { MOST_DAYS, scheduleOf } from '../../../server/core/pace/schedule.ts';
import { camp, hoursAt, piecesOf, stay } from './pieces.ts';

/** 35 km/h for 7 h: 245 km a day. */
const plain = (km: number) => piecesOf({ km, kmPerHour: 35, hoursPerDay: 7 });

describe('a drive worked by hand, 245 km a day', () => {
  test('600 km: nights at 245 and 490, the end 3 h 8 min 34 s into the third day', () => {
    const schedule = scheduleOf(plain(600), [], 7);
    expect(schedule.nights.map((night) => night.atM / 1000)).toEqual([245, 490]);
    expect(hoursAt(schedule, 245)).toBeCloseTo(7, 9);
    expect(hoursAt(schedule, 280)).toBeCloseTo(24 + 1, 9);
    expect(hoursAt(schedule, 600)).toBeCloseTo(48 + 110 / 35, 9);
    expect(schedule.drivingH).toBeCloseTo(600 / 35, 9);
    expect(schedule.days.map(({ index, toM, halt }) => [index, toM, halt.kind])).toEqual([
      [0, 245_000, 'pace'],
      [1, 490_000, 'pace'],
      [2, 600_000, 'end'],
    ]);
  });

  test('a day that ends at the end of the route needs no night there', () => {
    const schedule = scheduleOf(plain(490), [], 7);
    expect(schedule.nights).toHaveLength(1);
    expect(schedule.days).toHaveLength(2);
    expect(hoursAt(schedule, 490)).toBeCloseTo(31, 9);
  });

  test('a day that ends within noise of a stay ends at it, and its hours are told', () => {
    // As much over a day's driving as is taken for noise; behind it a stay, with nothing to drive in between.
    const dayShare = 1 + 1e-5;
    const [after] = plain(100);
    const pieces = [
      { fromM: 0, toM: 245_000, hours: 7 * dayShare, dayShare },
      { fromM: 245_000, toM: 345_000, hours: after?.hours ?? 0, dayShare: after?.dayShare ?? 0 },
    ];
    const schedule = scheduleOf(pieces, [stay(245, 0.1)], 7);
    expect(hoursAt(schedule, 245)).toBeCloseTo(7, 3);
    expect(hoursAt(schedule, 345)).toBeCloseTo(24 + 100 / 35, 3);
    expect(Math.max(...schedule.usedShare.sum)).toBe(1);
  });

  test('all days of a short drive are told one by one', () => {
    expect(scheduleOf(plain(490), [], 7).allListed).toBe(true);
  });

  test('a camp ends the day where it is, and the next begins in the morning', () => {
    const schedule = scheduleOf(plain(400), [camp(100)], 7);
    expect(hoursAt(schedule, 100)).toBeCloseTo(100 / 35, 9);
    expect(hoursAt(schedule, 135)).toBeCloseTo(25, 9);
    expect(schedule.nights.map(({ atM, from }) => [atM / 1000, from])).toEqual([
      [100, 'camp'],
      [345, 'pace'],
    ]);
    expect(hoursAt(schedule, 400)).toBeCloseTo(48 + 55 / 35, 9);
  });

  test('a camp where the hours end takes one night, not two; two nights of camp are a day more', () => {
    expect(hoursAt(scheduleOf(plain(280), [camp(245)], 7), 280)).toBeCloseTo(25, 9);
    const twice = scheduleOf(plain(280), [camp(245, 2)], 7);
    expect(hoursAt(twice, 280)).toBeCloseTo(49, 9);
    expect(twice.nights).toHaveLength(1);
    expect(twice.days.map(({ index, hours }) => [index, Math.round(hours * 1e6) / 1e6])).toEqual([
      [0, 7],
      [1, 0],
      [2, 1],
    ]);
  });

  test('a rest day is 24 hours, and what was left of the hours is driven after it', () => {
    const schedule = scheduleOf(plain(300), [stay(100, 1)], 7);
    expect(hoursAt(schedule, 101)).toBeCloseTo(101 / 35 + 24, 9);
    expect(hoursAt(schedule, 244)).toBeCloseTo(31 - 1 / 35, 9);
    expect(schedule.nights).toHaveLength(1);
    expect(schedule.nights[0]!.atM / 1000).toBeCloseTo(245, 9);
    expect(hoursAt(schedule, 300)).toBeCloseTo(48 + 55 / 35, 9);
  });

  test('waiting of 2.4 h uses up hours of the day; 12 h use up the day', () => {
    const short = scheduleOf(plain(300), [stay(70, 0.1)], 7);
    expect(hoursAt(short, 71)).toBeCloseTo(4.4 + 1 / 35, 9);
    expect(short.nights[0]!.atM / 1000).toBeCloseTo(70 + 2.6 * 35, 6);
    const long = scheduleOf(plain(300), [stay(70, 0.5)], 7);
    expect(hoursAt(long, 105)).toBeCloseTo(25, 9);
    expect(long.nights).toEqual([]);
    expect(long.days[0]!.halt.kind).toBe('stay');
  });

  test('waiting into the next day leaves the rest of that day: 21 h from 11:00 after departure at 8:00', () => {
    const schedule = scheduleOf(plain(300), [stay(105, 21 / 24)], 7);
    expect(hoursAt(schedule, 140)).toBeCloseTo(3 + 21 + 1, 9);
    const later = scheduleOf(plain(400), [stay(105, 23 / 24)], 7);
    expect(hoursAt(later, 140)).toBeCloseTo(26 + 1, 9);
    // 2 of the 7 hours went by waiting.
    expect(later.nights[0]!.atM / 1000).toBeCloseTo(105 + 5 * 35, 6);
  });
});

test('by surface: 2 h of an 8 h day on sealed road, then three quarters of a 5 h day in sand', () => {
  const pieces = piecesOf(
    { km: 100, kmPerHour: 50, hoursPerDay: 8 },
    { km: 200, kmPerHour: 20, hoursPerDay: 5 },
  );
  const schedule = scheduleOf(pieces, [], 8);
  expect(schedule.nights.map((night) => night.atM / 1000)).toEqual([175, 275]);
  expect(hoursAt(schedule, 175)).toBeCloseTo(2 + 3.75, 9);
  expect(hoursAt(schedule, 300)).toBeCloseTo(48 + 1.25, 9);
});

test('a drive of more days than are listed says so, and takes no fewer days', () => {
  const schedule = scheduleOf(piecesOf({ km: 100_000, kmPerHour: 5, hoursPerDay: 8 }), [stay(90_000, 10)], 8);
  expect(schedule.allListed).toBe(false);
  expect(schedule.days).toHaveLength(MOST_DAYS);
  expect(schedule.drivingH).toBeCloseTo(20_000, 6);
  expect(hoursAt(schedule, 100_000)).toBeCloseTo((2500 + 10) * 24, 3);
});
