import {
  GERM_CLASSES,
  type StageKind,
  type TreatmentFile,
  type TreatmentStage,
} from '../../../contract/treatment.ts';
import { MAXIMUM_LOG, TARGET } from '../../defaults/rig-defaults.ts';
import type { Misfit } from '../../phrases/misfits.ts';
import { TARGETS } from './logs.ts';

const FILTERS: readonly StageKind[] = ['sediment', 'carbon', 'microfilter', 'ultrafilter', 'reverse-osmosis'];

/** Keys that mean something for some kinds only. */
const ONLY_FOR: Partial<Record<keyof TreatmentStage, readonly StageKind[]>> = {
  poreMicron: FILTERS,
  leavesNtu: FILTERS,
  lifeLitres: FILTERS,
  usedLitres: FILTERS,
  backwash: FILTERS,
  recovery: ['reverse-osmosis'],
  flowLPerMin: [...FILTERS, 'uv'],
  doseMJPerCm2: ['uv'],
  mgPerLitre: ['chlorine'],
  productPercent: ['chlorine'],
  minutes: ['chlorine', 'boiling'],
  drop: [...FILTERS, 'uv'],
  mayHaveFrozen: [...FILTERS, 'uv'],
  standsNtu: [...FILTERS, 'uv', 'chlorine'],
};

/** First contradiction within a treatment line, null when there is none; paths begin with /treatment. */
export function checkTreatment(line: TreatmentFile | undefined): Misfit | null {
  if (line === undefined) return null;
  return (
    stagesFit(line) ??
    germsOnce(line) ??
    pumpFalls(line) ??
    placesExist(line, 'taps') ??
    placesExist(line, 'hoses') ??
    targetWithinMaximum(line)
  );
}

function stagesFit(line: TreatmentFile): Misfit | null {
  for (const [index, stage] of line.stages.entries()) {
    for (const [key, kinds] of Object.entries(ONLY_FOR) as [keyof TreatmentStage, readonly StageKind[]][]) {
      if (stage[key] === undefined || kinds.includes(stage.kind)) continue;
      return {
        path: `/treatment/stages/${index}/${key}`,
        misfit: 'stage-key',
        facts: { key, kind: stage.kind, kinds },
      };
    }
  }
  return null;
}

function germsOnce(line: TreatmentFile): Misfit | null {
  for (const [index, stage] of line.stages.entries()) {
    for (const germs of GERM_CLASSES) {
      if (stage.logs?.[germs] === undefined || stage.stopsPercent?.[germs] === undefined) continue;
      const path = `/treatment/stages/${index}/stopsPercent/${germs}`;
      return { path, misfit: 'germs-twice', facts: { germs } };
    }
  }
  return null;
}

function pumpFalls({ pump }: TreatmentFile): Misfit | null {
  if (pump === undefined || pump.ratedKPa < pump.noFlowKPa) return null;
  const { ratedKPa, noFlowKPa } = pump;
  return { path: '/treatment/pump/ratedKPa', misfit: 'pump-rising', facts: { ratedKPa, noFlowKPa } };
}

function placesExist(line: TreatmentFile, key: 'taps' | 'hoses'): Misfit | null {
  const stages = line.stages.length;
  for (const [index, { afterStage }] of (line[key] ?? []).entries()) {
    if (afterStage <= stages) continue;
    const path = `/treatment/${key}/${index}/afterStage`;
    return { path, misfit: 'stage-missing', facts: { afterStage, stages } };
  }
  return null;
}

function targetWithinMaximum({ target = TARGET, maximumLog = MAXIMUM_LOG }: TreatmentFile): Misfit | null {
  const logs = typeof target === 'string' ? TARGETS[target] : target;
  const germs = GERM_CLASSES.find((one) => logs[one] > maximumLog);
  if (germs === undefined) return null;
  const facts = { log: logs[germs], germs, maximumLog };
  return { path: '/treatment/maximumLog', misfit: 'target-above-maximum', facts };
}
