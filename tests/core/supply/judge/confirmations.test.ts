import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Confirmation, holdOf, reportOn } from '../../../../server/core/supply/judge/confirmations.ts';
import { reasonsFrom } from '../../../../server/core/supply/tags/reasons.ts';

/** Judged for today, with no departure. */
const onDay = (today: string) => ({ departure: null, today });

it('a report that it works holds for a term, and says from when it was and for how many days it held', () => {
  const works = { id: 'node/1', works: true, on: '2026-05-01' };
  expect(reportOn([works], 'fuel', onDay('2026-05-31'))).toMatchObject({ state: 'works' });
  const stale = reportOn([works], 'fuel', onDay('2026-06-01'));
  expect(stale.state).toBe('none');
  expect(reasonsFrom(stale.reasons)).toEqual([
    { code: 'confirmation-expired', facts: { findings: [{ on: '2026-05-01', days: 30 }] } },
  ]);
  expect(reasonsFrom(reportOn([works], 'water', onDay('2026-05-16')).reasons)).toEqual([
    { code: 'confirmation-expired', facts: { findings: [{ on: '2026-05-01', days: 14 }] } },
  ]);
});

it('reports ahead of the day are one reason, their days in order however they were given', () => {
  const ahead = ['2026-06-02', '2026-06-01', '2026-06-03'].map((on) => ({ id: 'node/1', works: true, on }));
  const findings = ['2026-06-01', '2026-06-02', '2026-06-03'].map((on) => ({ on }));
  for (const reports of [ahead, ahead.toReversed()])
    expect(reasonsFrom(reportOn(reports, 'fuel', onDay('2026-05-01')).reasons)).toEqual([
      { code: 'confirmation-ahead', facts: { findings } },
    ]);
});

describe('with a departure', () => {
  const DEPARTURE = '2027-05-01';
  const works = (on: string, more: Partial<Confirmation> = {}): Confirmation => ({
    id: 'node/1',
    works: true,
    on,
    ...more,
  });
  const judged = (report: Confirmation, commodity: 'fuel' | 'water' = 'fuel', reachedOn = DEPARTURE) =>
    reportOn([report], commodity, {
      departure: DEPARTURE,
      today: report.on,
      reached: { first: reachedOn, last: reachedOn },
    });
  const codes = (report: ReturnType<typeof judged>) => report.reasons.map(({ code }) => code);

  it('a station confirmed by telephone on the day of planning counts, though the departure is months off', () => {
    const report = judged(works('2026-11-30', { by: 'Ann', phone: '555 123', words: 'till six' }));
    expect(report.state).toBe('works');
    expect(report.reasons).toEqual([
      { code: 'confirmed', finding: { on: '2026-11-30', by: 'Ann', phone: '555 123', words: 'till six' } },
      { code: 'confirm-again', finding: { on: '2026-11-30', from: '2027-03-02' } },
    ]);
  });

  it('one made at most 60 days before for fuel, 30 for water, need not be confirmed again', () => {
    expect(codes(judged(works('2027-03-02')))).toEqual(['confirmed']);
    expect(codes(judged(works('2027-03-01')))).toEqual(['confirmed', 'confirm-again']);
    expect(codes(judged(works('2027-04-01'), 'water'))).toEqual(['confirmed']);
    expect(codes(judged(works('2027-03-31'), 'water'))).toEqual(['confirmed', 'confirm-again']);
  });

  it('it holds until 30 days after the departure, for what is come to by then', () => {
    for (const commodity of ['fuel', 'water'] as const) {
      expect(judged(works('2027-04-20'), commodity, '2027-05-31').state).toBe('works');
      expect(judged(works('2027-04-20'), commodity, '2027-06-01')).toMatchObject({
        state: 'none',
        reasons: [{ code: 'confirmation-expired', finding: { on: '2027-04-20', until: '2027-05-31' } }],
      });
    }
  });

  it('the days that the user gives stand before the rule, and then nothing is to be asked again', () => {
    const season = works('2026-11-30', { from: '2027-05-10', until: '2027-08-31' });
    expect(codes(judged(season, 'fuel', '2027-05-10'))).toEqual(['confirmed']);
    expect(codes(judged(season, 'fuel', '2027-08-31'))).toEqual(['confirmed']);
    expect(judged(season, 'fuel', '2027-05-09').state).toBe('none');
    expect(codes(judged(season, 'fuel', '2027-05-09'))).toEqual(['confirmation-not-yet']);
    expect(codes(judged(season, 'fuel', '2027-09-01'))).toEqual(['confirmation-expired']);
  });

  it('one made on the way counts for what is still to come, one dated ahead of today does not', () => {
    const days = { departure: DEPARTURE, reached: { first: '2027-05-20', last: '2027-05-24' } };
    const report = works('2027-05-06');
    expect(reportOn([report], 'water', { ...days, today: '2027-05-06' }).state).toBe('works');
    expect(codes(reportOn([report], 'water', { ...days, today: '2027-05-05' }))).toEqual([
      'confirmation-ahead',
    ]);
    const late = works('2027-05-25');
    expect(codes(reportOn([late], 'water', { ...days, today: '2027-05-26' }))).toEqual([
      'confirmation-ahead',
    ]);
  });

  it('one made on the way holds for its own term at least', () => {
    const report = works('2027-05-21');
    const reachedOn = (day: string, commodity: 'fuel' | 'water') =>
      reportOn([report], commodity, {
        departure: DEPARTURE,
        today: '2027-05-21',
        reached: { first: day, last: day },
      }).state;
    expect([reachedOn('2027-06-20', 'fuel'), reachedOn('2027-06-21', 'fuel')]).toEqual(['works', 'none']);
    expect([reachedOn('2027-06-04', 'water'), reachedOn('2027-06-05', 'water')]).toEqual(['works', 'none']);
  });

  it('one older than three years is as old as tags that are not believed any more', () => {
    expect(judged(works('2024-05-01')).state).toBe('works');
    expect(codes(judged(works('2024-04-30')))).toEqual(['confirmation-expired']);
  });

  it('what does not work until a day is judged by its tags from the day after', () => {
    const shut: Confirmation = {
      id: 'node/1',
      works: false,
      on: '2027-01-05',
      until: '2027-05-10',
      words: 'rebuilt',
    };
    expect(judged(shut, 'fuel', '2027-05-10')).toEqual({
      state: 'out',
      reasons: [
        { code: 'reported-out', finding: { on: '2027-01-05', words: 'rebuilt', until: '2027-05-10' } },
      ],
    });
    expect(judged(shut, 'fuel', '2027-05-11')).toEqual({ state: 'none', reasons: [] });
  });

  it('it never holds shorter for being made later', () => {
    const day = fc
      .integer({ min: 0, max: 365 })
      .map((days) => new Date(Date.parse('2026-06-01') + days * 86_400_000).toISOString().slice(0, 10));
    fc.assert(
      fc.property(day, day, fc.constantFrom('fuel' as const, 'water' as const), (a, b, commodity) => {
        const [earlier, later] = a < b ? [a, b] : [b, a];
        const first = holdOf(works(earlier), commodity, DEPARTURE);
        const second = holdOf(works(later), commodity, DEPARTURE);
        expect(second.until >= first.until).toBe(true);
        expect(second.again === null || first.again !== null).toBe(true);
      }),
    );
  });
});

