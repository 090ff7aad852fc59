import { beforeEach, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checkRigValue } from '../../../server/app/input/plan-input.ts';
import type { FuelLog } from '../../../server/contract/answers/log.ts';
import { csvOf, fuelLog, independentQuantile } from './learn-helpers.ts';

/** Six full tanks and a part fill, worked by hand: 10, 12, 11, 20 and 13 l/100 km. */
const HAND = csvOf(
  'odometer_km,litres,full,note',
  '10000,80,full,start',
  '10500,50,full,',
  '10800,20,part,at the mine',
  '11000,40,full,"rain, then mud"',
  '11400,44,full,',
  '11500,20,full,',
  '12000,65,full,',
);

describe('a log of fill-ups worked by hand', () => {
  let log: FuelLog;
  beforeEach(() => {
    log = fuelLog(HAND);
  });

  it('sums part fills into the interval that the next full tank ends', () => {
    expect(log.intervals.map(({ fromLine, toLine, km, litres }) => [fromLine, toLine, km, litres])).toEqual([
      [2, 3, 500, 50],
      [3, 5, 500, 60],
      [5, 6, 400, 44],
      [6, 7, 100, 20],
      [7, 8, 500, 65],
    ]);
    expect(log.intervals[1]?.fills).toEqual([
      { line: 4, litres: 20 },
      { line: 5, litres: 40 },
    ]);
    expect(log.intervals[1]?.notes).toEqual(['at the mine', 'rain, then mud']);
  });

  it('says in which units the log is', () => {
    expect(log.units).toEqual({ distance: 'km', volume: 'l' });
    expect(fuelLog(HAND.replace('odometer_km,litres', 'odometer_mi,gal_us')).units).toEqual({
      distance: 'mi',
      volume: 'gal (US)',
    });
  });

  it('gives percentiles by definition 7', () => {
    // Sorted 10, 11, 12, 13, 20: positions 0.4, 2 and 3.6, so 10.4, 12 and 13 + 0.6 × 7 = 17.2.
    expect(log.litresPer100Km.low).toBeCloseTo(10.4, 12);
    expect(log.litresPer100Km.typical).toBeCloseTo(12, 12);
    expect(log.litresPer100Km.high).toBeCloseTo(17.2, 12);
    const rates = [10, 12, 11, 20, 13];
    expect(log.litresPer100Km.high).toBeCloseTo(independentQuantile(rates, 0.9), 12);
  });

  it('lists an outlier by 1.5 times the distance of the quartiles, and counts it', () => {
    // Quartiles 11 and 13: fences 8 and 16.
    expect(log.fences).toEqual({ below: expect.closeTo(8, 12), above: expect.closeTo(16, 12) });
    expect(log.intervals.map((interval) => interval.outlier)).toEqual([false, false, false, true, false]);
    expect(log.cautions.find(({ code }) => code === 'outliers')?.text).toContain(
      '20.0 l/100 km (lines 6 to 7)',
    );
    expect(log.total).toEqual({ km: 2000, litres: 239, litresPer100Km: 11.95 });
  });

  it('says that the highest was above the high figure, and which interval was short', () => {
    const text = (code: string) => log.cautions.find((caution) => caution.code === code)?.text;
    expect(text('above-high')).toContain('20.0 l/100 km (lines 6 to 7)');
    expect(text('short-intervals')).toContain('100.0 km (lines 6 to 7)');
    expect(text('few-intervals')).toContain('5 intervals are few');
  });

  it('gives lines that a rig file takes, never a narrower range', () => {
    const { fuel } = parse(log.yaml) as { fuel: { litresPer100Km: Record<string, number> } };
    expect(fuel).toEqual({ litresPer100Km: { low: 10.4, typical: 12, high: 17.2 } });
    const rig = {
      fuel: { kind: 'diesel', tanks: [{ name: 'main', litres: 90 }], ...fuel },
      water: { litresPerDay: 10, tanks: [{ name: 'tank', litres: 60 }] },
      pace: { hoursPerDay: 7, kmPerHour: 50 },
    };
    expect(checkRigValue(rig, 'rig')).toMatchObject({ ok: true });
  });
});

