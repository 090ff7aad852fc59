import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Crew, Heat, Pet } from '../../../server/contract/crew.ts';
import { weatherOf } from '../../../server/core/crew/needs/heat.ts';
import {
  CATEGORY_FROM_C,
  MOST_PER_DAY_L,
  MOST_PER_HOUR_L,
} from '../../../server/core/crew/needs/heat-table.ts';
import {
  daysWithoutWater,
  RESTING_DAYS,
  SURVIVAL_QUARTS,
  WALKING_DAYS,
} from '../../../server/core/crew/needs/survival.ts';
import { wbgtOf } from '../../../server/core/crew/needs/wbgt.ts';
import { analysisOf, equatorDocument } from '../../helpers/analyse-input.ts';
import { crewUseOf, litresOf, onePerson, rigOf } from './crews.ts';

const QUART_L = 0.946353;
const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;
const heatOf = (wbgtC: number, rest: Partial<Heat> = {}): Heat => ({
  wbgtC,
  sun: 'some',
  work: 'moderate',
  workHoursPerDay: 0,
  ...rest,
});

describe('levels of use', () => {
  const basic = crewUseOf(onePerson({ level: 'basic' }));

  test('basic: drinking 2.5 to 3 l a person and day (Sphere Handbook; W1)', () => {
    expect(litresOf(basic, 'drinking')).toMatchObject({ low: 2.5, high: 3 });
  });

  test('basic: hygiene 2 to 6 l, teeth and hands among them (Sphere Handbook; W2)', () => {
    const hands = litresOf(basic, 'teeth-and-hands');
    const washing = litresOf(basic, 'washing');
    expect(hands.low + washing.low).toBe(2);
    expect(hands.high + washing.high).toBe(6);
  });

  test('basic: cooking 3 to 6 l (Sphere Handbook; W3)', () => {
    expect(litresOf(basic, 'cooking')).toMatchObject({ low: 3, high: 6 });
  });

  test('basic: 7.5 to 15 l in all, as do the parts 2.5 + 2 + 3 and 3 + 6 + 6 (Sphere Handbook; W4)', () => {
    expect(basic.total).toMatchObject({ low: 7.5, high: 15 });
  });

  test('emergency: a US gallon, 3.8 l, of which 3/4 is fluid (US FEMA, Ready.gov; W17)', () => {
    const use = crewUseOf(onePerson({ level: 'emergency' }));
    expect(use.total.typical).toBeCloseTo(3.785, 3);
    expect(litresOf(use, 'drinking').typical).toBeCloseTo(0.75 * 3.785, 2);
  });

  test('in very hot weather the needs of drinking double (US FEMA, Ready.gov; W17)', () => {
    const mild = litresOf(crewUseOf(onePerson({ level: 'emergency' })), 'drinking').typical;
    const hot = litresOf(
      crewUseOf(onePerson({ level: 'emergency' }, { heat: heatOf(celsius(90)) })),
      'drinking',
    );
    expect(hot.typical).toBeCloseTo(2 * mild, 9);
  });

  test('plenty: 20 l a person and day, drinking 2.5 to 3 (WHO/WEDC technical note 9; W18)', () => {
    const use = crewUseOf(onePerson({ level: 'plenty' }));
    expect(use.total.typical).toBeCloseTo(20, 9);
    expect(litresOf(use, 'drinking')).toMatchObject({ low: 2.5, high: 3 });
  });

  test('two people without shower use 10 to 15 l a day, so seven days need at least 90 l (common practice, no source)', () => {
    const crew: Crew = { people: [{}, {}] };
    const { total } = crewUseOf(crew);
    expect(total.low).toBeCloseTo(10, 9);
    expect(total.high).toBeCloseTo(15, 9);
    expect(7 * total.typical).toBeGreaterThanOrEqual(90);
    // Seven days of 245 km at the slow pace with their nights, and a kilometre, through a whole analysis.
    const { water } = analysisOf({
      document: equatorDocument(7 * 245 + 1),
      rig: rigOf(crew),
      trip: { aboard: { waterDaysSinceFill: 0 }, onward: { km: 0 }, allowancePercent: 0 },
    });
    expect(water.gaps[0]!.days).toBeCloseTo(7 + 1 / 35 / 24, 6);
    expect(water.gaps[0]!.needL).toBeGreaterThanOrEqual(90);
    expect(water.gaps[0]!.needL).toBeLessThanOrEqual(8 * 15);
  });

  test('and a dog is still within 10 to 15 l at typical use (common practice, no source)', () => {
    const { typical } = crewUseOf({ people: [{}, {}], pets: [{ kind: 'dog', kg: 20 }] }).total;
    expect(typical).toBeGreaterThanOrEqual(10);
    expect(typical).toBeLessThanOrEqual(15);
  });
});

