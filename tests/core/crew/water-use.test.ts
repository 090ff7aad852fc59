import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import { Analysis } from '../../../server/contract/analysis.ts';
import type { Crew } from '../../../server/contract/crew.ts';
import { WaterUse } from '../../../server/contract/crew.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import { analysisOf, equatorDocument, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';
import { rigOf } from './crews.ts';

/** 8 l of drinking grade and 4 l of washing grade a day, whatever the end of the range. */
const fixed = (litres: number) => ({ low: litres, typical: litres, high: litres });
const TWELVE: Crew = {
  people: [
    { drinking: fixed(4), cooking: fixed(2), washingUp: fixed(1), washing: fixed(3), shower: fixed(2) },
  ],
};
const TANKS = [
  { name: 'floor', litres: 40 },
  { name: 'roof', litres: 30, grade: 'washing' as const },
];
/** Driven by turns round the clock, 245 km a day: days of driving are days that pass, and water goes evenly. */
const ROUND_THE_CLOCK: RigFile['pace'] = {
  hoursPerDay: 24,
  kmPerHour: { slow: 245 / 24, typical: 245 / 24, fast: 245 / 24 },
};
const FULL: TripFile = { aboard: { waterDaysSinceFill: 0 }, onward: { km: 0 }, allowancePercent: 0 };

const analysed = (
  rig: RigFile,
  trip: TripFile = FULL,
  lengthKm = 980,
  features: ReturnType<typeof pointFeature>[] = [],
) =>
  analysisOf({
    document: equatorDocument(lengthKm),
    rig: { ...rig, pace: ROUND_THE_CLOCK },
    trip,
    features,
  });
const codes = (use: WaterUse) => use.cautions.map(({ code }) => code);