describe('what a log of fill-ups may lack', () => {
  const full = (from: number, count: number, litres = 50) =>
    Array.from({ length: count }, (_, index) => `${from + 500 * index},${litres},full`);

  it('leaves out part fills before the first full tank and after the last', () => {
    const log = fuelLog(
      csvOf('odometer_km,litres,full', '100,30,part', '200,30,part', ...full(1000, 6), '4000,9,part'),
    );
    expect(log.intervals.length).toBe(5);
    expect(log.leftOut.map(({ fromLine, toLine, code }) => [fromLine, toLine, code])).toEqual([
      [2, 3, 'before-first-full'],
      [10, 10, 'after-last-full'],
    ]);
  });

  it('leaves out an interval in which litres or a whole fill-up are missing', () => {
    const log = fuelLog(
      csvOf(
        'odometer_km,litres,full,missed',
        ...full(1000, 6).map((line) => `${line},`),
        '4000,,part,',
        '4500,40,full,',
        '5000,30,full,yes',
        '5500,50,full,no',
      ),
    );
    expect(log.intervals.length).toBe(6);
    expect(log.leftOut).toEqual([
      { fromLine: 7, toLine: 9, code: 'fill-missing', text: 'from full to full, but line 8 has no litres' },
      {
        fromLine: 9,
        toLine: 10,
        code: 'fill-missing',
        text: 'from full to full, but a fill-up before line 10 is missing',
      },
    ]);
  });

  it('needs no litres on the first full tank', () => {
    const log = fuelLog(csvOf('odometer_km,litres,full', '500,,full', ...full(1000, 5)));
    expect(log.intervals.length).toBe(5);
    expect(log.leftOut).toEqual([]);
  });

  it('takes two pumps at one place for one halt', () => {
    const log = fuelLog(
      csvOf('odometer_km,litres,full', ...full(1000, 6), '4000,30,part', '4000,25,full', '4000,5,part'),
    );
    expect(log.intervals.at(-1)).toMatchObject({ km: 500, litres: 60, fromLine: 7, toLine: 10 });
    expect(log.cautions.find(({ code }) => code === 'split-fill')?.text).toContain('line 9, line 10');
  });

  it('turns a log round that has the newest first', () => {
    const lines = [...full(1000, 6), '4000,30,part', '4000,25,full'];
    const forth = fuelLog(csvOf('odometer_km,litres,full', ...lines));
    const back = fuelLog(csvOf('odometer_km,litres,full', ...lines.reverse()));
    expect(back.litresPer100Km).toEqual(forth.litresPer100Km);
    expect(back.intervals[0]).toMatchObject({ fromLine: 9, toLine: 8, km: 500 });
    expect(back.cautions.map(({ code }) => code)).toContain('newest-first');
    expect(forth.cautions.map(({ code }) => code)).not.toContain('newest-first');
  });
});

