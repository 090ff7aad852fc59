import {
  GERM_CLASSES,
  type StageKind,
  type TreatmentFile,
  type TreatmentStage,
} from '../../../contract/treatment.ts';
import type { Misfit } from '../../quantity/misfit.ts';
import { TARGETS } from './logs.ts';
import { MAXIMUM_LOG, TARGET } from './settle-treatment.ts';

const FILTERS: readonly StageKind[] = ['sediment', 'carbon', 'microfilter', 'ultrafilter', 'reverse-osmosis'];

/** Keys that mean something for some kinds only. */
const ONLY_FOR: Partial<Record<keyof TreatmentStage, readonly StageKind[]>> = {
  poreMicron: FILTERS,
  leavesNtu: FILTERS,
  lifeLitres: FILTERS,
  usedLitres: FILTERS,
  backwash: FILTERS,
  recovery: ['reverse-osmosis'],
  flowLPerMin: ['reverse-osmosis', 'uv'],
  doseMJPerCm2: ['uv'],
  mgPerLitre: ['chlorine'],
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
        came: `${key} on a stage of kind ${stage.kind}`,
        expected: `it on ${kinds.join(', ')} only`,
        remedy: `Leave ${key} out or correct the kind`,
      };
    }
  }
  return null;
}

function germsOnce(line: TreatmentFile): Misfit | null {
  for (const [index, stage] of line.stages.entries()) {
    for (const germs of GERM_CLASSES) {
      if (stage.logs?.[germs] === undefined || stage.stopsPercent?.[germs] === undefined) continue;
      return {
        path: `/treatment/stages/${index}/stopsPercent/${germs}`,
        came: `both logs and percent for ${germs}`,
        expected: 'one of the two',
        remedy: 'Keep what the maker states',
      };
    }
  }
  return null;
}

function pumpFalls({ pump }: TreatmentFile): Misfit | null {
  if (pump === undefined || pump.ratedKPa < pump.noFlowKPa) return null;
  return {
    path: '/treatment/pump/ratedKPa',
    came: `${pump.ratedKPa} kPa at the rated flow, ${pump.noFlowKPa} kPa at none`,
    expected: 'less pressure at the rated flow than at none',
    remedy: "Take both figures from the pump's sheet",
  };
}

function placesExist(line: TreatmentFile, key: 'taps' | 'hoses'): Misfit | null {
  for (const [index, one] of (line[key] ?? []).entries()) {
    if (one.afterStage <= line.stages.length) continue;
    return {
      path: `/treatment/${key}/${index}/afterStage`,
      came: `after stage ${one.afterStage}`,
      expected: `0 to ${line.stages.length}, the number of stages`,
      remedy: 'Give the number of the last stage before it, 0 for none',
    };
  }
  return null;
}

function targetWithinMaximum({ target = TARGET, maximumLog = MAXIMUM_LOG }: TreatmentFile): Misfit | null {
  const logs = typeof target === 'string' ? TARGETS[target] : target;
  const germs = GERM_CLASSES.find((one) => logs[one] > maximumLog);
  if (germs === undefined) return null;
  return {
    path: '/treatment/maximumLog',
    came: `a target of ${logs[germs]} log for ${germs}, a maximum of ${maximumLog}`,
    expected: 'a maximum not below the target',
    remedy: 'Raise the maximum or ask for less',
  };
}
