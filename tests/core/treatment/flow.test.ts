import { describe, expect, it } from 'vitest';
import type { TreatmentFile } from '../../../server/contract/treatment.ts';
import {
  dropKPa,
  hazenWilliamsM,
  hoseDropKPa,
  hoseSpeed,
  pumpKPa,
} from '../../../server/core/treatment/line/flow/hydraulics.ts';
import { codesOf, LAMP, reportOn, ULTRAFILTER } from './lines.ts';

const KPA_PER_PSI = 6.894757;

describe('a smooth hose', () => {
  // Darcy-Weisbach with Swamee and Jain's factor, water at 20 °C, smooth hose of 10 m and 12 mm (arithmetic).
  const hose = { lengthM: 10, boreMm: 12 };

  it('loses 24.34 kPa at 10 l/min', () => {
    expect(hoseSpeed(hose, 10)).toBeCloseTo(1.4737, 4);
    const lost = hoseDropKPa(hose, 10);
    expect(lost).toBeCloseTo(24.34, 2);
    const factor = (lost * 1000 * 2 * 0.012) / (10 * 998.2 * hoseSpeed(hose, 10) ** 2);
    expect(factor).toBeCloseTo(0.02695, 5);
  });

  it("loses 8.7 % less by Hazen and Williams's formula, which is poor for small bores", () => {
    const head = hazenWilliamsM(hose, 10, 150);
    expect(head).toBeCloseTo(2.27, 3);
    const kPa = (head * 998.2 * 9.80665) / 1000;
    expect(kPa).toBeCloseTo(22.2, 1);
    expect(1 - kPa / hoseDropKPa(hose, 10)).toBeCloseTo(0.087, 3);
    // The classic size: 10 l/s, 100 mm, C 100, 100 m.
    expect(hazenWilliamsM({ lengthM: 100, boreMm: 100 }, 600, 100)).toBeCloseTo(3.094, 3);
  });

  it('loses in proportion to a slow flow (laminar, 64/Re), nothing at rest', () => {
    expect(hoseDropKPa(hose, 0.5)).toBeCloseTo(hoseDropKPa(hose, 0.25) * 2, 12);
    expect(hoseDropKPa(hose, 0)).toBe(0);
  });
});

describe('drops and pump', () => {
  const drop = { kPa: 30, atLPerMin: 5 };

  it('a filter loses in proportion to the flow, a fitting by its square', () => {
    expect(dropKPa(drop, 'linear', 10)).toBe(60);
    expect(dropKPa(drop, 'square', 10)).toBe(120);
  });

  it('a pump runs on a straight line between its two points', () => {
    const pump = { noFlowKPa: 300, ratedKPa: 100, ratedLPerMin: 10 };
    expect([0, 5, 10].map((flow) => pumpKPa(pump, flow))).toEqual([300, 200, 100]);
  });
});

