import { describe, expect, test } from 'vitest';
import { analyse } from '../../../server/core/analyse/analyse.ts';
import type { OpeningHoursReader } from '../../../server/core/input/opening-hours.ts';
import {
  analysisOf,
  DIESEL,
  documentOf,
  equatorDocument,
  equatorLon,
  inputOf,
  pointFeature,
} from '../../helpers/analyse-input.ts';

/** 245 km a day at the slow pace, 420 at the fast one. */
const SUMMER_TAP = { amenity: 'drinking_water', seasonal: 'summer' };
const leaving = (departure: string) => ({ ...inputOf().trip, departure });
const codes = (one: { reasons: { code: string }[] }) => one.reasons.map(({ code }) => code);

describe('a seasonal supply is judged for the days on which it is reached', () => {
  const reached = (km: number, departure: string) =>
    analysisOf({
      document: equatorDocument(1000),
      features: [pointFeature('node/1', km, SUMMER_TAP)],
      trip: leaving(departure),
    }).passings[0]!;

  test('left in spring, reached in summer by slow and fast: counts', () => {
    const tap = reached(900, '2026-05-30');
    expect(codes(tap)).toEqual(['in-season']);
    expect(tap.counts).toBe(true);
  });

  test('reached in summer by the slow only: does not count', () => {
    const tap = reached(600, '2026-05-30');
    expect(tap.counts).toBe(false);
    expect(tap.reasons[0]!.text).toContain('judged for 2026-05-31 to 2026-06-01');
  });

  test('left in summer, reached after it: does not count', () => {
    expect(reached(100, '2026-08-30').counts).toBe(true);
    expect(reached(600, '2026-08-30').counts).toBe(false);
  });

  test('passed twice, each time for its own days', () => {
    const out: [number, number][] = Array.from({ length: 61 }, (_, index) => [equatorLon(index * 10), 0]);
    const there: [number, number][] = Array.from({ length: 60 }, (_, i) => [equatorLon(590 - i * 10), 0]);
    const { passings } = analysisOf({
      document: documentOf([[...out, ...there]]),
      features: [pointFeature('node/1', 100, SUMMER_TAP)],
      trip: leaving('2026-08-30'),
    });
    expect(passings.map(({ atKm, counts }) => [Math.round(atKm), counts])).toEqual([
      [100, true],
      [1100, false],
    ]);
  });

  test('passed twice, on the map for the first time, be the second nearer', () => {
    // Out along the equator, back half a kilometre north of it; the tap is 440 m off the way out, 110 m off the way back.
    const out: [number, number][] = Array.from({ length: 61 }, (_, index) => [equatorLon(index * 10), 0]);
    const back: [number, number][] = out.toReversed().map(([lon]) => [lon, 0.005]);
    const outcome = analyse(
      inputOf({
        document: documentOf([[...out, ...back]]),
        features: [pointFeature('node/1', 100, SUMMER_TAP, 0.44)],
        trip: leaving('2026-08-30'),
      }),
    );
    if (!outcome.ok) throw new Error('no route');
    const { analysis, points } = outcome.value;
    const passings = analysis.passings.filter(({ commodity }) => commodity === 'water');
    expect(passings.map(({ counts }) => counts)).toEqual([true, false]);
    expect(points.find(({ id }) => id === 'node/1')?.counts).toBe(true);
  });

  test('a season that ends and comes back between the two is none of it', () => {
    // 2 km a day take 380 days, 200 km a day four: summer at both ends, a winter between.
    const rig = {
      ...inputOf().rig,
      pace: { hoursPerDay: 1, kmPerHour: { slow: 2, typical: 100, fast: 200 } },
    };
    const [tap] = analysisOf({
      document: equatorDocument(800),
      features: [pointFeature('node/1', 759, SUMMER_TAP)],
      rig,
      trip: leaving('2026-06-10'),
    }).passings;
    expect(tap!.reasons[0]!.text).toContain('judged for 2026-06-13 to 2027-06-24');
    expect(tap!.counts).toBe(false);
  });

  test('stays put the days off', () => {
    const trip = { ...leaving('2026-08-30'), stays: [{ atKm: 50, days: 5 }] };
    const [tap] = analysisOf({
      document: equatorDocument(300),
      features: [pointFeature('node/1', 100, SUMMER_TAP)],
      trip,
    }).passings;
    expect(tap!.counts).toBe(false);
  });

  test('off the corridor, for the day at its nearest place', () => {
    const rescue = (departure: string) => {
      const { water } = analysisOf({
        document: equatorDocument(1340),
        features: [pointFeature('node/1', 600, SUMMER_TAP, 20)],
        trip: leaving(departure),
      });
      return water.gaps[0]!.rescue[0]!.counts;
    };
    expect(rescue('2026-07-01')).toBe(true);
    expect(rescue('2026-08-30')).toBe(false);
  });

  test('without a day of departure nobody knows', () => {
    const { departure: _departure, ...trip } = inputOf().trip;
    const features = [pointFeature('node/1', 100, SUMMER_TAP)];
    const [tap] = analysisOf({ document: equatorDocument(300), features, trip }).passings;
    expect(codes(tap!)).toContain('season-unknown');
  });
});