describe('what a log tells of surface and load', () => {
  const lines = [
    'odometer_km,litres,full,surface,mass_kg',
    '0,1,full,sealed,3000',
    ...[1, 2, 3, 4, 5].map((index) => `${index * 500},${50 + index},full,gravel,3000`),
    '2600,15,part,Sand,3300',
    '3000,85,full,sand,3300',
    '3500,80,full,,3300',
  ];

  it('says on what each interval was driven, by the fill-ups that end it', () => {
    const { intervals, bySurface, observed, cautions } = fuelLog(csvOf(...lines));
    expect(intervals.map((interval) => interval.surface)).toEqual([
      ...Array.from({ length: 5 }, () => 'gravel'),
      'sand',
      null,
    ]);
    expect(bySurface.map(({ surface, intervals: count, km }) => [surface, count, km])).toEqual([
      ['gravel', 5, 2500],
      ['sand', 1, 500],
      [null, 1, 500],
    ]);
    // 51 to 55 l over 500 km each.
    expect(bySurface[0]?.litresPer100Km?.typical).toBeCloseTo(10.6, 12);
    expect(bySurface[1]?.litresPer100Km).toBeNull();
    expect(observed.surface).toBeNull();
    // 2,500 km at 3,000 kg and 1,000 km at 3,300 kg.
    expect(observed.massKg).toBeCloseTo((2500 * 3000 + 1000 * 3300) / 3500, 9);
    expect(cautions.map(({ code }) => code)).toContain('mixed-surfaces');
  });

  it('learns from one surface alone when asked, and lists the rest', () => {
    const log = fuelLog(csvOf(...lines), 'gravel');
    expect(log.observed).toEqual({ surface: 'gravel', massKg: expect.closeTo(3000, 9) });
    expect(parse(log.yaml).fuel.observed).toEqual({ surface: 'gravel', massKg: 3000 });
    expect(log.leftOut.map(({ code, fromLine, toLine }) => [code, fromLine, toLine])).toEqual([
      ['other-surface', 7, 9],
      ['other-surface', 9, 10],
    ]);
  });

  it('tells neither where the log has neither', () => {
    const log = fuelLog(HAND);
    expect(log.observed).toEqual({ surface: null, massKg: null });
    expect(parse(log.yaml).fuel).not.toHaveProperty('observed');
    expect(log.cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['surface-not-told', 'mass-not-told', 'all-in']),
    );
  });
});

describe('units and forms of a log', () => {
  const rates = (text: string) => fuelLog(text).litresPer100Km;
  const plain = rates(HAND);

  it.each([
    // 231 cubic inches of 0.0254 m; the imperial gallon of 4.54609 l; the mile of 1,609.344 m.
    ['odometer_mi,gal_us,full', 231 * 0.254 ** 3, 1.609344],
    ['Odometer [miles];Fuel (gallons US);Full tank', 231 * 0.254 ** 3, 1.609344],
    ['odo mi,gallons imperial,full', 4.54609, 1.609344],
    ['odometer_km,US gal,full', 231 * 0.254 ** 3, 1],
    ['ODOMETER (km)\tLitres\tFULL', 1, 1],
  ])('converts what stands under %s', (header, litresPer, kmPer) => {
    const separator = header.includes(';') ? ';' : header.includes('\t') ? '\t' : ',';
    const body = HAND.split('\n')
      .slice(1)
      .map((line) => line.split(',').slice(0, 3).join(separator));
    const got = rates([header, ...body].join('\r\n'));
    expect(got.low).toBeCloseTo((plain.low * litresPer) / kmPer, 9);
    expect(got.typical).toBeCloseTo((plain.typical * litresPer) / kmPer, 9);
    expect(got.high).toBeCloseTo((plain.high * litresPer) / kmPer, 9);
  });

  it('reads pounds as 0.45359237 kg', () => {
    const text = csvOf(
      'odometer_km,litres,full,mass_lb',
      ...[0, 1, 2, 3, 4, 5].map((i) => `${i * 500},50,full,6000`),
    );
    expect(fuelLog(text).observed.massKg).toBeCloseTo(2721.55422, 6);
  });

  it('reads a decimal comma between semicolons, quotes, blank lines and a byte order mark', () => {
    const text = `\ufeff"odometer_km";"litres";"full";"note"\r\n${[0, 1, 2, 3, 4, 5]
      .map((index) => `${index * 500};50,5;yes;"first ""big"" dune\nthen; rest"`)
      .join('\r\n\r\n')}\r\n`;
    const log = fuelLog(text);
    expect(log.litresPer100Km.typical).toBeCloseTo(10.1, 12);
    // Each record is two lines long and a blank one follows it: 2, 5, 8 …
    expect(log.intervals[1]).toMatchObject({
      fromLine: 5,
      toLine: 8,
      notes: ['first "big" dune\nthen; rest'],
    });
  });

  it('names the columns that it does not look at', () => {
    const text = csvOf(
      'odometer_km,litres,full,Price,l/100km',
      ...[0, 1, 2, 3, 4, 5].map((i) => `${i * 500},50,1,9,9`),
    );
    expect(fuelLog(text).unreadColumns).toEqual(['Price', 'l/100km']);
  });
});