describe('grades of use', () => {
  const { waterUse, water } = analysed(rigOf(TWELVE, { tanks: TANKS }));

  test('drinking, cooking, dishes, teeth and hands are drinking grade; the rest of washing and showers are not', () => {
    const rows = waterUse.uses.map(({ use, grade, litresPerDay }) => [use, grade, litresPerDay.high]);
    expect(rows).toEqual([
      ['drinking', 'drinking', 4],
      ['cooking', 'drinking', 2],
      ['washing-up', 'drinking', 1],
      ['teeth-and-hands', 'drinking', 1],
      ['washing', 'washing', 2],
      ['shower', 'washing', 2],
    ]);
    expect(waterUse.litresPerDay).toEqual(fixed(12));
    expect(waterUse.grades!.drinking.litresPerDay).toEqual(fixed(8));
    expect(waterUse.grades!.washing.litresPerDay).toEqual(fixed(4));
  });

  test('its terms add up to the rate of the verdict', () => {
    expect(waterUse.working.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(12, 9);
    const heat = { wbgtC: 33, sun: 'full', work: 'hard', workHoursPerDay: 5 } as const;
    const hot = analysed(rigOf({ ...TWELVE, heat, lossPercent: 10, vehicleLitresPerDay: 1 })).waterUse;
    expect(hot.working.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(hot.litresPerDay.high, 9);
  });

  test('the working of a rig without a crew is its own figure', () => {
    const { working } = analysed(EXAMPLE_RIG).waterUse;
    expect(working.map(({ value, unit }) => [value, unit])).toEqual([[18, 'l a day']]);
  });

  test('endurance: each grade draws its own water first, then what serves both', () => {
    // Drinking has the 40 l of the floor tank alone: 5 days. Washing has the 30 l of the roof: 7.5 days.
    expect(waterUse.grades!.drinking).toMatchObject({ aboardL: 40, enduranceDays: fixed(5) });
    expect(waterUse.grades!.washing.enduranceDays).toEqual(fixed(7.5));
    expect(waterUse.enduranceDays.high).toBeCloseTo(70 / 12, 9);
  });

  test('endurance: what serves both goes to whoever has used up its own', () => {
    const tanks = [
      { name: 'both', litres: 60 },
      { name: 'roof', litres: 4, grade: 'washing' as const },
    ];
    const { grades } = analysed(rigOf(TWELVE, { tanks })).waterUse;
    expect(grades!.drinking.aboardL).toBe(60);
    expect(grades!.washing.aboardL).toBe(64);
    expect(grades!.drinking.enduranceDays!.high).toBeCloseTo(64 / 12, 9);
    expect(grades!.washing.enduranceDays!.high).toBeCloseTo(64 / 12, 9);
  });

  test('a grade that is not used has no endurance', () => {
    const dry: Crew = { people: [{ washing: 0, shower: 0 }] };
    expect(analysed(rigOf(dry)).waterUse.grades!.washing.enduranceDays).toBeNull();
  });

  test('a gap that holds with all water but not with what is fit to drink takes the worse verdict', () => {
    // 980 km are 4 days: 48 l of 70, but 32 l of the 40 fit to drink, and 16 l of reserve.
    const [gap] = water.gaps;
    const litres = (figure: number) => expect.closeTo(figure, 9);
    expect(gap).toMatchObject({
      needL: litres(48),
      reserveL: 16,
      arriveL: litres(22),
      marginL: litres(6),
      verdict: 'into-reserve',
    });
    expect(gap!.grades).toEqual({
      drinking: {
        needL: litres(32),
        reserveL: 16,
        arriveL: litres(8),
        marginL: litres(-8),
        verdict: 'into-reserve',
      },
      washing: {
        needL: litres(16),
        reserveL: 0,
        arriveL: litres(14),
        marginL: litres(14),
        verdict: 'enough',
      },
      washingTakenL: 0,
    });
    expect(gap).toMatchObject({ extraL: litres(8), extraCans: 1 });
    // 24 l of drinking grade may go: three days.
    expect(gap!.reserveFromKm).toBeCloseTo(735, 6);
    expect(gap!.turnBackKm).toBeCloseTo(735 / 2, 6);
    expect(gap!.runsDryKm).toBeNull();
  });

  test('the sentences say which water it is', () => {
    const { answer } = analysed(rigOf(TWELVE, { tanks: TANKS }));
    expect(JSON.stringify(answer.water)).toContain('of drinking water');
  });

  test('a gap too long for the drinking water runs dry though the washing tank is not empty', () => {
    const [gap] = analysed(rigOf(TWELVE, { tanks: TANKS }), FULL, 1340).water.gaps;
    expect(gap).toMatchObject({ needL: expect.closeTo((12 * 1340) / 245, 9), verdict: 'short' });
    expect(gap!.grades!.drinking.verdict).toBe('short');
    // 40 l at 8 l a day: five days of 245 km.
    expect(gap!.runsDryKm).toBeCloseTo(1225, 6);
  });

  test('a tank kept for drinking cannot serve washing', () => {
    const tanks = [
      { name: 'floor', litres: 70, grade: 'drinking' as const },
      { name: 'roof', litres: 4, grade: 'washing' as const },
    ];
    const [gap] = analysed(rigOf(TWELVE, { tanks })).water.gaps;
    expect(gap!.grades!.washing).toMatchObject({ arriveL: expect.closeTo(-12, 9), verdict: 'short' });
    expect(gap!.grades!.drinking).toMatchObject({ arriveL: expect.closeTo(38, 9), verdict: 'enough' });
  });

  test('what is not full at the start is taken from drinking water, and that is said', () => {
    const trip = { ...FULL, aboard: { waterLitres: 50 } };
    const { waterUse: less, water: report } = analysed(rigOf(TWELVE, { tanks: TANKS }), trip);
    expect(less.grades!.drinking.aboardL).toBe(20);
    expect(report.gaps[0]!.grades!.drinking.arriveL).toBeCloseTo(-12, 9);
    expect(codes(less)).toContain('start-grades-assumed');
    expect(codes(waterUse)).not.toContain('start-grades-assumed');
  });
});

describe('a rig that tells litres a day alone', () => {
  const { waterUse, water } = analysed(EXAMPLE_RIG);

  test('has one kind of water, and no cautions of a crew', () => {
    expect(waterUse).toMatchObject({ from: 'rate', uses: [], grades: null, heat: null, cautions: [] });
    expect(waterUse.litresPerDay).toEqual({ low: 11, typical: 14, high: 18 });
    expect(waterUse.enduranceDays.typical).toBe(5);
    expect(water.gaps.map(({ grades }) => grades)).toEqual([null]);
  });

  test('keeps the reserve until help is there, where the hours are told', () => {
    const { water: report, waterUse: use } = analysed(EXAMPLE_RIG, {
      ...FULL,
      alarmHours: 48,
      helpHours: 24,
    });
    expect(report.gaps[0]!.reserveL).toBeCloseTo(3 * 18, 9);
    expect(use.reserve).toMatchObject({ hoursToHelp: 72, days: 3 });
    expect(report.gaps[0]!.working.reserveL[0]!.label).toContain('48 h until the alarm and 24 h until help');
  });
});

describe('your own figure', () => {
  test('litres a day beside a crew win, and that is said', () => {
    const { waterUse, assumptions } = analysed(
      rigOf(TWELVE, { litresPerDay: { low: 5, typical: 6, high: 18 } }),
    );
    expect(waterUse).toMatchObject({ from: 'observed', litresPerDay: { low: 5, typical: 6, high: 18 } });
    const said = assumptions.find(({ path }) => path === '/rig/crew/observedLitresPerDay');
    expect(said!.why).toContain('your own figure wins');
    // Above the sum all parts rise alike; below it washing gives way first, drinking last.
    expect(waterUse.grades!.drinking.litresPerDay).toMatchObject({ low: 5, typical: 6, high: 12 });
    expect(waterUse.grades!.washing.litresPerDay).toMatchObject({ low: 0, typical: 0, high: 6 });
  });

  test('one below what the heat asks for is taken, with a caution', () => {
    const heat = { wbgtC: 34, work: 'hard', sun: 'full', workHoursPerDay: 6 } as const;
    const { waterUse } = analysed(rigOf({ ...TWELVE, heat, observedLitresPerDay: 8 }));
    expect(waterUse.litresPerDay.high).toBe(12);
    expect(codes(waterUse)).toContain('observed-below-need');
    const ample = analysed(rigOf({ ...TWELVE, observedLitresPerDay: 12 })).waterUse;
    expect(codes(ample)).not.toContain('observed-below-need');
  });
});

describe('what is drawn and not drunk', () => {
  test('losses are a share of what is drawn; the vehicle’s water is washing grade', () => {
    const crew = { ...TWELVE, lossPercent: 20, vehicleLitresPerDay: 2 };
    const { waterUse } = analysed(rigOf(crew));
    expect(waterUse.grades!.drinking.litresPerDay.high).toBeCloseTo(8 / 0.8, 9);
    expect(waterUse.grades!.washing.litresPerDay.high).toBeCloseTo(6 / 0.8, 9);
  });

  test('washing at the source is not carried, teeth and hands are', () => {
    const { waterUse } = analysed(rigOf({ ...TWELVE, washingAtSource: true }));
    expect(waterUse.litresPerDay).toEqual(fixed(8));
    expect(waterUse.notCarriedLitresPerDay).toEqual(fixed(4));
    expect(codes(waterUse)).toContain('washing-at-source');
  });
});

describe('the reserve', () => {
  const reserveOf = (water: Partial<RigFile['water']>, trip: TripFile = FULL) =>
    analysed(rigOf(TWELVE, water), trip).waterUse;
  const cans = { litres: 10, owned: 3 };

  test('is of drinking grade, and lasts until help is there', () => {
    expect(reserveOf({}).reserve).toMatchObject({ litres: 16, days: 2, hoursToHelp: null });
    const trip = { ...FULL, alarmHours: 24, helpHours: 36 };
    expect(reserveOf({}, trip).reserve).toMatchObject({ litres: 20, days: 2.5, hoursToHelp: 60 });
    expect(reserveOf({ reserve: { litres: 60 } }, trip).reserve).toMatchObject({ litres: 60, days: 7.5 });
  });

  test('hours that were not told are asked for', () => {
    expect(codes(reserveOf({}))).toContain('help-hours-unknown');
    expect(codes(reserveOf({}, { ...FULL, alarmHours: 10 }))).toContain('help-hours-unknown');
    expect(codes(reserveOf({}, { ...FULL, alarmHours: 10, helpHours: 0 }))).not.toContain(
      'help-hours-unknown',
    );
  });

  test.each<[string, Partial<RigFile['water']>, number]>([
    [
      'one tank and no can: nothing is left',
      { tanks: [{ name: 'floor', litres: 70 }], cans: { litres: 10, owned: 0 } },
      0,
    ],
    [
      'tanks hang on one tap',
      {
        tanks: [
          { name: 'a', litres: 70 },
          { name: 'b', litres: 50 },
        ],
        cans,
      },
      30,
    ],
    [
      'unless one is apart',
      {
        tanks: [
          { name: 'a', litres: 70 },
          { name: 'b', litres: 50, apart: true },
        ],
        cans,
      },
      80,
    ],
    [
      'the largest of those apart is lost',
      {
        tanks: [
          { name: 'a', litres: 20 },
          { name: 'b', litres: 50, apart: true },
        ],
        cans,
      },
      50,
    ],
    [
      'what is kept for washing counts nothing',
      {
        tanks: [
          { name: 'a', litres: 70 },
          { name: 'b', litres: 50, apart: true, grade: 'washing' },
        ],
        cans: { ...cans, grade: 'washing' },
      },
      0,
    ],
  ])('what no single leak, pump or tap can empty: %s', (_, water, safeL) => {
    const use = reserveOf(water);
    expect(use.reserve).toMatchObject({ safeL, holds: safeL >= 16 });
    expect(codes(use).includes('reserve-in-one-place')).toBe(safeL < 16);
  });
});

describe('washing sources', () => {
  const SPRING = pointFeature('node/7', 490, { natural: 'spring' });
  const trip: TripFile = { ...FULL, washingSources: ['node/7'] };
  const tanks = [
    { name: 'floor', litres: 60 },
    { name: 'roof', litres: 10, grade: 'washing' as const },
  ];

  test('fill what is kept for washing, and nothing else', () => {
    const bare = analysed(rigOf(TWELVE, { tanks }), FULL, 980, [SPRING]).water.gaps;
    const marked = analysed(rigOf(TWELVE, { tanks }), trip, 980, [SPRING]).water.gaps;
    // 16 l of washing against 10 l: 6 l come out of what could be drunk, unless the roof tank is filled half way.
    expect(bare[0]!.grades!.drinking.arriveL).toBeCloseTo(60 - 32 - 6, 6);
    expect(marked[0]!.grades!.drinking.arriveL).toBeCloseTo(60 - 32, 6);
    expect(marked[0]!.grades!.washing.arriveL).toBeCloseTo(2, 6);
    expect(marked[0]!.grades!.washingTakenL).toBeCloseTo(8, 6);
    expect(marked[0]!.needL).toBe(bare[0]!.needL);
    expect(marked.length).toBe(1);
  });

  test('that the route does not pass, or that are fit for nothing, are left out and said', () => {
    const { cautions } = analysed(rigOf(TWELVE), { ...FULL, washingSources: ['node/8'] }, 980, [SPRING]);
    expect(cautions.map(({ code }) => code)).toContain('washing-source-not-passed');
    const fountain = pointFeature('node/9', 490, { amenity: 'fountain' });
    const unfit = analysed(rigOf(TWELVE), { ...FULL, washingSources: ['node/9'] }, 980, [fountain]);
    expect(unfit.cautions.map(({ code }) => code)).toContain('washing-source-unfit');
  });
});

describe('mixing and treatment', () => {
  const SPRING = pointFeature('node/7', 490, { natural: 'spring' });
  const rigAt = (at: 'filling' | 'tap'): RigFile => ({
    ...rigOf(TWELVE),
    treatment: {
      at,
      stages: [{ kind: 'ultrafilter', poreMicron: 0.01, logs: { bacteria: 6, viruses: 4, protozoa: 4 } }],
    },
  });
  const trip: TripFile = { ...FULL, counting: { water: 'implied' } };

  test('a treatable source that is treated at the tap lowers tank and pipes from there', () => {
    const { waterUse } = analysed(rigAt('tap'), trip, 980, [SPRING, pointFeature('node/8', 700, TAP)]);
    expect(waterUse.treatAt).toBe('tap');
    expect(waterUse.mixing).toMatchObject([{ id: 'node/7', container: 'treatable', pipes: 'treatable' }]);
    expect(codes(waterUse)).toContain('water-lowered');
  });

  test('a source that does not count is not filled from', () => {
    expect(analysed(rigAt('tap'), FULL, 980, [SPRING]).waterUse.mixing).toEqual([]);
  });

  test('one that is treated on filling does not', () => {
    const { waterUse } = analysed(rigAt('filling'), trip, 980, [SPRING]);
    expect(waterUse).toMatchObject({ treatAt: 'filling', mixing: [] });
    expect(waterUse.treatText).toContain('on filling');
  });

  test('without a line that is said, too', () => {
    expect(analysed(rigOf(TWELVE)).waterUse).toMatchObject({ treatAt: null, mixing: [] });
  });
});

describe('cautions of a crew', () => {
  const HEAT = { temperatureC: 40, humidityPercent: 20 };
  test.each<[string, RigFile]>([
    ['heat-unknown', rigOf(TWELVE)],
    ['wbgt-outside-range', rigOf({ ...TWELVE, heat: { ...HEAT, temperatureC: 55 } })],
    ['drinking-below-survival', rigOf({ people: [{}, { drinking: 2 }] })],
    ['no-drinking-tank', rigOf(TWELVE, { tanks: [{ name: 'roof', litres: 50, grade: 'washing' }] })],
    ['cans-kept-for-washing', rigOf(TWELVE, { cans: { litres: 20, owned: 1, grade: 'washing' } })],
  ])('%s', (code, rig) => {
    expect(codes(analysed(rig).waterUse)).toContain(code);
    const calm = rigOf({ ...TWELVE, heat: HEAT }, { cans: { litres: 20, owned: 1 } });
    expect(codes(analysed(calm).waterUse)).not.toContain(code);
  });
});

test('the tightest gap is that whose drinking water is', () => {
  const trip = { ...FULL, aboard: { waterLitres: 50 } };
  const rig = rigOf(TWELVE, { tanks: TANKS });
  const { water } = analysed(rig, trip, 1470, [pointFeature('node/1', 490, TAP)]);
  // First gap: 20 l to drink, 16 l used. Second, four days: 40 l to drink, 32 l used. Reserve 16 l.
  const litres = (figures: number[]) => figures.map((figure) => expect.closeTo(figure, 9));
  expect(water.gaps.map(({ grades }) => grades!.drinking.marginL)).toEqual(litres([-12, -8]));
  expect(water.gaps.map(({ marginL }) => marginL)).toEqual(litres([10, 6]));
  expect(water.tightest).toBe(0);
});

test('the analysis of a rig in full is what the contract promises', () => {
  const heat = { temperatureC: 42, humidityPercent: 12 };
  const crew: Crew = { ...TWELVE, heat, pets: [{ kind: 'dog', kg: 25 }], lossPercent: 4 };
  const analysis = analysed(rigOf(crew, { tanks: TANKS }), { ...FULL, helpHours: 30 });
  expect([...Value.Errors(WaterUse, analysis.waterUse)]).toEqual([]);
  expect([...Value.Errors(Analysis, analysis)]).toEqual([]);
});

test('a night that may fall inside is told where drinking water, not all water, would not last', () => {
  // Slow: nights at 245 and 490. Fast: one at 420, within the gap.
  const taps = [pointFeature('node/1', 400, TAP), pointFeature('node/2', 440, TAP)];
  const trip: TripFile = { ...FULL, departure: '2026-05-04', departureHour: 8 };
  const toldOf = (drinkableL: number) => {
    const tanks = [
      { name: 'floor', litres: drinkableL },
      { name: 'roof', litres: 40, grade: 'washing' as const },
    ];
    const water = { tanks, reserve: { litres: 0 } };
    const { cautions } = analysisOf({
      document: equatorDocument(880),
      rig: rigOf(TWELVE, water),
      trip,
      features: taps,
    });
    return cautions.some(
      (one) => one.code === 'night-may-fall-inside' && Math.round(one.fromKm ?? 0) === 400,
    );
  };
  expect(toldOf(5)).toBe(true);
  expect(toldOf(50)).toBe(false);
});