describe('heat and work', () => {
  const workHour = (wbgtF: number, work: Heat['work'], sun: Heat['sun'] = 'some') => {
    const { heat } = crewUseOf(
      onePerson({}, { heat: { ...heatOf(celsius(wbgtF)), work: work!, sun: sun! } }),
    );
    return heat!;
  };

  // US quarts an hour; minutes of work, null for no limit. US Army TB MED 507 (Montain et al., 1999).
  const ROWS = [
    { from: 78, to: 81.9, quarts: [0.5, 0.75, 0.75], minutes: [null, null, 40] },
    { from: 82, to: 84.9, quarts: [0.5, 0.75, 1], minutes: [null, 50, 30] },
    { from: 85, to: 87.9, quarts: [0.75, 0.75, 1], minutes: [null, 40, 30] },
    { from: 88, to: 89.9, quarts: [0.75, 0.75, 1], minutes: [null, 30, 20] },
    { from: 90, to: 100, quarts: [1, 1, 1], minutes: [50, 20, 10] },
  ] as const;
  const WORK = ['easy', 'moderate', 'hard'] as const;

  test.each(ROWS)('intake for each hour of work at $from to $to °F of WBGT (TB MED 507; W9)', (row) => {
    for (const [index, work] of WORK.entries()) {
      for (const wbgtF of [row.from, row.to]) {
        const { typical, low, high } = workHour(wbgtF, work).litresPerWorkHour;
        expect(typical).toBeCloseTo(row.quarts[index]! * QUART_L, 5);
        // Individual needs vary by a quarter of a quart.
        expect(high - typical).toBeCloseTo(QUART_L / 4, 5);
        expect(typical - low).toBeCloseTo(QUART_L / 4, 5);
      }
    }
  });

  test('full sun takes a quarter of a quart more, shade as much less at the low end (TB MED 507; W9)', () => {
    const sun = workHour(85, 'hard', 'full').litresPerWorkHour;
    const some = workHour(85, 'hard').litresPerWorkHour;
    const shade = workHour(85, 'hard', 'shade').litresPerWorkHour;
    expect(sun.typical - some.typical).toBeCloseTo(QUART_L / 4, 5);
    expect(some.low - shade.low).toBeCloseTo(QUART_L / 4, 5);
    expect(shade.high).toBe(some.high);
  });

  test.each(ROWS)('minutes of work and rest at $from °F of WBGT (TB MED 507; W10)', (row) => {
    for (const [index, work] of WORK.entries()) {
      const minutes = row.minutes[index]!;
      const expected = minutes === null ? null : { workMinutes: minutes, restMinutes: 60 - minutes };
      expect(workHour(row.from, work).workRest).toEqual(expected);
    }
  });

  test('the categories begin at 25.6, 27.8, 29.4, 31.1 and 32.2 °C (arithmetic on W9; W11a)', () => {
    expect(CATEGORY_FROM_C.map((fromC) => Math.round(fromC * 10) / 10)).toEqual([
      25.6, 27.8, 29.4, 31.1, 32.2,
    ]);
    expect(
      [25.5, 25.6, 27.7, 27.8, 32.3].map((wbgtC) => workHour((wbgtC * 9) / 5 + 32, 'easy').category),
    ).toEqual([0, 1, 1, 2, 5]);
  });

  test('the most a body takes in is 1.42 l an hour and 11.36 l a day (TB MED 507; W11)', () => {
    expect(MOST_PER_HOUR_L).toBeCloseTo(1.42, 2);
    expect(MOST_PER_DAY_L).toBeCloseTo(11.36, 2);
  });

  test('above those limits there are cautions, and 12 l a day and person are carried at the most (W11)', () => {
    const heat = heatOf(34, { sun: 'full', work: 'hard', workHoursPerDay: 10 });
    const crew = onePerson({}, { heat });
    const { waterUse, cautions } = analysisOf({ rig: rigOf(crew) });
    const use = crewUseOf(crew);
    expect(use.uses.find((row) => row.use === 'drinking')?.litresPerDay.high).toBe(12);
    expect(use.drinkingOfOne.high).toBeGreaterThan(MOST_PER_DAY_L * 1.5);
    expect(use.heatTerms.reduce((sum, { value }) => sum + value, 0)).toBeCloseTo(12, 9);
    const told = crewUseOf(onePerson({ drinking: { low: 10, typical: 13, high: 15 } }, { heat }));
    expect(told.uses.find((row) => row.use === 'drinking')?.litresPerDay).toEqual({
      low: 12,
      typical: 13,
      high: 15,
    });
    expect(waterUse.cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['intake-day-limit', 'intake-hour-limit', 'work-rest']),
    );
    expect(cautions).toEqual(expect.arrayContaining(waterUse.cautions));
    const mild = analysisOf({ rig: rigOf(onePerson({}, { heat: heatOf(20) })) }).waterUse;
    expect(mild.cautions.map(({ code }) => code)).not.toContain('intake-day-limit');
  });

  test('heavy work in sun at 43 °C takes 19 l a day (US Army FM 21-76, ch. 13; W15)', () => {
    const heat: Heat = {
      temperatureC: 43,
      humidityPercent: 15,
      sun: 'full',
      work: 'hard',
      workHoursPerDay: 8,
    };
    const use = crewUseOf(onePerson({}, { heat }));
    expect(use.drinkingOfOne.low).toBeLessThan(19);
    expect(use.drinkingOfOne.high).toBeGreaterThanOrEqual(19);
    // No body takes that in: 12 l to drink are carried.
    expect(use.uses.find((row) => row.use === 'drinking')?.litresPerDay.high).toBe(12);
    expect(use.drinkingOfOne.high).toBeLessThan(1.25 * 19);
  });

  test('9 US quarts a day in shade, 11 to 12 active in the hot season lie within the range (US Army FM 90-3, from memory; W16)', () => {
    const atRest = litresOf(crewUseOf(onePerson({}, { heat: heatOf(33, { sun: 'shade' }) })), 'drinking');
    expect(atRest.low).toBeLessThan(9 * QUART_L);
    expect(atRest.high).toBeGreaterThanOrEqual(9 * QUART_L);
    const heat = heatOf(33, { workHoursPerDay: 4 });
    const active = litresOf(crewUseOf(onePerson({}, { heat })), 'drinking');
    expect(active.typical).toBeGreaterThanOrEqual(11 * QUART_L);
    expect(active.typical).toBeLessThanOrEqual(13 * QUART_L);
  });

  test('WBGT estimated from air, sun and wind brings its category', () => {
    const heat: Heat = { temperatureC: 35, humidityPercent: 50 };
    expect(crewUseOf(onePerson({}, { heat })).heat).toMatchObject({
      category: 5,
      from: 'estimate',
      windKmPerHour: 3.6,
    });
    const shade: Heat = { temperatureC: 33, humidityPercent: 20, sun: 'shade' };
    expect(crewUseOf(onePerson({}, { heat: shade })).heat).toMatchObject({ category: 0 });
  });
});

