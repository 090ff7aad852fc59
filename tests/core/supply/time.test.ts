import { describe, expect, it } from 'vitest';
import type { Confirmation } from '../../../server/core/supply/judge/confirmations.ts';
import type { Judging } from '../../../server/core/supply/judge/rules.ts';
import { ageOf } from '../../../server/core/supply/tags/age.ts';
import { codesOf, pointOf } from './judged.ts';

const STATION = { amenity: 'fuel', 'fuel:diesel': 'yes' };
const TAP = { amenity: 'drinking_water' };

describe('age of tags', () => {
  it('is judged by the newest edit or check, and is three years to the day', () => {
    const on = '2026-05-04';
    expect(ageOf({}, '2023-05-04T10:00:00Z', on)).toEqual({ seenOn: '2023-05-04', stale: false, ahead: [] });
    expect(ageOf({}, '2023-05-03T23:59:59Z', on)).toEqual({ seenOn: '2023-05-03', stale: true, ahead: [] });
    expect(ageOf({ check_date: '2025-01-01' }, '2010-01-01T00:00:00Z', on).stale).toBe(false);
    expect(ageOf({ 'survey:date': '2025-01-01' }, '2010-01-01T00:00:00Z', on).stale).toBe(false);
    expect(ageOf({ check_date: '2019-01-01' }, null, on)).toMatchObject({
      seenOn: '2019-01-01',
      stale: true,
    });
    expect(ageOf({}, null, on)).toEqual({ seenOn: null, stale: false, ahead: [] });
    expect(ageOf({}, null, on, '2026-04-01')).toMatchObject({ seenOn: '2026-04-01', stale: false });
    expect(ageOf({ check_date: '2019-01-01' }, null, on, '2026-04-01')).toMatchObject({
      seenOn: '2019-01-01',
      stale: true,
    });
    expect(ageOf({}, '2027-01-01T00:00:00Z', on).stale).toBe(false);
  });

  it('takes months and years at their first day, and does not believe slips of the pen', () => {
    const on = '2026-05-04';
    expect(ageOf({ check_date: '2023-05' }, null, on)).toMatchObject({ seenOn: '2023-05-01', stale: true });
    expect(ageOf({ check_date: '2024' }, null, on)).toMatchObject({ seenOn: '2024-01-01', stale: false });
    for (const text of ['2025-13-01', 'yesterday', '2025-02-41', '01.02.2025', '']) {
      expect(ageOf({ check_date: text }, null, on), text).toEqual({ seenOn: null, stale: false, ahead: [] });
    }
    expect(ageOf({ check_date: '2206-05-01' }, '2015-01-01T00:00:00Z', on)).toEqual({
      seenOn: '2015-01-01',
      stale: true,
      ahead: ['check_date=2206-05-01'],
    });
  });

  it('takes one level off, and none without a date', () => {
    const place = { editedAt: '2020-01-01T00:00:00Z' };
    const on = '2026-05-04';
    const station = pointOf('fuel', STATION, { on }, place);
    expect([station.evidence, station.counts, codesOf(station)]).toEqual(['implied', true, ['stale']]);
    const bare = pointOf('fuel', { amenity: 'fuel' }, { on }, place);
    expect([bare.evidence, bare.counts, codesOf(bare)]).toEqual([
      'doubtful',
      false,
      ['stale', 'evidence-below'],
    ]);
    const tap = pointOf('water', TAP, { on }, place);
    expect([tap.evidence, tap.counts, codesOf(tap)]).toEqual(['implied', false, ['stale', 'evidence-below']]);
    expect(pointOf('water', { man_made: 'water_well' }, { on }, place).evidence).toBe('doubtful');
    expect(pointOf('fuel', STATION, {}, place).evidence).toBe('stated');
    expect(codesOf(pointOf('water', { ...TAP, check_date: '2206-01-01' }, { on }))).toEqual([
      'check-date-ahead',
    ]);
  });

  it('goes by the stand-in day when no date is given; seasons do not', () => {
    const place = { editedAt: '2020-01-01T00:00:00Z' };
    const today = '2026-01-04';
    expect(pointOf('water', TAP, { today }, place).evidence).toBe('implied');
    expect(pointOf('water', TAP, { today, on: '2021-01-04' }, place).evidence).toBe('stated');
    const seasonal = pointOf('water', { ...TAP, seasonal: 'summer' }, { today });
    expect([seasonal.counts, codesOf(seasonal)]).toEqual([false, ['season-unknown', 'evidence-below']]);
  });
});

