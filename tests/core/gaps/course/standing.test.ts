import { describe, expect, it } from 'vitest';
import type { Edge } from '../../../../server/core/gaps/course/course.ts';
import { evenProfile } from '../../../../server/core/gaps/course/profile.ts';
import {
  daysOfStanding,
  hoursOfStanding,
  nightDays,
  standingDays,
  standingLPerDay,
  staysNight,
} from '../../../../server/core/gaps/course/standing.ts';
import { returnNeedL } from '../../../../server/core/gaps/need.ts';
import { reckon } from '../../../../server/core/gaps/reckon.ts';
import type { Term } from '../../../../server/core/quantity/term.ts';
import { courseOf, EXAMPLE_RIG, passingEdge } from '../../../helpers/course.ts';

/** 1.2 l/h for half an hour, 1.8 l/h for two and 0.3 l/h for two: 0.6 + 3.6 + 0.6 l in a day of standing. */
const FUEL_PER_DAY_L = 4.8;
const rigFile = {
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    perHour: { idling: 1.2, airConditioning: 1.8, heater: 0.3 },
    hours: { idlingPerDay: 0.5, airConditioningPerDay: 2, heaterPerNight: 2 },
  },
};
const fuel = courseOf({ rigFile });
const water = courseOf({ rigFile, commodity: 'water' });

const phraseOf = ({ label }: Term) => (typeof label === 'string' ? label : label.phrase);

/** Half a day of filling where a way of 100 km begins, a quarter of waiting where it ends. */
const from = { ...passingEdge(100_000), fillDays: 0.5 };
const to = { ...passingEdge(200_000), waitDays: 0.25 };

describe('standing', () => {
  it('uses of fuel what idles, cools and heats in a day, of water what a day takes', () => {
    expect(standingLPerDay(fuel)).toBeCloseTo(FUEL_PER_DAY_L, 9);
    expect(standingLPerDay(water)).toBe(18);
    expect(standingLPerDay(courseOf())).toBe(0);
  });

  it('is the filling where a way begins and the waiting where it ends, not the other way round', () => {
    expect(standingDays(from, to)).toBe(0.75);
    expect(standingDays({ ...from, waitDays: 3 }, { ...to, fillDays: 5 })).toBe(0.75);
    expect(standingDays(passingEdge(0), passingEdge(1))).toBe(0);
  });

  it('goes by the clock: hours of it are hours of a day of 24, however few are driven', () => {
    expect([0, 6, 12, 24, 30, 48].map((hours) => daysOfStanding(hours))).toEqual([0, 0.25, 0.5, 1, 1.25, 2]);
    expect(hoursOfStanding(daysOfStanding(7))).toBeCloseTo(7, 12);
  });
});

describe('a night on the way', () => {
  it('is the hours of a day that are not driven; none where no days are planned', () => {
    const clock = {
      hoursPerDay: 7,
      drivenDays: evenProfile(1_340_000, 1 / 245_000),
      usedShare: evenProfile(1_340_000, 0.2 / 100_000),
      nightL: 12,
    };
    expect(nightDays({ ...water, clock })).toBeCloseTo(17 / 24, 12);
    expect(nightDays({ ...water, clock: null })).toBe(0);
  });
});

