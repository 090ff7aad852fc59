import fc from 'fast-check';
import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import { Analysis } from '../../../server/contract/analysis.ts';
import { RigFile } from '../../../server/contract/rig.ts';
import { TripFile } from '../../../server/contract/trip.ts';
import { checkRig } from '../../../server/core/rig/check-rig.ts';
import {
  analysisOf,
  equatorDocument,
  equatorLon,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

/** 35, 45, 60 km/h for 7 h; 18 l of water a day; departure Monday 4 May 2026. */
const tripWith = (more: Partial<TripFile> = {}): TripFile => ({ ...inputOf().trip, ...more });
const tap300 = [pointFeature('node/1', 300, TAP)];
const document = equatorDocument(600);

describe('the day table of 600 km with a tap at km 300, from 8:00', () => {
  const analysis = analysisOf({ document, features: tap300, trip: tripWith({ departureHour: 8 }) });
  const { days, water } = analysis;

  test('has a row a day: dates, kilometres, hours, where each ends', () => {
    expect(days.rows.map(({ day, date, halt }) => [day, date, halt.kind])).toEqual([
      [1, '2026-05-04', 'pace'],
      [2, '2026-05-05', 'pace'],
      [3, '2026-05-06', 'end'],
    ]);
    const [first, second, third] = days.rows;
    expect(first!.toKm).toBeCloseTo(245, 6);
    expect(second!.toKm).toBeCloseTo(490, 6);
    expect(third!.toKm).toBeCloseTo(600, 6);
    expect(third!.hours).toBeCloseTo(110 / 35, 6);
    expect(days.drivingHours.typical).toBeCloseTo(600 / 45, 6);
    // Fast: 420 km a day, so one night and 3 h.
    expect(days.elapsedDays.fast).toBeCloseTo(27 / 24, 6);
    expect(days.elapsedDays.slow).toBeCloseTo((48 + 110 / 35) / 24, 6);
  });

  test('has clock times from the fast pace to the slow one', () => {
    expect(days.rows.map((row) => row.arrive)).toEqual([
      { earliest: '2026-05-04T12:05', latest: '2026-05-04T15:00' },
      // Km 490 at 60 km/h is 70 km into the second day: 1 h 10 min.
      { earliest: '2026-05-05T09:10', latest: '2026-05-05T15:00' },
      { earliest: '2026-05-05T11:00', latest: '2026-05-06T11:09' },
    ]);
  });

  test('says what is left at each end, before the night there', () => {
    expect(days.rows[0]!.waterL).toBeCloseTo(70 - (7 / 24) * 18, 4);
    // Filled at km 300, 55 km into the second day; then 190 km.
    expect(days.rows[1]!.waterL).toBeCloseTo(70 - (190 / 35 / 24) * 18, 4);
    expect(days.rows[2]!.fuelL).toBeCloseTo(127 - 600 * 0.17, 4);
  });

  test('water goes by the time that passes, the night in its place', () => {
    expect(days.waterCharge).toBe('elapsed');
    const [first, second] = water.gaps;
    expect(first!.days).toBeCloseTo((24 + 55 / 35) / 24, 6);
    expect(first!.needL).toBeCloseTo(((24 + 55 / 35) / 24) * 18, 5);
    expect(second!.needL).toBeCloseTo(((24 + 55 / 35) / 24) * 18, 5);
    expect(first!.working.needL.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(first!.needL, 9);
  });

  test('fits the contract', () => {
    expect([...Value.Errors(Analysis, analysis)]).toEqual([]);
  });
});

test('without an hour of departure the trip starts with a driving day, and no clock time is made up', () => {
  const { days, water, assumptions } = analysisOf({ document, features: tap300 });
  expect(days.waterCharge).toBe('elapsed');
  // Either gap has one night in it: to the tap 7 h, the night and 55 km; on from there 190 km, the night and 110 km.
  for (const { needL } of water.gaps) expect(needL).toBeCloseTo(((24 + 55 / 35) / 24) * 18, 5);
  expect(water.gaps).toHaveLength(2);
  const told = analysisOf({ document, features: tap300, trip: tripWith({ departureHour: 8 }) });
  expect(water.gaps).toEqual(told.water.gaps);
  expect(assumptions).toContainEqual(
    expect.objectContaining({ path: '/trip/departureHour', value: 'the trip starts with a driving day' }),
  );
  expect(told.assumptions.map(({ path }) => path)).not.toContain('/trip/departureHour');
  expect(days.rows.map((row) => row.arrive)).toEqual([null, null, null]);
  expect(days.rows.map((row) => row.date)).toEqual(['2026-05-04', '2026-05-05', '2026-05-06']);
});

test('rest days empty the tank day by day', () => {
  const trip = tripWith({ departureHour: 8, stays: [{ atKm: 245, days: 2, name: 'by the lake' }] });
  const { days } = analysisOf({ document: equatorDocument(280), trip });
  // 7 h to the lake, 48 h there, then a night as the hours of that day are used up, then an hour.
  expect(days.rows.map((row) => row.halt.name ?? row.halt.kind)).toEqual([
    'by the lake',
    'by the lake',
    'pace',
    'end',
  ]);
  const left = days.rows.map((row) => row.waterL);
  expect(left[0]).toBeCloseTo(70 - (7 / 24) * 18, 4);
  expect(left[3]).toBeCloseTo(70 - (73 / 24) * 18, 4);
  for (const index of [1, 2, 3]) expect(left[index]!).toBeLessThan(left[index - 1]!);
  expect(days.rows[1]!.arrive).toBeNull();
});

describe('camps and hours of the trip', () => {
  /** A night at km 100, then at 345 and 590: three whole days, and 10 km. */
  const CAMPED_DAYS = (3 * 24 + 10 / 35) / 24;

  test('a camp clicked on the map is a night there and its water, as one of the route file is', () => {
    const clicked = analysisOf({ document, trip: tripWith({ camps: [{ atKm: 100, name: 'here' }] }) });
    expect(clicked.nights[0]).toEqual({ atKm: 100, name: 'here', from: 'camp' });
    expect(clicked.water.gaps[0]!.days).toBeCloseTo(CAMPED_DAYS, 6);
    expect(clicked.days.rows[0]).toMatchObject({ toKm: 100, halt: { kind: 'camp', name: 'here' } });
  });

  test('one past the end is left out with a caution', () => {
    const late = analysisOf({ document, trip: tripWith({ camps: [{ atKm: 900 }] }) });
    expect(late.cautions.map((one) => one.code)).toContain('camp-off-route');
    expect(late.nights.map((night) => night.from)).toEqual(['pace', 'pace']);
  });

  test('one at a camp that is there already is the same, and said', () => {
    const there = { lon: equatorLon(100), lat: 0, name: 'there' };
    const trip = tripWith({ camps: [{ atKm: 100.05 }] });
    const twice = analysisOf({ document, camps: [there], trip });
    expect(twice.cautions.map((one) => one.code)).toEqual(['camp-twice']);
    expect(twice.nights.filter((night) => night.from === 'camp')).toHaveLength(1);
    expect(twice.water.gaps[0]!.days).toBeCloseTo(CAMPED_DAYS, 6);
  });

  test('a camp after 5 h shortens the days, and makes more of them for water', () => {
    const { nights, water } = analysisOf({ document, trip: tripWith({ campAfterHours: 5 }) });
    expect(nights.map((night) => Math.round(night.atKm))).toEqual([175, 350, 525]);
    // Three nights, and 75 km of the fourth day; without the camps it would be two nights.
    expect(water.gaps[0]!.days).toBeCloseTo((3 * 24 + 75 / 35) / 24, 6);
    expect(water.gaps[0]!.needL).toBeCloseTo((3 + 75 / 35 / 24) * 18, 6);
  });

  test('a camp after more hours than the rig drives changes nothing but is said', () => {
    const late = analysisOf({ document, trip: tripWith({ campAfterHours: 9 }) });
    expect(late.cautions.map((one) => one.code)).toEqual(['camp-after-hours-late']);
    expect(late.water).toEqual(analysisOf({ document }).water);
  });
});

describe('pace by surface', () => {
  const sand = { hoursPerDay: 5, kmPerHour: { slow: 20, typical: 25, fast: 30 } };
  const rig: RigFile = { ...EXAMPLE_RIG, pace: { ...EXAMPLE_RIG.pace, bySurface: { sand } } };
  const surfaces = [{ fromKm: 0, toKm: 300, surface: 'sand' as const, allowancePercent: 0 }];

  test('300 km of sand at 100 km a day, the rest at 245', () => {
    const { water, nights, days } = analysisOf({ document, rig, trip: tripWith({ surfaces }) });
    // Three days of sand and their nights, 245 km and a night, 55 km.
    expect(water.gaps[0]!.days).toBeCloseTo(4 + 55 / 35 / 24, 6);
    expect(water.gaps[0]!.needL).toBeCloseTo((4 + 55 / 35 / 24) * 18, 6);
    expect(nights.map((night) => Math.round(night.atKm))).toEqual([100, 200, 300, 545]);
    expect(days.drivingHours.slow).toBeCloseTo(15 + 300 / 35, 6);
  });

  test('where the rig does not tell, our share is named as assumed', () => {
    const { assumptions, days } = analysisOf({ document, trip: tripWith({ surfaces }) });
    expect(assumptions).toContainEqual({
      path: '/rig/pace/bySurface/sand',
      value: '21 km/h slow',
      why: "the rig's pace × 0.6 (ours)",
      valueParts: [{ figure: 21, unit: 'km/h', decimals: 1 }, { text: ' slow' }],
    });
    expect(days.drivingHours.slow).toBeCloseTo(300 / 21 + 300 / 35, 6);
  });

  test('a pace told for surfaces that the trip does not name changes no figure', () => {
    const told = analysisOf({ document, rig });
    const plain = analysisOf({ document });
    expect(told.water.gaps[0]!.needL).toBeCloseTo(plain.water.gaps[0]!.needL, 9);
    expect(told.fuel.gaps[0]!.needL).toBeCloseTo(plain.fuel.gaps[0]!.needL, 9);
  });

  test('speeds out of order, absurd hours and unknown surfaces are refused with their place', () => {
    const wrong: RigFile = {
      ...EXAMPLE_RIG,
      pace: { ...EXAMPLE_RIG.pace, bySurface: { mud: { kmPerHour: { slow: 9, typical: 5, fast: 12 } } } },
    };
    expect(checkRig(wrong)?.path).toBe('/pace/bySurface/mud/kmPerHour');
    expect(checkRig(rig)).toBeNull();
    const fits = (bySurface: unknown) =>
      Value.Check(RigFile, { ...EXAMPLE_RIG, pace: { ...EXAMPLE_RIG.pace, bySurface } });
    expect(fits({ sand })).toBe(true);
    expect(fits({ sand: { ...sand, hoursPerDay: 25 } })).toBe(false);
    expect(fits({ lava: sand })).toBe(false);
    for (const departureHour of [-1, 24.5]) expect(Value.Check(TripFile, { departureHour })).toBe(false);
  });
});

test.each([
  ['with an hour of departure', { departureHour: 8 }],
  ['without one', {}],
])('a gap that lacks a night only at the slow pace is told of, %s', (_, hour) => {
  // Slow: nights at 245 and 490. Fast: one at 420, within the gap.
  const rig: RigFile = {
    ...EXAMPLE_RIG,
    water: {
      litresPerDay: { low: 11, typical: 14, high: 18 },
      tanks: [{ name: 'only', litres: 10 }],
      reserve: { litres: 0 },
    },
  };
  const features = [pointFeature('node/1', 400, TAP), pointFeature('node/2', 440, TAP)];
  const { cautions, water } = analysisOf({ document, rig, features, trip: tripWith(hour) });
  expect(water.gaps[1]!.verdict).toBe('enough');
  const told = cautions.filter((one) => one.code === 'night-may-fall-inside');
  expect(told).toHaveLength(1);
  expect(told[0]!.fromKm).toBeCloseTo(400, 6);
  // 40 km at 60 km/h and 17 h of night, less 40 km at 35 km/h.
  expect(told[0]!.text).toContain(`${((40 / 60 + 17 - 40 / 35) * 0.75).toFixed(1)} l`);
});

describe('an analysis', () => {
  const plan = fc.record({
    lengthKm: fc.integer({ min: 50, max: 1500 }),
    taps: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 3 }),
    stays: fc.array(
      fc.record({ share: fc.double({ min: 0, max: 0.99, noNaN: true }), days: fc.constantFrom(1, 2) }),
      { maxLength: 2 },
    ),
    camps: fc.array(fc.double({ min: 0, max: 0.99, noNaN: true }), { maxLength: 3 }),
    departureHour: fc.integer({ min: 0, max: 24 }),
  });

  test('should need the same water at whatever hour a driving day begins, told or not', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(plan, ({ lengthKm, taps, stays, camps, departureHour }) => {
        const trip = tripWith({
          stays: stays.map(({ share, days }) => ({ atKm: share * lengthKm, days })),
          camps: camps.map((share) => ({ atKm: share * lengthKm })),
        });
        const features = taps.map((share, index) => pointFeature(`node/${index}`, share * lengthKm, TAP));
        const route = equatorDocument(lengthKm, 50);
        const untold = analysisOf({ document: route, features, trip });
        const told = analysisOf({ document: route, features, trip: { ...trip, departureHour } });
        const needs = ({ water }: typeof told) => water.gaps.map(({ needL }) => needL);
        expect(needs(untold)).toEqual(needs(told));
      }),
      { numRuns: 60 },
    );
  });

  test('should end its days at the end of the route, whatever the camps', () => {
    fc.assert(
      fc.property(plan, ({ lengthKm, camps, departureHour }) => {
        const trip = tripWith({ camps: camps.map((share) => ({ atKm: share * lengthKm })), departureHour });
        const { days, route, nights } = analysisOf({ document: equatorDocument(lengthKm, 50), trip });
        expect(days.rows[0]!.fromKm).toBe(0);
        expect(days.rows.at(-1)!.toKm).toBe(route.lengthKm);
        expect(days.rows.length).toBeGreaterThanOrEqual(nights.length);
      }),
      { numRuns: 60 },
    );
  });
});

describe('water of each grade at the day’s end', () => {
  const crewed = () =>
    analysisOf({
      document: equatorDocument(600),
      features: [pointFeature('node/1', 400, { amenity: 'drinking_water' })],
      rig: {
        ...EXAMPLE_RIG,
        water: { tanks: [{ name: 'tank', litres: 120 }], cans: { litres: 20, owned: 0 } },
        crew: { people: [{ count: 2, level: 'careful' }] },
      },
    });

  test('is null without a crew', () => {
    const { days } = analysisOf({ document: equatorDocument(600) });
    expect(days.rows.every((day) => day.waterByGrade === null)).toBe(true);
  });

  test('adds up to what is left in all, and ends on the gap’s own figures', () => {
    const { days, water } = crewed();
    expect(days.rows.length).toBeGreaterThan(2);
    for (const day of days.rows) {
      expect(day.waterByGrade!.drinkingL + day.waterByGrade!.washingL).toBeCloseTo(day.waterL, 6);
    }
    const { drinking, washing } = water.gaps.at(-1)!.grades!;
    expect(days.rows.at(-1)!.waterByGrade).toEqual({
      drinkingL: drinking.arriveL,
      washingL: washing.arriveL,
    });
  });
});