describe('WBGT', () => {
  // Liljegren's own program in C (Argonne National Laboratory, version 1.1), as run for the tests of ECMWF's thermofeel
  // (tests/test_thermofeel.py, test_wbgt_liljegren); its answers are in kelvins. Wind is told there at 10 m and brought to
  // 2 m by Liljegren's classes of stability, × 0.2 to the power of 0.15, 0.20 or 0.25: done here by hand. Its own tolerance
  // is 0.02 degrees.
  test.each([
    {
      airC: 35,
      humidity: 40,
      hPa: 1013,
      wind: 0.785515,
      sun: 800,
      direct: 0.7,
      cos: 0.9,
      kelvin: 306.559802,
    },
    {
      airC: 30,
      humidity: 70,
      hPa: 1010,
      wind: 2.174345,
      sun: 500,
      direct: 0.5,
      cos: 0.7,
      kelvin: 302.954374,
    },
    { airC: 20, humidity: 60, hPa: 1015, wind: 3.3437, sun: 200, direct: 0.3, cos: 0.5, kelvin: 290.82388 },
    { airC: 25, humidity: 85, hPa: 1008, wind: 1.33748, sun: 0, direct: 0, cos: 0.05, kelvin: 296.597705 },
    {
      airC: 33,
      humidity: 50,
      hPa: 1013,
      wind: 0.487019,
      sun: 700,
      direct: 0.6,
      cos: 0.8,
      kelvin: 307.358482,
    },
    {
      airC: 32,
      humidity: 35,
      hPa: 1012,
      wind: 1.963788,
      sun: 900,
      direct: 0.9,
      cos: 0.95,
      kelvin: 301.229074,
    },
  ])('at $airC °C, $humidity % and $sun W/m² is that of Liljegren’s program', (row) => {
    const { wbgtC } = wbgtOf({
      temperatureC: row.airC,
      humidityPercent: row.humidity,
      pressureHPa: row.hPa,
      windMPerS: row.wind,
      solarWPerM2: row.sun,
      directShare: row.direct,
      cosZenith: row.cos,
    });
    expect(Math.abs(wbgtC + 273.15 - row.kelvin)).toBeLessThan(0.02);
  });

  // 0.567 T + 0.393 e + 3.94, meant for moderately strong sun and light wind: Australian Bureau of Meteorology, thermal
  // comfort, as quoted by the R package varunayan (wbgt_simple, after the American College of Sports Medicine, 1984).
  const byTheBureau = (temperatureC: number, humidityPercent: number) =>
    0.567 * temperatureC +
    0.393 * (humidityPercent / 100) * 6.105 * Math.exp((17.27 * temperatureC) / (237.7 + temperatureC)) +
    3.94;

  test.each([
    [33, 20],
    [36, 25],
    [38, 15],
    [42, 12],
    [45, 8],
    [35, 50],
    [28, 80],
  ])(
    'at %s °C and %s %% in full sun is within 2.5 °C of the formula for moderate sun, and not below it',
    (t, h) => {
      const { wbgtC } = wbgtOf(weatherOf({ temperatureC: t, humidityPercent: h, sun: 'full' }));
      expect(wbgtC).toBeGreaterThan(byTheBureau(t, h));
      expect(wbgtC).toBeLessThan(byTheBureau(t, h) + 2.5);
    },
  );

  test('without sun in air full of vapour is the temperature of the air, whatever the wind', () => {
    for (const windMPerS of [0.5, 5]) {
      const still = { temperatureC: 30, humidityPercent: 100, pressureHPa: 1013, windMPerS };
      const { naturalWetBulbC } = wbgtOf({ ...still, solarWPerM2: 0, directShare: 0, cosZenith: 1 });
      expect(Math.abs(naturalWetBulbC - 30)).toBeLessThan(0.5);
    }
  });

  test('never falls when it is hotter, damper or sunnier', () => {
    const weather = fc.record({
      temperatureC: fc.integer({ min: 10, max: 50 }),
      humidityPercent: fc.integer({ min: 5, max: 95 }),
      windKmPerHour: fc.integer({ min: 0, max: 40 }),
    });
    fc.assert(
      fc.property(weather, (heat) => {
        const { temperatureC, humidityPercent } = heat;
        const of = (rest: Partial<Heat>) => wbgtOf(weatherOf({ ...heat, ...rest })).wbgtC;
        expect(of({ temperatureC: temperatureC + 2 })).toBeGreaterThan(of({}));
        expect(of({ humidityPercent: humidityPercent + 5 })).toBeGreaterThan(of({}));
        expect(of({ sun: 'full' })).toBeGreaterThan(of({ sun: 'some' }));
        expect(of({ sun: 'some' })).toBeGreaterThan(of({ sun: 'shade' }));
      }),
    );
  });
});

