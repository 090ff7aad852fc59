import { describe, expect, it } from 'vitest';
import type { TreatmentFile } from '../../../../server/contract/treatment.ts';
import type { Assumption } from '../../../../server/core/quantity/assumption.ts';
import { EXPECTED } from '../../../../server/core/treatment/line/hazards.ts';
import { settleTreatment } from '../../../../server/core/treatment/line/settle-treatment.ts';

function settle(file: TreatmentFile) {
  const assumptions: Assumption[] = [];
  const result = settleTreatment(file, (path, value, why) => assumptions.push({ path, value, why }));
  return { ...result, told: assumptions.map(({ path, value, why }) => [path, value, why]) };
}

/** Where the user says nothing of any kind. */
const HAZARDS = Object.fromEntries(
  Object.entries(EXPECTED).map(([kind, expected]) => [
    kind,
    { ...expected, why: { phrase: 'expected-of', facts: { kind } } },
  ]),
);
const PURIFIER = { bacteria: 6, viruses: 4, protozoa: 3 };

describe('what a treatment line leaves out', () => {
  it('is told one by one, with what is taken and why', () => {
    const { treatment, told } = settle({ stages: [{ kind: 'uv' }] });
    expect(told).toEqual([
      [
        '/treatment/target',
        { phrase: 'target', facts: { name: 'purifier', logs: PURIFIER } },
        { phrase: 'strictest-for-bacteria', facts: {} },
      ],
      [
        '/treatment/maximumLog',
        { phrase: 'log', facts: { log: 6 } },
        { phrase: 'tests-seldom-more', facts: {} },
      ],
      ['/treatment/at', { phrase: 'word', facts: { word: 'tap' } }, { phrase: 'raw-water-worse', facts: {} }],
      [
        '/treatment/treatEverything',
        { phrase: 'no', facts: {} },
        { phrase: 'stated-fit-as-it-comes', facts: {} },
      ],
    ]);
    expect(treatment).toMatchObject({
      stages: [{ name: '1 uv', mayHaveFrozen: false }],
      target: { name: 'purifier', logs: PURIFIER },
      maximumLog: 6,
      at: 'tap',
      treatEverything: false,
      pump: null,
      taps: [],
      hoses: [],
      hazards: HAZARDS,
    });
  });

  it('is nothing where all is told, and what is told stays', () => {
    const file: TreatmentFile = {
      stages: [{ kind: 'reverse-osmosis', name: 'small one', recovery: 0.3 }],
      target: { bacteria: 1, viruses: 2, protozoa: 3 },
      maximumLog: 5,
      at: 'filling',
      treatEverything: true,
      pump: { noFlowKPa: 345, ratedKPa: 100, ratedLPerMin: 10 },
      taps: [{ name: 'sink', afterStage: 1, use: 'drinking', measuredLPerMin: 2 }],
      hoses: [{ afterStage: 0, lengthM: 3, boreMm: 12 }],
    };
    const { treatment, settled, told } = settle(file);
    expect(told).toEqual([]);
    expect(settled).toEqual(file);
    expect(treatment).toMatchObject({
      target: { name: 'custom', logs: { bacteria: 1, viruses: 2, protozoa: 3 } },
      maximumLog: 5,
      at: 'filling',
      treatEverything: true,
      pump: file.pump,
      taps: [{ name: 'sink', measuredLPerMin: 2, drop: null }],
      hoses: file.hoses,
    });
  });

  it('of a small reverse osmosis is that it makes a quarter clean; stages are named by place and kind', () => {
    const { settled, told } = settle({
      stages: [{ kind: 'sediment', name: 'coarse' }, { kind: 'reverse-osmosis' }],
    });
    expect(told.at(-1)).toEqual([
      '/treatment/stages/1/recovery',
      { phrase: 'number', facts: { value: 0.25 } },
      { phrase: 'small-osmosis', facts: {} },
    ]);
    expect(settled.stages).toEqual([
      { kind: 'sediment', name: 'coarse' },
      { kind: 'reverse-osmosis', name: '2 reverse-osmosis', recovery: 0.25 },
    ]);
  });
});

describe('a frost', () => {
  const KINDS = [
    'sediment',
    'carbon',
    'microfilter',
    'ultrafilter',
    'reverse-osmosis',
    'uv',
    'boiling',
  ] as const;

  it('on the whole line tears its membranes, and nothing else', () => {
    const { treatment } = settle({ stages: KINDS.map((kind) => ({ kind })), mayHaveFrozen: true });
    const torn = treatment.stages.filter(({ mayHaveFrozen }) => mayHaveFrozen).map(({ kind }) => kind);
    expect(torn).toEqual(['microfilter', 'ultrafilter', 'reverse-osmosis']);
  });

  it('on one stage is of that stage, whatever it is', () => {
    const { treatment } = settle({
      stages: [{ kind: 'sediment', mayHaveFrozen: true }, { kind: 'microfilter' }],
    });
    expect(treatment.stages.map(({ mayHaveFrozen }) => mayHaveFrozen)).toEqual([true, false]);
  });
});

describe('what the user says of a kind of source', () => {
  it('stands over what is expected of it, and says that it is the user’s', () => {
    const { treatment } = settle({ stages: [], hazards: { spring: { turbidityNtu: 7 } } });
    const why = { phrase: 'own-figures', facts: {} };
    const expected = { ...HAZARDS.spring, turbidityNtu: 7, why };
    expect(treatment.hazards.spring).toEqual(expected);
    expect(treatment.hazards.river).toEqual(HAZARDS.river);
  });

  it('stands with the user’s reason where one is given', () => {
    const { treatment } = settle({ stages: [], hazards: { bore: { salt: 'no', why: 'tested' } } });
    const why = { phrase: 'own-words', facts: { words: 'tested' } };
    expect(treatment.hazards.bore).toEqual({ ...HAZARDS.bore, salt: 'no', why });
  });
});