describe('the taps of a line of three filters', () => {
  const drop = { kPa: 60, atLPerMin: 4 };
  const STAGES: TreatmentFile['stages'] = [
    { kind: 'sediment', poreMicron: 5, drop },
    { kind: 'carbon', poreMicron: 0.5, drop },
    { ...ULTRAFILTER, drop },
    LAMP,
  ];
  const TAPS: TreatmentFile['taps'] = [
    { name: 'shower', afterStage: 0, use: 'shower' },
    { name: 'sink', afterStage: 1, use: 'kitchen' },
    { name: 'drinking', afterStage: 4, use: 'drinking' },
  ];
  const regulated = (psi: number) => ({
    noFlowKPa: psi * KPA_PER_PSI,
    ratedKPa: psi * KPA_PER_PSI - 150,
    ratedLPerMin: 12,
  });
  const tapsAt = (psi: number, rest: Partial<TreatmentFile> = {}) =>
    reportOn(STAGES, { pump: regulated(psi), taps: TAPS, ...rest }).taps;

  it('have less flow the further down they are', () => {
    const flows = tapsAt(45).map((tap) => tap.flowLPerMin ?? Number.NaN);
    expect(flows[0]).toBe(12);
    expect(flows[1]).toBeLessThan(flows[0]!);
    expect(flows[2]).toBeLessThan(flows[1]!);
    // By hand: 310.264 - 12.5 q = 3 × 15 q.
    expect(flows[2]).toBeCloseTo(310.264065 / 57.5, 6);
  });

  it('keep the last one running better at 50 psi than at 45 psi (common practice)', () => {
    expect(tapsAt(50)[2]!.flowLPerMin).toBeGreaterThan(tapsAt(45)[2]!.flowLPerMin!);
  });

  it('show what takes the pressure, down to nothing', () => {
    const working = tapsAt(45)[2]!.working;
    expect(working.map((term) => term.label)).toEqual([
      'pump at that flow',
      '1 sediment',
      '2 carbon',
      '3 ultrafilter',
    ]);
    expect(working.reduce((sum, term) => sum + term.value, 0)).toBeCloseTo(0, 6);
  });

  it('have the grade of the stages before them', () => {
    expect(tapsAt(45).map((tap) => tap.grade)).toEqual(['washing', 'washing', 'drinking']);
    const codes = codesOf(reportOn(STAGES, { pump: regulated(45), taps: TAPS }));
    expect(codes.filter((code) => code === 'tap-not-drinking')).toHaveLength(1);
  });

  it('starve behind filters that take too much', () => {
    const tight = STAGES.map((stage) => ({ ...stage, drop: { kPa: 200, atLPerMin: 1 } }));
    const report = reportOn(tight, { pump: regulated(45), taps: TAPS });
    expect(report.taps.map((tap) => tap.starves)).toEqual([false, true, true]);
    expect(codesOf(report).filter((code) => code === 'tap-starves')).toHaveLength(2);
  });

  it('are taken as measured where somebody measured', () => {
    const taps = [{ ...TAPS[2]!, measuredLPerMin: 0.4 }];
    const [tap] = tapsAt(45, { taps });
    expect(tap).toMatchObject({ flowLPerMin: 0.4, flowFrom: 'measured', starves: true });
  });

  it('are not guessed where a drop or the pump was not told', () => {
    const [sediment, carbon] = STAGES;
    const { drop: _, ...bare } = carbon!;
    const report = reportOn([sediment!, bare], {
      pump: regulated(45),
      taps: [{ ...TAPS[1]!, afterStage: 2 }],
    });
    expect(report.taps[0]).toMatchObject({ flowLPerMin: null, flowFrom: 'unknown', starves: false });
    const caution = report.cautions.find(({ code }) => code === 'tap-flow-unknown');
    expect(caution?.text).toContain('the pressure drop of 2 carbon');
    const noPump = reportOn(STAGES, { taps: TAPS });
    expect(noPump.taps.map((tap) => tap.flowLPerMin)).toEqual([null, null, null]);
  });

  it('run slower through a long hose', () => {
    const hoses = [{ afterStage: 0, lengthM: 20, boreMm: 8 }];
    expect(tapsAt(45, { hoses })[0]!.flowLPerMin).toBeLessThan(12);
  });

  it('behind reverse osmosis give at most what it makes, and its feed loses the pressure', () => {
    const osmosis = { kind: 'reverse-osmosis' as const, recovery: 0.25, drop: { kPa: 0, atLPerMin: 1 } };
    const tap = { name: 'drinking', afterStage: 2, use: 'drinking' as const };
    const line = (flowLPerMin?: number) =>
      reportOn([STAGES[0]!, { ...osmosis, ...(flowLPerMin === undefined ? {} : { flowLPerMin }) }], {
        pump: regulated(45),
        taps: [tap],
      }).taps[0]!.flowLPerMin;
    // Four litres pass the sediment filter for one at the tap: 310.264 - 12.5 q = 15 q in what is pumped.
    expect(line()).toBeCloseTo(310.264065 / 27.5 / 4, 6);
    expect(line(0.3)).toBe(0.3);
  });

  it('too fast for the lamp are not of drinking grade', () => {
    const slow = [...STAGES.slice(0, 3), { ...LAMP, flowLPerMin: 2 }];
    expect(reportOn(slow, { pump: regulated(45), taps: TAPS }).taps[2]!.grade).toBe('washing');
  });
});

describe('cartridges', () => {
  const STAGES: TreatmentFile['stages'] = [
    { kind: 'sediment', poreMicron: 5, lifeLitres: 100, usedLitres: 40, backwash: true },
    { ...ULTRAFILTER, lifeLitres: 5000 },
    LAMP,
  ];

  it('take the water of the trip: 7 days at 10 l are 70 l', () => {
    const { cartridges, cautions } = reportOn(STAGES);
    expect(cartridges.map(({ litres, leftLitres }) => [litres, leftLitres])).toEqual([
      [70, -10],
      [70, 4930],
    ]);
    expect(cautions.find(({ code }) => code === 'cartridge-spent')?.text).toContain(
      '10 l more than it has left',
    );
  });

  it('before reverse osmosis take what it throws away as well', () => {
    const [cartridge] = reportOn([STAGES[0]!, { kind: 'reverse-osmosis', recovery: 0.5 }]).cartridges;
    expect(cartridge!.litres).toBe(140);
    expect(cartridge!.working.reduce((sum, term) => sum + term.value, 0)).toBe(140);
  });

  it('of unknown life have nothing left to tell', () => {
    expect(reportOn([ULTRAFILTER]).cartridges[0]).toMatchObject({ lifeLitres: null, leftLitres: null });
  });
});