describe('survival tables order, and set no ration', () => {
  test('the resting grid is that of Adolph, 1947 (110 °F row seen, the rest from memory; W12)', () => {
    expect(SURVIVAL_QUARTS).toEqual([0, 1, 2, 4, 10, 20]);
    expect(RESTING_DAYS.find((row) => row.shadeF === 110)!.days).toEqual([3, 3, 3.5, 4, 5, 7]);
    expect(RESTING_DAYS.map((row) => row.days.length)).toEqual(Array(8).fill(6));
  });

  test('walking by night is never longer than resting (W12, W13)', () => {
    for (const walking of WALKING_DAYS) {
      const resting = RESTING_DAYS.find((row) => row.shadeF === walking.shadeF)!;
      for (const [index, days] of walking.days.entries()) {
        expect(days).toBeLessThanOrEqual(resting.days[index]!);
      }
    }
    expect(WALKING_DAYS.find((row) => row.shadeF === 100)!.days).toEqual([3, 3.5, 3.5, 4.5, 5.5]);
  });

  test('days never fall when water rises and never rise with heat; at 120 °F the first two quarts buy nothing (W14)', () => {
    for (const grid of [RESTING_DAYS, WALKING_DAYS]) {
      for (const [index, { days }] of grid.entries()) {
        expect([...days].sort((a, b) => a - b)).toEqual(days);
        const cooler = grid[index + 1];
        for (const [column, more] of (cooler?.days ?? []).entries()) {
          expect(more).toBeGreaterThanOrEqual(days[column]!);
        }
      }
    }
    expect(RESTING_DAYS[0]!.days.slice(0, 3)).toEqual([2, 2, 2]);
  });

  test('the caution tells the row as hot or hotter', () => {
    expect(daysWithoutWater(celsius(110))).toEqual({ resting: 3, walking: 2 });
    expect(daysWithoutWater(celsius(110) + 0.1)).toEqual({ resting: 2, walking: 1 });
    expect(daysWithoutWater(55)).toEqual({ resting: 2, walking: 1 });
    const heat: Heat = { temperatureC: 43, humidityPercent: 15 };
    const { waterUse } = analysisOf({ rig: rigOf(onePerson({}, { heat })) });
    expect(waterUse.cautions.find(({ code }) => code === 'survival-days')!.text).toContain('about 3 days');
  });
});

