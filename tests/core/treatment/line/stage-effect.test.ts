import { describe, expect, it } from 'vitest';
import type { TreatmentFile } from '../../../../server/contract/treatment.ts';
import { boilingPointC, boilMinutes } from '../../../../server/core/treatment/line/disinfecting/boiling.ts';
import { mgPerLitreOfDrops } from '../../../../server/core/treatment/line/disinfecting/chlorine.ts';
import { logOfPercent, percentOfLog, TARGETS } from '../../../../server/core/treatment/line/logs.ts';
import {
  type Conditions,
  type StageEffect,
  stageEffect,
} from '../../../../server/core/treatment/line/stage-effect.ts';
import { EASY, lineOf, textsOf } from '../lines.ts';

const NOTHING = { bacteria: 0, viruses: 0, protozoa: 0 };

const effectOf = (stage: TreatmentFile['stages'][number], water: Partial<Conditions> = {}): StageEffect =>
  stageEffect(lineOf([stage]).stages[0]!, { ...EASY, ...water });

describe('logs and percent', () => {
  // Arithmetic: n log = 1 - 10^-n.
  it.each([
    [2, 99],
    [3, 99.9],
    [4, 99.99],
    [6, 99.9999],
  ])('%d log are %d percent', (log, percent) => {
    expect(percentOfLog(log)).toBeCloseTo(percent, 10);
    expect(logOfPercent(percent)).toBeCloseTo(log, 8);
  });

  it('a pre-filter that stops 94 % takes out 1.22 log (common practice)', () => {
    const { logs } = effectOf({ kind: 'sediment', stopsPercent: { protozoa: 94 } });
    expect(logs.protozoa).toBeCloseTo(1.22, 2);
  });

  it('targets are those of EPA (6, 4, 3) and of WHO (2011)', () => {
    expect(TARGETS).toEqual({
      purifier: { bacteria: 6, viruses: 4, protozoa: 3 },
      'two-star': { bacteria: 2, viruses: 3, protozoa: 2 },
      'three-star': { bacteria: 4, viruses: 5, protozoa: 4 },
    });
  });
});

describe('filters by their pores', () => {
  // CDC, backcountry guide: protozoa 1 µm or less, bacteria 0.3 µm or less, viruses not by filters alone.
  it.each([
    [1.01, { bacteria: false, protozoa: false }],
    [1, { bacteria: false, protozoa: true }],
    [0.31, { bacteria: false, protozoa: true }],
    [0.3, { bacteria: true, protozoa: true }],
    [0.01, { bacteria: true, protozoa: true }],
  ])('pores of %d µm count: %j, never for viruses', (poreMicron, counts) => {
    const { logs } = effectOf({ kind: 'microfilter', poreMicron });
    expect({ bacteria: logs.bacteria > 0, protozoa: logs.protozoa > 0 }).toEqual(counts);
    expect(logs.viruses).toBe(0);
  });

  it('an ultrafilter of 0.01 µm counts for viruses only by its stated log (common practice)', () => {
    const { logs } = effectOf({ kind: 'ultrafilter', poreMicron: 0.01, logs: { viruses: 2.5 } });
    expect(logs).toEqual({ bacteria: 3, viruses: 2.5, protozoa: 3 });
  });

  it('say with each credit which pores they have and which would do', () => {
    // CDC: 1 µm for protozoa, 0.3 µm for bacteria.
    const { why } = effectOf({ kind: 'microfilter', poreMicron: 0.5 });
    const [bacteria, , protozoa] = ['bacteria', 'viruses', 'protozoa'].map(
      (germs) => why.find(({ facts }) => 'germs' in facts && facts.germs === germs)?.facts,
    );
    expect(bacteria).toMatchObject({
      log: 0,
      why: { phrase: 'pores-too-wide', facts: { poreMicron: 0.5, mostMicron: 0.3 } },
    });
    expect(protozoa).toMatchObject({
      log: 3,
      why: { phrase: 'pores-narrow', facts: { poreMicron: 0.5, mostMicron: 1 } },
    });
  });

  it.each([{ kind: 'chlorine', mgPerLitre: 2 }, { kind: 'boiling' }] as const)(
    'a stage that takes time counts for nothing where none is told, and says so: %j',
    (stage) => {
      const { logs, nothing, why } = effectOf(stage);
      expect(logs).toEqual(NOTHING);
      expect(nothing).toEqual({ phrase: 'time-untold', facts: {} });
      expect(why).toEqual([
        { phrase: 'counts-for-nothing', facts: { why: { phrase: 'time-untold', facts: {} } } },
      ]);
    },
  );

  it('nothing told counts for nothing', () => {
    expect(effectOf({ kind: 'ultrafilter' }).logs).toEqual(NOTHING);
  });

  it.each([
    ['it may have frozen', { kind: 'ultrafilter', poreMicron: 0.01, mayHaveFrozen: true }],
    ['used up', { kind: 'ultrafilter', poreMicron: 0.01, lifeLitres: 500, usedLitres: 500 }],
    ['clogs', { kind: 'ultrafilter', poreMicron: 0.01, standsNtu: 0.1 }],
  ] as const)('counts for nothing where it %s', (why, stage) => {
    const effect = effectOf(stage);
    expect(effect.logs).toEqual(NOTHING);
    expect(textsOf(effect.why).join()).toContain(why);
  });

  it('a line that may have frozen takes its membranes with it, and nothing else', () => {
    const line = lineOf(
      [{ kind: 'carbon' }, { kind: 'microfilter' }, { kind: 'reverse-osmosis' }, { kind: 'uv' }],
      { mayHaveFrozen: true },
    );
    expect(line.stages.map((stage) => stage.mayHaveFrozen)).toEqual([false, true, true, false]);
  });
});

