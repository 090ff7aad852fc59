import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GERM_CLASSES, type TreatmentFile } from '../../../server/contract/treatment.ts';
import {
  balancedFlow,
  dropKPa,
  hoseDropKPa,
  pumpKPa,
} from '../../../server/core/treatment/line/flow/hydraulics.ts';
import { lineEffect } from '../../../server/core/treatment/line/line-effect.ts';
import type { Conditions } from '../../../server/core/treatment/line/stage-effect.ts';
import { EASY, lineOf } from './lines.ts';

type StageFile = TreatmentFile['stages'][number];

const log = fc.double({ min: 0, max: 7, noNaN: true });
const logs = fc.record({ bacteria: log, viruses: log, protozoa: log }, { requiredKeys: [] });
const pore = fc.constantFrom(0.005, 0.02, 0.2, 0.3, 0.9, 5, 20);
const ntu = fc.constantFrom(0, 0.5, 1, 4, 6, 12, 60, 200);
const filter = fc.record(
  {
    kind: fc.constantFrom<StageFile['kind']>(
      'sediment',
      'carbon',
      'microfilter',
      'ultrafilter',
      'reverse-osmosis',
    ),
    poreMicron: pore,
    logs,
    standsNtu: ntu,
    leavesNtu: ntu,
    mayHaveFrozen: fc.boolean(),
  },
  { requiredKeys: ['kind'] },
);
const lamp = fc.record(
  { kind: fc.constant('uv' as const), doseMJPerCm2: fc.constantFrom(16, 40, 60), logs, standsNtu: ntu },
  { requiredKeys: ['kind', 'doseMJPerCm2'] },
);
const chlorine = fc.record({
  kind: fc.constant('chlorine' as const),
  mgPerLitre: fc.constantFrom(1, 2, 4, 8),
  minutes: fc.constantFrom(10, 30, 60),
});
const boiling = fc.record({ kind: fc.constant('boiling' as const), minutes: fc.constantFrom(0.5, 1, 3) });
const anyStage: fc.Arbitrary<StageFile> = fc.oneof(filter, lamp, chlorine, boiling);
const anyStages = fc.array(anyStage, { minLength: 1, maxLength: 6 });
const anyWater: fc.Arbitrary<Conditions> = fc.record({
  turbidityNtu: ntu,
  ph: fc.option(fc.double({ min: 5, max: 10, noNaN: true })),
  temperatureC: fc.option(fc.double({ min: 0, max: 40, noNaN: true })),
  altitudeM: fc.option(fc.double({ min: 0, max: 5000, noNaN: true })),
  flowLPerMin: fc.constant(null),
});

describe('a treatment line', () => {
  it('never takes out less for a stage added anywhere', () => {
    fc.assert(
      fc.property(anyStages, anyStage, fc.nat(6), anyWater, (stages, added, place, water) => {
        const before = lineEffect(lineOf(stages), water).logs;
        const longer = [...stages.slice(0, place), added, ...stages.slice(place)];
        const after = lineEffect(lineOf(longer), water).logs;
        for (const germs of GERM_CLASSES) expect(after[germs]).toBeGreaterThanOrEqual(before[germs] - 1e-9);
      }),
    );
  });

  it('takes out the same in whatever order its stages come, in clear water', () => {
    // A maximum of 12 is above what the stages reach seldom enough for the sums to show.
    // Chlorine before a membrane of reverse osmosis spoils it, and carbon before it keeps it: there the order matters.
    const has = (stages: readonly { kind: string }[], kind: string) =>
      stages.some((stage) => stage.kind === kind);
    const indifferent = anyStages.filter(
      (stages) => !(has(stages, 'reverse-osmosis') && (has(stages, 'chlorine') || has(stages, 'carbon'))),
    );
    const shuffled = indifferent.chain((stages) =>
      fc.tuple(
        fc.constant(stages),
        fc.shuffledSubarray(stages, { minLength: stages.length, maxLength: stages.length }),
      ),
    );
    fc.assert(
      fc.property(shuffled, ([stages, other]) => {
        const clear = { ...EASY, turbidityNtu: 0 };
        const [one, two] = [stages, other].map(
          (list) => lineEffect(lineOf(list, { maximumLog: 12 }), clear).logs,
        );
        for (const germs of GERM_CLASSES) expect(one![germs]).toBeCloseTo(two![germs], 9);
      }),
    );
  });

  it('is never credited with more than its maximum', () => {
    fc.assert(
      fc.property(anyStages, fc.double({ min: 1, max: 12, noNaN: true }), (stages, maximumLog) => {
        const { logs: total } = lineEffect(lineOf(stages, { maximumLog }), EASY);
        for (const germs of GERM_CLASSES) expect(total[germs]).toBeLessThanOrEqual(maximumLog);
      }),
    );
  });

  it('never takes out more from cloudier water', () => {
    fc.assert(
      fc.property(anyStages, anyWater, ntu, (stages, water, more) => {
        const clearer = lineEffect(lineOf(stages), water).logs;
        const cloudier = lineEffect(lineOf(stages), {
          ...water,
          turbidityNtu: water.turbidityNtu + more,
        }).logs;
        for (const germs of GERM_CLASSES) {
          expect(cloudier[germs]).toBeLessThanOrEqual(clearer[germs] + 1e-9);
        }
      }),
    );
  });
});

describe('pressure', () => {
  const flow = fc.double({ min: 0, max: 60, noNaN: true });
  const drop = fc.record({
    kPa: fc.double({ min: 0, max: 500, noNaN: true }),
    atLPerMin: fc.double({ min: 0.1, max: 30, noNaN: true }),
  });
  const hose = fc.record({
    lengthM: fc.double({ min: 0.1, max: 50, noNaN: true }),
    boreMm: fc.double({ min: 3, max: 40, noNaN: true }),
  });

  it('more flow is never less drop', () => {
    fc.assert(
      fc.property(flow, flow, drop, hose, fc.constantFrom('linear', 'square'), (a, b, lost, tube, law) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        // Flows that differ by the last bit only may come out a bit the other way round.
        const upToABit = (kPa: number) => kPa * (1 - 1e-14);
        expect(dropKPa(lost, law, more)).toBeGreaterThanOrEqual(upToABit(dropKPa(lost, law, less)));
        expect(hoseDropKPa(tube, more)).toBeGreaterThanOrEqual(upToABit(hoseDropKPa(tube, less)));
      }),
    );
  });

  it('is in balance at the flow found, or the pump gives its rated flow', () => {
    fc.assert(
      fc.property(drop, (lost) => {
        const pump = { noFlowKPa: 345, ratedKPa: 100, ratedLPerMin: 12 };
        const found = balancedFlow(pump, (lPerMin) => dropKPa(lost, 'linear', lPerMin));
        if (found === pump.ratedLPerMin)
          expect(pumpKPa(pump, found)).toBeGreaterThanOrEqual(dropKPa(lost, 'linear', found));
        else expect(dropKPa(lost, 'linear', found)).toBeCloseTo(pumpKPa(pump, found), 4);
      }),
    );
  });
});
