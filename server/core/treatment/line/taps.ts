import type { TapUse } from '../../../contract/treatment.ts';
import type { FlowGap, PressureLabel } from '../../phrases/rig/treatment.ts';
import type { Term } from '../../quantity/term.ts';
import { balancedFlow, type DropLaw, dropKPa, hoseDropKPa, pumpKPa } from './flow/hydraulics.ts';
import { lineEffect } from './line-effect.ts';
import { lacksOf } from './logs.ts';
import type { TapReport } from './report.ts';
import type { Conditions } from './stage-effect.ts';
import type { Stage, Tap, Treatment } from './treatment.ts';

/** Below this a tap starves, litres per minute (ours). */
export const LEAST_FLOW: Record<TapUse, number> = { drinking: 1, kitchen: 2, shower: 3 };

/** Stages that the water of a pump is not pressed through: dosed or boiled in a vessel. */
const IN_A_VESSEL: readonly Stage['kind'][] = ['chlorine', 'boiling'];

/** Through a filter in proportion to the flow (Darcy's law); through the chamber of a lamp by its square. */
const lawOf = (stage: Stage): DropLaw => (stage.kind === 'uv' ? 'square' : 'linear');

interface Part {
  label: PressureLabel;
  lostKPa: (tapFlow: number) => number;
}

export interface TapFlow {
  flowLPerMin: number | null;
  flowFrom: 'measured' | 'estimate' | 'unknown';
  working: readonly Term[];
  /** What is missing for an estimate. */
  missing: readonly FlowGap[];
}

/** How much water goes into a stage for a litre at the tap: reverse osmosis throws the rest away. */
export function feedFactor(stages: readonly Stage[], from: number, upTo: number): number {
  return stages.slice(from, upTo).reduce((factor, stage) => {
    const recovery = stage.kind === 'reverse-osmosis' ? (stage.recovery ?? 1) : 1;
    return factor / recovery;
  }, 1);
}

/** What takes pressure between pump and tap, each as a function of the flow at the tap; and what nobody told. */
function partsBefore(line: Treatment, tap: Tap): { parts: Part[]; missing: FlowGap[] } {
  const parts: Part[] = [];
  const missing: FlowGap[] = [];
  for (const hose of line.hoses.filter((one) => one.afterStage <= tap.afterStage)) {
    const factor = feedFactor(line.stages, hose.afterStage, tap.afterStage);
    parts.push({
      label: { phrase: 'hose-of', facts: { lengthM: hose.lengthM, boreMm: hose.boreMm } },
      lostKPa: (flow) => hoseDropKPa(hose, flow * factor),
    });
  }
  for (const [index, stage] of line.stages.slice(0, tap.afterStage).entries()) {
    if (IN_A_VESSEL.includes(stage.kind)) continue;
    const { drop } = stage;
    if (drop === undefined) {
      if (stage.kind !== 'uv') missing.push({ phrase: 'drop-untold', facts: { stage: stage.name } });
      continue;
    }
    const factor = feedFactor(line.stages, index, tap.afterStage);
    const label: PressureLabel = { phrase: 'own-name', facts: { name: stage.name } };
    parts.push({ label, lostKPa: (flow) => dropKPa(drop, lawOf(stage), flow * factor) });
  }
  const { drop } = tap;
  if (drop !== null) {
    const label: PressureLabel = { phrase: 'tap-named', facts: { name: tap.name } };
    parts.push({ label, lostKPa: (flow) => dropKPa(drop, 'square', flow) });
  }
  return { parts, missing };
}

/** The flow at a tap that runs alone: as measured, else where pump and line balance, at most what a membrane makes. */
function tapFlow(line: Treatment, tap: Tap): TapFlow {
  if (tap.measuredLPerMin !== null) {
    return { flowLPerMin: tap.measuredLPerMin, flowFrom: 'measured', working: [], missing: [] };
  }
  const { parts, missing } = partsBefore(line, tap);
  const { pump } = line;
  if (pump === null) missing.unshift({ phrase: 'pump-untold', facts: {} });
  if (pump === null || missing.length > 0) {
    return { flowLPerMin: null, flowFrom: 'unknown', working: [], missing };
  }
  const lostKPa = (flow: number) => parts.reduce((sum, part) => sum + part.lostKPa(flow), 0);
  const whole = feedFactor(line.stages, 0, tap.afterStage);
  // The pump moves what reverse osmosis throws away, too.
  const balanced = balancedFlow(pump, (pumped) => lostKPa(pumped / whole)) / whole;
  const made = line.stages
    .slice(0, tap.afterStage)
    .filter((stage) => stage.kind === 'reverse-osmosis')
    .map((stage) => stage.flowLPerMin ?? Infinity);
  const flow = Math.min(balanced, ...made);
  return {
    flowLPerMin: flow,
    flowFrom: 'estimate',
    working: [
      { label: { phrase: 'pump-at-flow', facts: {} }, value: pumpKPa(pump, flow * whole), unit: 'kPa' },
      ...parts.map((part) => ({ label: part.label, value: -part.lostKPa(flow), unit: 'kPa' })),
    ],
    missing: [],
  };
}

export interface TapResult {
  report: TapReport;
  missing: readonly FlowGap[];
}

/** Flow and grade of every tap, in clear water. */
export function tapResults(line: Treatment, water: Conditions): TapResult[] {
  return line.taps.map((tap) => {
    const { missing, ...flow } = tapFlow(line, tap);
    const { logs } = lineEffect(line, { ...water, flowLPerMin: flow.flowLPerMin }, tap.afterStage);
    return {
      missing,
      report: {
        name: tap.name,
        use: tap.use,
        afterStage: tap.afterStage,
        ...flow,
        logs,
        grade: lacksOf(logs, line.target.logs).length === 0 ? 'drinking' : 'washing',
        starves: flow.flowLPerMin !== null && flow.flowLPerMin < LEAST_FLOW[tap.use],
      },
    };
  });
}
