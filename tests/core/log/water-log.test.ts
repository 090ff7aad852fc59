import { beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { WaterLog } from '../../../server/contract/answers/log.ts';
import { csvOf, waterLog } from './learn-helpers.ts';

/** Worked by hand: 5, 6, 4, 7 and 12 l for a person and day. */
const HAND = csvOf(
  'date,litres,people,days,note',
  '2026-04-01,20,2,2,',
  '2026-04-03,12,2,1,washed',
  '2026-04-04,24,3,2,',
  '2026-04-08,21,3,1,',
  '2026-04-09,12,2,0.5,"hot, at work"',
);

describe('a water log worked by hand', () => {
  let log: WaterLog;
  beforeEach(() => {
    log = waterLog(HAND);
  });

  it('divides by people and days', () => {
    expect(waterLog(HAND).total).toEqual({ litres: 89, personDays: 16, litresPerPersonDay: 89 / 16 });
    expect(log.entries.map((entry) => entry.litresPerPersonDay)).toEqual([5, 6, 4, 7, 12]);
  });

  it('gives percentiles for a person and for the largest crew of the log', () => {
    // Sorted 4, 5, 6, 7, 12: positions 0.4, 2 and 3.6.
    const { low, typical, high } = log.litresPerPersonDay;
    expect([low, typical, high].map((value) => Number(value.toFixed(9)))).toEqual([4.4, 6, 10]);
    expect(log.crew).toEqual({
      people: 3,
      from: 'log',
      litresPerDay: { low: low * 3, typical: 18, high: high * 3 },
    });
    expect(parse(log.yaml)).toEqual({ water: { litresPerDay: { low: 13.2, typical: 18, high: 30 } } });
    expect(waterLog(HAND, 1).crew.litresPerDay).toEqual(log.litresPerPersonDay);
  });

  it('lists outliers, and counts them', () => {
    // Quartiles 5 and 7: fences 2 and 10.
    expect(log.fences).toEqual({ below: 2, above: 10 });
    expect(log.entries.map((entry) => entry.outlier)).toEqual([false, false, false, false, true]);
    expect(log.cautions.find(({ code }) => code === 'outliers')?.text).toContain('12.0 l');
  });

  it('lists days that no line tells of, lines that overlap, and crews that differ', () => {
    const text = (code: string) => log.cautions.find((caution) => caution.code === code)?.text;
    expect(text('days-not-logged')).toContain('between line 4 and line 5 (2 days)');
    expect(text('days-overlap')).toBeUndefined();
    expect(text('people-vary')).toContain('crews of 2, 3');
    const overlapping = waterLog(HAND.replace('2026-04-03', '2026-04-02'));
    expect(overlapping.cautions.find(({ code }) => code === 'days-overlap')?.text).toContain(
      'between line 2 and line 3 (1 days)',
    );
  });

  it('does not mind the order of the lines', () => {
    const [header, ...lines] = HAND.trimEnd().split('\n');
    const back = waterLog(csvOf(header!, ...lines.reverse()));
    expect(back.litresPerPersonDay).toEqual(log.litresPerPersonDay);
    expect(back.entries.map((entry) => entry.date)).toEqual(log.entries.map((entry) => entry.date));
  });

  it('reads US gallons of 231 cubic inches', () => {
    const gallons = waterLog(HAND.replace('litres', 'gal_us'));
    expect(gallons.litresPerPersonDay.typical).toBeCloseTo(6 * 231 * 0.254 ** 3, 9);
  });
});