describe("the user's own reports", () => {
  const report = (on: string, works: boolean, more: Partial<Confirmation> = {}): Confirmation => ({
    id: 'node/1',
    on,
    works,
    ...more,
  });
  const judge = (...confirmations: Confirmation[]): Partial<Judging> => ({ on: '2026-05-31', confirmations });
  /** Without a departure, for today. */
  const judgeToday = (...confirmations: Confirmation[]): Partial<Judging> => ({
    today: '2026-05-31',
    confirmations,
  });

  it('hold 30 days for fuel and 14 for water where no departure is told', () => {
    const evidenceOf = (commodity: 'fuel' | 'water', on: string) =>
      pointOf(commodity, commodity === 'fuel' ? STATION : TAP, judgeToday(report(on, true))).evidence;
    expect(evidenceOf('fuel', '2026-05-01')).toBe('confirmed');
    expect(evidenceOf('fuel', '2026-04-30')).toBe('stated');
    expect(evidenceOf('water', '2026-05-17')).toBe('confirmed');
    expect(evidenceOf('water', '2026-05-16')).toBe('stated');
    expect(evidenceOf('water', '2026-05-31')).toBe('confirmed');
  });

  it('expired, ahead or without a date, leave the tags to decide and say so', () => {
    expect(codesOf(pointOf('water', TAP, judgeToday(report('2026-05-01', true))))).toEqual([
      'confirmation-expired',
    ]);
    expect(codesOf(pointOf('water', TAP, judge(report('2026-06-01', true))))).toEqual(['confirmation-ahead']);
    const undated = pointOf('water', TAP, { confirmations: [report('2026-05-30', true)] });
    expect([undated.evidence, codesOf(undated)]).toEqual(['stated', ['confirmation-undated']]);
  });

  it('that it does not work have no end, until a newer one says it does', () => {
    const out = pointOf('water', TAP, judge(report('2020-05-01', false)));
    expect([out.evidence, out.counts, codesOf(out)]).toEqual([
      'doubtful',
      false,
      ['reported-out', 'evidence-below'],
    ]);
    const lowest = { fuel: 'doubtful', water: 'doubtful' } as const;
    expect(pointOf('water', TAP, { ...judge(report('2020-05-01', false)), counting: lowest }).counts).toBe(
      false,
    );
    expect(pointOf('water', TAP, { confirmations: [report('2026-06-09', false)] }).counts).toBe(false);
    expect(pointOf('water', TAP, judge(report('2026-06-09', false), report('2026-05-30', true))).counts).toBe(
      false,
    );
    const newer = [report('2026-05-20', false), report('2026-05-21', true)];
    expect(pointOf('water', TAP, judge(...newer))).toMatchObject({ counts: true, evidence: 'confirmed' });
    const sameDay = [report('2026-05-20', true), report('2026-05-20', false)];
    expect(pointOf('water', TAP, judge(...sameDay)).counts).toBe(false);
    const newerButExpired = [report('2026-03-01', false), report('2026-03-02', true)];
    expect(pointOf('water', TAP, judgeToday(...newerButExpired))).toMatchObject({
      counts: true,
      evidence: 'stated',
    });
    const newerButAhead = [report('2026-05-01', false), report('2026-06-02', true)];
    expect(pointOf('water', TAP, judge(...newerButAhead)).counts).toBe(false);
  });

  it('are for one commodity where they name one, and go by any id of a merged point', () => {
    const both = { ...STATION, drinking_water: 'yes' };
    const fuelOnly = judge(report('2026-05-30', true, { commodity: 'fuel' }));
    expect(pointOf('fuel', both, fuelOnly).evidence).toBe('confirmed');
    expect(pointOf('water', both, fuelOnly).evidence).toBe('stated');
    const other = judge(report('2026-05-30', true, { id: 'node/2' }));
    expect(pointOf('fuel', both, other).evidence).toBe('stated');
  });

  it('answer what the tags say against its use, and name it', () => {
    const judged = judge(report('2026-05-30', true));
    for (const tags of [
      { ...STATION, access: 'private' },
      { 'disused:amenity': 'fuel' },
      { ...STATION, opening_hours: 'off' },
      { ...STATION, seasonal: 'yes' },
      { amenity: 'fuel', 'fuel:octane_95': 'yes' },
      { waterway: 'fuel' },
    ]) {
      const point = pointOf('fuel', tags, judged);
      expect([point.evidence, point.counts, codesOf(point)], JSON.stringify(tags)).toEqual([
        'confirmed',
        true,
        ['confirmed', 'confirmed-against-tags'],
      ]);
    }
    const stale = pointOf('fuel', STATION, judged, { editedAt: '2001-01-01T00:00:00Z' });
    expect([stale.evidence, codesOf(stale)]).toEqual(['confirmed', ['confirmed']]);
  });

  it('do not tell which fuel is sold, nor whether the water is fit, nor lift it without a pump', () => {
    const judged = judge(report('2026-05-30', true));
    const codes = (point: ReturnType<typeof pointOf>) => [point.counts, ...codesOf(point)];
    expect(codes(pointOf('fuel', { amenity: 'fuel', 'fuel:diesel': 'no' }, judged))).toEqual([
      false,
      'fuel-not-sold',
      'confirmed',
    ]);
    expect(codes(pointOf('fuel', { aeroway: 'fuel' }, judged))).toEqual([false, 'for-aircraft', 'confirmed']);
    expect(codes(pointOf('water', { natural: 'spring' }, judged))).toEqual([
      false,
      'not-stated-fit',
      'confirmed',
      'class-by-tags',
    ]);
    expect(
      codes(pointOf('water', { man_made: 'water_well', drinking_water: 'yes', pump: 'no' }, judged)),
    ).toEqual([false, 'no-pump', 'confirmed']);
  });
});