describe('boiling', () => {
  // CDC: rolling boil 1 min; above 2,000 m (6,562 ft) 3 min. EPA WSG 11 alike.
  it.each([
    [0, 1],
    [2000, 1],
    [2001, 3],
    [null, 3],
  ])('at %j m takes %d min', (altitudeM, minutes) => {
    expect(boilMinutes(altitudeM)).toBe(minutes);
    const seconds = (less: number) => effectOf({ kind: 'boiling', minutes: minutes - less }, { altitudeM });
    expect(seconds(0.01).logs).toEqual(NOTHING);
    expect(seconds(0).logs).toEqual({ bacteria: 6, viruses: 6, protozoa: 6 });
  });

  it.each([
    [1500, true],
    [1000, false],
    [2100, false],
  ])('at %d m tells of the disagreement in the EPA leaflet: %j', (altitudeM, told) => {
    const { why } = effectOf({ kind: 'boiling', minutes: 3 }, { altitudeM });
    expect(textsOf(why).some((one) => one.includes('5,000 feet and 1,000 m'))).toBe(told);
  });

  // ICAO standard atmosphere with Antoine (A 8.07131, B 1730.63, C 233.426 mmHg, °C).
  it.each([
    [0, 100.0],
    [1000, 96.7],
    [1524, 94.9],
    [2000, 93.4],
    [3000, 90.0],
    [4000, 86.7],
    [5000, 83.3],
  ])('water at %d m boils at %d °C', (altitudeM, celsius) => {
    expect(Math.abs(boilingPointC(altitudeM) - celsius)).toBeLessThanOrEqual(0.05 + 1e-9);
  });
});