describe('a night at a water that gives all, chosen although its filling ends before', () => {
  // 7 hours of driving a day, of which 1.4 are gone at km 100.
  const clock = {
    hoursPerDay: 7,
    drivenDays: evenProfile(1_340_000, 1 / 245_000),
    usedShare: evenProfile(1_340_000, 0.2 / 100_000),
    nightL: 12,
  };
  const chosen = (changes: Partial<Edge>) =>
    staysNight({ ...water, clock }, { ...passingEdge(100_000), givesAll: true, ...changes });

  it('is one where a day or more was chosen, the wait with it', () => {
    expect(chosen({ chosenFillDays: 1 })).toBe(true);
    expect(chosen({ waitDays: 0.1, chosenFillDays: 0.95 })).toBe(true);
  });

  it('is one where the hours of the day end in what was chosen, and not before', () => {
    // 5.6 hours are left.
    expect(chosen({ chosenFillDays: 5.7 / 24 })).toBe(true);
    expect(chosen({ chosenFillDays: 5.5 / 24 })).toBe(false);
    expect(chosen({ chosenFillDays: 0.2 })).toBe(false);
  });

  it('is none where nothing was chosen, where the day ends while filling anyway, or where it gives only some', () => {
    expect(chosen({ fillDays: 1 })).toBe(false);
    expect(chosen({ fillDays: 5.7 / 24, chosenFillDays: 1 })).toBe(false);
    expect(chosen({ givesAll: false, chosenFillDays: 1 })).toBe(false);
  });
});

describe('a way with standing at its ends', () => {
  it('needs the fuel that goes while filling and while waiting, each in its place', () => {
    const { needL, arriveL, levels, needTerms } = reckon(fuel, from, to, { departL: 100 });
    expect(needL).toBeCloseTo(17 + 0.75 * FUEL_PER_DAY_L, 9);
    expect(arriveL).toBeCloseTo(100 - 17 - 0.75 * FUEL_PER_DAY_L, 9);
    const filledL = 100 - 0.5 * FUEL_PER_DAY_L;
    const shown = levels.map(({ atM, litres }) => [atM / 1000, Number(litres.toFixed(6))]);
    expect(shown).toEqual([
      [100, 100],
      [100, Number(filledL.toFixed(6))],
      [200, Number((filledL - 17).toFixed(6))],
      [200, Number((filledL - 17 - 0.25 * FUEL_PER_DAY_L).toFixed(6))],
    ]);
    const standing = needTerms.find((term) => phraseOf(term) === 'filling-and-waiting');
    expect(standing).toMatchObject({ unit: 'l' });
    expect(standing?.value).toBeCloseTo(0.75 * FUEL_PER_DAY_L, 9);
  });

  it('tells no filling and waiting where there is none', () => {
    const { needTerms, levels } = reckon(fuel, passingEdge(100_000), passingEdge(200_000), { departL: 100 });
    expect(needTerms.map(phraseOf)).toEqual(['along-the-route-at']);
    expect(levels).toHaveLength(2);
  });

  it('needs water for the time that passes, what goes while filling gone at once', () => {
    // 100 km of 245 a day and three quarters of a day, at 18 l a day.
    const { way, needL, levels } = reckon(water, from, to, { departL: 70 });
    expect(way.days).toBeCloseTo(100 / 245 + 0.75, 9);
    expect(way.standingDays).toBe(0.75);
    expect(needL).toBeCloseTo(18 * (100 / 245 + 0.75), 9);
    expect(levels[0]).toEqual({ atM: 100_000, litres: 70 });
    expect(levels[1]?.atM).toBe(100_000);
    expect(levels[1]?.litres).toBeCloseTo(70 - 0.5 * 18, 9);
    expect(levels[2]?.litres).toBeCloseTo(70 - (0.5 + 100 / 245) * 18, 9);
    expect(levels[3]?.atM).toBe(200_000);
    expect(levels[3]?.litres).toBeCloseTo(70 - (0.75 + 100 / 245) * 18, 9);
  });

  it('driven and come back over stands once, and goes all detours twice', () => {
    const off = (edge: typeof from | typeof to, detourM: number) => ({ ...edge, detourM });
    // 2 × 100 km, 2 × 5 km of detours, 0.75 days.
    expect(returnNeedL(fuel, off(from, 2_000), off(to, 3_000))).toBeCloseTo(
      0.17 * 210 + 0.75 * FUEL_PER_DAY_L,
      9,
    );
    // 200 km of 245 a day and 0.75 days, at 18 l a day.
    expect(returnNeedL(water, from, to)).toBeCloseTo(18 * (200 / 245 + 0.75), 9);
  });
});
