import { describe, expect, test } from 'vitest';
import type { TreatmentFile } from '../../../../../server/contract/treatment.ts';
import { mlFor } from '../../../../../server/core/treatment/line/disinfecting/chlorine.ts';
import { uvLog } from '../../../../../server/core/treatment/line/disinfecting/uv.ts';
import { stageEffect } from '../../../../../server/core/treatment/line/stage-effect.ts';
import { EASY, lineOf, textsOf } from '../../lines.ts';

const effectOf = (stage: TreatmentFile['stages'][number], flowLPerMin: number | null = null) => {
  const [first] = lineOf([stage]).stages;
  if (first === undefined) throw new Error('no stage');
  return stageEffect(first, { ...EASY, flowLPerMin });
};

describe('what a dose of UV is credited with', () => {
  // US EPA, LT2ESWTR: 0.5, 1.0 … 4.0 log.
  test.each([
    ['protozoa', [1.6, 2.5, 3.9, 5.8, 8.5, 12, 15, 22]],
    ['viruses', [58, 79, 100, 121, 143, 163, 186].map((dose) => dose)],
  ] as const)('of %s is that of the published table', (germs, doses) => {
    const first = germs === 'protozoa' ? 0.5 : 1;
    for (const [index, dose] of doses.entries()) {
      expect(uvLog(dose, germs)).toBe(first + index / 2);
      expect(uvLog(dose - 0.01, germs)).toBe(first + index / 2 - 0.5);
    }
    expect(uvLog(1000, germs)).toBe(4);
  });

  test('of a lamp of class A: cysts in full, of viruses half a log', () => {
    expect(effectOf({ kind: 'uv', doseMJPerCm2: 40 }).logs).toEqual({
      bacteria: 3,
      viruses: 0.5,
      protozoa: 4,
    });
  });

  test('of a weak lamp: cysts only, whatever else its maker states', () => {
    const weak = effectOf({ kind: 'uv', doseMJPerCm2: 12, logs: { bacteria: 6, viruses: 4, protozoa: 4 } });
    expect(weak.logs).toEqual({ bacteria: 0, viruses: 0, protozoa: 3 });
  });

  test('of a lamp of class A with stated reductions: those', () => {
    expect(effectOf({ kind: 'uv', doseMJPerCm2: 40, logs: { viruses: 4 } }).logs.viruses).toBe(4);
  });
});

test('a filter counts for nothing above the flow that it is rated for', () => {
  const filter = { kind: 'ultrafilter' as const, poreMicron: 0.01, flowLPerMin: 3 };
  expect(effectOf(filter, 3).logs.bacteria).toBe(3);
  expect(effectOf(filter, 3.1).logs.bacteria).toBe(0);
  expect(effectOf(filter).unmeasured).toMatchObject([{ phrase: 'flow-taken' }]);
});

describe('a dose of chlorine', () => {
  test('is told in millilitres of the product: 2 mg/l are 0.33 ml of 6 % for 10 l, 0.4 ml of 5 %', () => {
    expect(mlFor(2, 6, 10)).toBeCloseTo(1 / 3, 12);
    const chlorine = { kind: 'chlorine' as const, mgPerLitre: 2, minutes: 30 };
    expect(textsOf(effectOf(chlorine).why).join()).toContain('0.33 ml for 10 l');
    const weak = effectOf({ ...chlorine, productPercent: 5 });
    expect(textsOf(weak.why).join()).toContain('5 % bleach a litre (20 drops a ml), 0.4 ml for 10 l');
  });
});

test('where water boils is told to the degree', () => {
  const line = lineOf([{ kind: 'boiling', minutes: 3 }]);
  const [stage] = line.stages;
  if (stage === undefined) throw new Error('no stage');
  const said = textsOf(stageEffect(stage, { ...EASY, altitudeM: 3000 }).why).join();
  expect(said).toMatch(/water boils at 90 °C/);
});