describe('chlorine', () => {
  const CHLORINE = { kind: 'chlorine', mgPerLitre: 2, minutes: 30 } as const;
  const counts = (stage: Partial<TreatmentFile['stages'][number]>, water: Partial<Conditions>) =>
    effectOf({ ...CHLORINE, ...stage }, water).logs.bacteria > 0;

  it.each([
    // WHO: at least 30 minutes, pH below 8.0, below 5 NTU.
    [{}, {}, true],
    [{ minutes: 29 }, {}, false],
    [{}, { ph: 8 }, false],
    [{}, { ph: 7.9 }, true],
    [{}, { turbidityNtu: 4.9 }, true],
    [{}, { turbidityNtu: 5 }, false],
    // Lantagne (2008): 2.0 mg/l below 10 NTU, 4.0 mg/l from 10 to 100 NTU.
    [{ mgPerLitre: 1.9 }, {}, false],
    [{ standsNtu: 100 }, { turbidityNtu: 9 }, true],
    [{ standsNtu: 100 }, { turbidityNtu: 10 }, false],
    [{ standsNtu: 100, mgPerLitre: 4 }, { turbidityNtu: 100 }, true],
    [{ standsNtu: 1000, mgPerLitre: 50 }, { turbidityNtu: 101 }, false],
    // EPA: double the dose in very cold water.
    [{}, { temperatureC: 4 }, false],
    [{ mgPerLitre: 4 }, { temperatureC: 4 }, true],
  ])('%j in %j counts: %j', (stage, water, expected) => expect(counts(stage, water)).toBe(expected));

  it('is never credited with protozoa (CDC: not effective against Cryptosporidium)', () => {
    expect(effectOf(CHLORINE).logs.protozoa).toBe(0);
  });

  it('tells what nobody measured', () => {
    expect(effectOf(CHLORINE, { ph: null, temperatureC: null }).unmeasured).toHaveLength(2);
    expect(effectOf(CHLORINE).unmeasured).toEqual([]);
  });

  // EPA leaflet: 8 drops of 6 % or 6 drops of 8.25 % bleach to a US gallon; arithmetic: 6.3 and 6.5 mg/l.
  it.each([
    [8, 6, 6.3],
    [6, 8.25, 6.5],
  ])('%d drops of %d percent bleach to a gallon are %d mg/l', (drops, percent, mgPerLitre) => {
    expect(mgPerLitreOfDrops(drops, percent, 3.785)).toBeCloseTo(mgPerLitre, 1);
  });

  it('shows its dose in drops of bleach', () => {
    const { why } = effectOf({ ...CHLORINE, mgPerLitre: (8 * 0.05 * 60) / 3.785 });
    expect(textsOf(why)[0]).toContain('are 2.11 drops of 6 % bleach a litre');
  });
});

describe('UV', () => {
  const counts = (stage: Partial<TreatmentFile['stages'][number]>, water: Partial<Conditions> = {}) =>
    effectOf({ kind: 'uv', ...stage }, water).logs.viruses > 0;

  it.each([
    // NSF/ANSI 55: class A 40 mJ/cm2 for clear contaminated water; class B, 16, only for water fit to drink.
    [{ doseMJPerCm2: 40 }, {}, true],
    [{ doseMJPerCm2: 39.9 }, {}, false],
    [{ doseMJPerCm2: 16, logs: { viruses: 4 } }, {}, false],
    [{}, {}, false],
    [{ doseMJPerCm2: 40 }, { turbidityNtu: 2 }, false],
    [{ doseMJPerCm2: 40, standsNtu: 5 }, { turbidityNtu: 2 }, true],
    [{ doseMJPerCm2: 40, flowLPerMin: 4 }, { flowLPerMin: 5 }, false],
    [{ doseMJPerCm2: 40, flowLPerMin: 4 }, { flowLPerMin: 4 }, true],
    [{ doseMJPerCm2: 40, flowLPerMin: 4 }, { flowLPerMin: null }, true],
  ])('%j in %j counts: %j', (stage, water, expected) => expect(counts(stage, water)).toBe(expected));
});

describe('a filter and cloudy water', () => {
  const filter = { kind: 'ultrafilter', poreMicron: 0.01, name: 'fine' } as const;

  it('clogs above what it stands, and counts for nothing then', () => {
    const cloudy = (turbidityNtu: number) => effectOf({ ...filter, standsNtu: 20 }, { turbidityNtu });
    expect(cloudy(20).clogs).toBe(false);
    expect(cloudy(21)).toMatchObject({
      clogs: true,
      nothing: { phrase: 'water-clogs', facts: { ntu: 21, standsNtu: 20 } },
    });
  });

  it('is no matter of water that is boiled: nothing clogs, and no cloudiness is left to be told', () => {
    const { unmeasured, leavesNtu, clogs } = effectOf({ kind: 'boiling', minutes: 3 }, { turbidityNtu: 50 });
    expect([unmeasured, leavesNtu, clogs]).toEqual([[], 50, false]);
  });

  it('says which filter nobody told the cloudiness of', () => {
    const untold = (turbidityNtu: number) => effectOf(filter, { turbidityNtu }).unmeasured;
    expect(untold(50)).toContainEqual({ phrase: 'cloudiness-untold', facts: { stage: 'fine' } });
    expect(untold(0.5)).toEqual([]);
  });
});