describe('pets', () => {
  const petOf = (kg: number, kind: Pet['kind'] = 'dog') =>
    litresOf(crewUseOf({ people: [{}], pets: [{ kind, kg }] }), 'pets');

  test.each([10, 20, 30])('a dog of %d kg takes 44 to 66 ml a kg (Merck Veterinary Manual; W19)', (kg) => {
    expect(petOf(kg).low).toBeCloseTo(0.044 * kg, 9);
    expect(petOf(kg).high).toBeCloseTo(0.066 * kg, 9);
  });

  test.each([
    [10, 0.63],
    [20, 1.059],
    [30, 1.436],
    [10.884, 0.671],
  ])('a dog of %d kg takes %d l by 1.6 × 70 × kg^0.75 ml (NRC 2006; W20)', (kg, litres) => {
    expect(petOf(kg).typical).toBeCloseTo(litres, 3);
  });

  test('bounds hold both rules, whatever the mass', () => {
    for (const kg of [1, 3, 10, 60, 90]) {
      const { low, typical, high } = petOf(kg);
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
    }
    expect(petOf(4, 'cat')).toEqual(petOf(4));
  });

  test('a pet drinks more in heat, and your own figure wins over its mass', () => {
    const heat = heatOf(celsius(90));
    const hot = litresOf(crewUseOf({ people: [{}], pets: [{ kind: 'dog', kg: 20 }], heat }), 'pets');
    expect(hot.high).toBeCloseTo(2 * petOf(20).high, 9);
    const own = crewUseOf({ people: [{}], pets: [{ kind: 'dog', kg: 20, litresPerDay: 2 }] });
    expect(litresOf(own, 'pets')).toEqual({ low: 2 / 1.5, typical: 2, high: 3 });
  });
});