describe('opening hours on arrival', () => {
  const station = { ...DIESEL, opening_hours: 'as tagged', name: 'Far pump' };
  const arriving = (answer: Partial<ReturnType<OpeningHoursReader>>, more: object = { departureHour: 8 }) => {
    const asked: Parameters<OpeningHoursReader>[] = [];
    const openingHours: OpeningHoursReader = (...question) => {
      asked.push(question);
      return { open: true, waitHours: 0, opens: true, comment: null, unreadable: false, ...answer };
    };
    const analysis = analysisOf({
      document: equatorDocument(600),
      features: [pointFeature('node/1', 300, station), pointFeature('node/2', 400, DIESEL)],
      trip: { ...inputOf().trip, ...more },
      openingHours,
    });
    return { analysis, asked, passing: analysis.passings[0]! };
  };

  test('are asked for the time from the fast pace to the slow one', () => {
    const { asked, passing } = arriving({});
    // Asked before for a week, whether it opens at all.
    const onArrival = asked.at(-1)!;
    expect(onArrival[0]).toBe('as tagged');
    // 300 km: fast 5 h; slow a night and 55 km, 1 h 34 min.
    expect(onArrival.slice(2)).toEqual(['2026-05-04T13:00', '2026-05-05T09:34']);
    expect(passing.arrival).toEqual({
      earliest: '2026-05-04T13:00',
      latest: '2026-05-05T09:34',
      open: true,
      waitHours: 0,
      text: null,
    });
  });

  test('shut means waiting or coming earlier, not the loss of the supply', () => {
    const { analysis, passing } = arriving({ open: false, waitHours: 12 });
    expect(passing.counts).toBe(true);
    expect(passing.arrival).toMatchObject({ open: false, waitHours: 12 });
    expect(analysis.fuel.gaps).toEqual(arriving({}).analysis.fuel.gaps);
    const [caution] = analysis.cautions;
    expect(caution).toMatchObject({ code: 'shut-on-arrival', fromKm: passing.atKm, toKm: passing.atKm });
    // 12 h at 18 l a day.
    expect(caution!.text).toContain('waiting takes up to 12.0 h and 9.0 l of water, or come earlier');
  });

  test('a supply for which no opening is in sight counts neither in gaps nor in a plan, unless the wait is told', () => {
    const shut = arriving({ open: false, waitHours: null });
    expect(shut.passing).toMatchObject({ counts: false, evidence: 'doubtful' });
    expect(shut.passing.reasons.map(({ code }) => code)).toContain('no-opening-found');
    expect(shut.passing.reasons[0]!.text).toMatch(/No opening is sure within two weeks of coming between/);
    expect(shut.analysis.fuel.gaps).toHaveLength(2);
    const plan = { stops: [{ id: 'node/1', waitHours: 30 }] };
    const told = arriving({ open: false, waitHours: null }, { departureHour: 8, plan });
    expect(told.passing.counts).toBe(true);
  });

  test('no opening in sight, unknown and unreadable are each said', () => {
    const caution = (answer: Parameters<typeof arriving>[0]) => arriving(answer).analysis.cautions[0]!;
    expect(caution({ open: false, waitHours: null }).text).toContain('no opening is found');
    expect(caution({ open: null, waitHours: null, comment: 'by appointment' })).toMatchObject({
      code: 'opening-hours-unknown',
      text: expect.stringContaining('by appointment'),
    });
    expect(caution({ open: null, waitHours: null, unreadable: true })).toMatchObject({
      code: 'opening-hours-unread',
      text: expect.stringContaining('"as tagged"'),
    });
    expect(arriving({}).analysis.cautions).toEqual([]);
  });

  test('are not asked for without a day and an hour, nor where none are mapped', () => {
    // A week is, whether it opens at all: a supply that never does counts neither with a day nor without.
    const week = (from: string, to: string) => [
      ['as tagged', expect.anything(), `${from}T00:00`, `${to}T00:00`],
    ];
    expect(arriving({}, {}).asked).toEqual(week('2026-05-04', '2026-05-11'));
    expect(arriving({}, {}).passing.arrival).toBeNull();
    const undated = arriving({}, { departureHour: 8, departure: undefined });
    expect(undated.asked).toEqual(week('2026-05-01', '2026-05-08'));
    expect(undated.passing.arrival).toBeNull();
    expect(arriving({}).analysis.passings[1]!.arrival).toBeNull();
  });
});
