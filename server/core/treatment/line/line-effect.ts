import type { Logs } from '../../../contract/treatment.ts';
import type { UntoldCondition } from '../../phrases/rig/treatment-stages.ts';
import { sumLogs } from './logs.ts';
import { type Conditions, type StageEffect, stageEffect } from './stage-effect.ts';
import { stagesToDrink, type Treatment } from './treatment.ts';

export interface LineEffect {
  /** Sum of the stages, capped. */
  logs: Logs;
  stages: StageEffect[];
  desalts: boolean;
  /** Conditions that nobody told and that were taken as met, each once. */
  unmeasured: UntoldCondition[];
}

/** Clear water of which nothing else is known. */
export const CLEAR_WATER: Conditions = {
  turbidityNtu: 0,
  ph: null,
  temperatureC: null,
  altitudeM: null,
  flowLPerMin: null,
};

/** What the stages up to one (all before the drinking tap by default) do to a water, one after another. */
export function lineEffect(line: Treatment, water: Conditions, upTo = stagesToDrink(line)): LineEffect {
  const stages: StageEffect[] = [];
  let turbidityNtu = water.turbidityNtu;
  for (const stage of line.stages.slice(0, upTo)) {
    const effect = stageEffect(stage, { ...water, turbidityNtu });
    turbidityNtu = effect.leavesNtu;
    stages.push(effect);
  }
  return {
    logs: sumLogs(
      stages.map((stage) => stage.logs),
      line.maximumLog,
    ),
    stages,
    desalts: stages.some((stage) => stage.desalts),
    unmeasured: eachOnce(stages.flatMap((stage) => stage.unmeasured)),
  };
}

/** Two stages of one name say the same thing once. */
const eachOnce = (conditions: readonly UntoldCondition[]): UntoldCondition[] => [
  ...new Map(conditions.map((condition) => [JSON.stringify(condition), condition])).values(),
];