describe('of several reports', () => {
  const report = (on: string, works: boolean, more: Partial<Confirmation> = {}): Confirmation => ({
    id: 'node/1',
    on,
    works,
    ...more,
  });
  const judged = (reports: Confirmation[], days: Partial<Parameters<typeof reportOn>[2]> = {}) => {
    const { state, reasons } = reportOn(reports, 'fuel', { departure: null, today: '2026-05-31', ...days });
    return [state, ...reasons.map(({ code, finding }) => `${code} ${(finding as { on: string }).on}`)];
  };

  it('those of the other commodity say nothing, those of none of both speak of both', () => {
    expect(judged([report('2026-05-30', true, { commodity: 'water' })])).toEqual(['none']);
    expect(judged([report('2026-05-30', true, { commodity: 'fuel' })])).toEqual([
      'works',
      'confirmed 2026-05-30',
    ]);
    expect(judged([report('2026-05-30', true)])).toEqual(['works', 'confirmed 2026-05-30']);
  });

  it('the newest stands, whatever order they come in; of two on one day that it does not work', () => {
    const [old, fresh] = [report('2026-05-10', true), report('2026-05-20', true)];
    for (const order of [
      [old, fresh],
      [fresh, old],
    ])
      expect(judged(order)).toEqual(['works', 'confirmed 2026-05-20']);
    expect(judged([fresh, report('2026-05-19', false)])).toEqual(['works', 'confirmed 2026-05-20']);
    expect(judged([fresh, report('2026-05-20', false)])).toEqual(['out', 'reported-out 2026-05-20']);
    expect(judged([report('2026-05-01', false), report('2026-05-03', false)])).toEqual([
      'out',
      'reported-out 2026-05-03',
    ]);
  });

  it('one of the very day counts, one of the day after is ahead', () => {
    expect(judged([report('2026-05-31', true)])).toEqual(['works', 'confirmed 2026-05-31']);
    expect(judged([report('2026-06-01', true)])).toEqual(['none', 'confirmation-ahead 2026-06-01']);
    const departure = '2026-05-20';
    expect(judged([report('2026-05-21', true)], { departure })).toEqual([
      'none',
      'confirmation-ahead 2026-05-21',
    ]);
    const reached = { first: '2026-05-24', last: '2026-05-25' };
    expect(judged([report('2026-05-25', true)], { departure, reached })).toEqual([
      'works',
      'confirmed 2026-05-25',
    ]);
    expect(judged([report('2026-05-24', true)], { departure, reached, today: null })).toEqual([
      'none',
      'confirmation-ahead 2026-05-24',
    ]);
  });

  it('without any day "works" cannot be weighed, and "does not" stands', () => {
    expect(judged([report('2026-05-01', true)], { today: null })).toEqual([
      'none',
      'confirmation-undated 2026-05-01',
    ]);
    const until = { until: '2026-05-02' };
    expect(judged([report('2026-05-01', false, until)], { today: null })).toEqual([
      'out',
      'reported-out 2026-05-01',
    ]);
    expect(judged([report('2026-05-01', false, until)])).toEqual(['none']);
    expect(judged([report('2026-05-01', false, until)], { departure: '2026-05-02' })).toEqual([
      'out',
      'reported-out 2026-05-01',
    ]);
  });

  it('a first day told with one is held against the first day on which one may come', () => {
    const season = report('2026-05-01', true, { from: '2026-05-30' });
    expect(reportOn([season], 'fuel', { departure: null, today: '2026-05-29' })).toEqual({
      state: 'none',
      reasons: [{ code: 'confirmation-not-yet', finding: { on: '2026-05-01', from: '2026-05-30' } }],
    });
    expect(judged([season], { today: '2026-05-30' })).toEqual(['works', 'confirmed 2026-05-01']);
  });
});
