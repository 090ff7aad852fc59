import { cartridgesOf } from '../line/cartridges.ts';
import { SOURCE_KINDS } from '../line/hazards.ts';
import { CLEAR_WATER, lineEffect } from '../line/line-effect.ts';
import { lacksOf } from '../line/logs.ts';
import type { TapReport, TreatmentReport } from '../line/report.ts';
import { stageEffect } from '../line/stage-effect.ts';
import { tapResults } from '../line/taps.ts';
import type { Treatment } from '../line/treatment.ts';
import type { Journey } from './journey.ts';
import { judgeSource, type Surroundings } from './judge-source.ts';
import { treatmentCautions } from './treatment-cautions.ts';

/** Flow at the drinking tap that passes most stages; null where it is not known or there is none. */
export function drinkingFlow(taps: readonly TapReport[]): number | null {
  const drinking = taps.filter((tap) => tap.use === 'drinking');
  return drinking.sort((a, b) => b.afterStage - a.afterStage)[0]?.flowLPerMin ?? null;
}

/** What a line of a rig does on a trip: totals, taps, cartridges, and a verdict for each kind of source. */
export function treatmentReport(line: Treatment, journey: Journey): TreatmentReport {
  const water = { ...CLEAR_WATER, altitudeM: journey.altitudeM };
  const taps = tapResults(line, water);
  const tapReports = taps.map((tap) => tap.report);
  const place: Surroundings = { altitudeM: journey.altitudeM, flowLPerMin: drinkingFlow(tapReports) };
  const effect = lineEffect(line, { ...water, ...place });
  const lacks = lacksOf(effect.logs, line.target.logs);
  const cartridges = cartridgesOf(line, journey.litresPerDay, journey.days);
  const report: Omit<TreatmentReport, 'cautions'> = {
    at: line.at,
    target: line.target,
    maximumLog: line.maximumLog,
    logs: effect.logs,
    meetsTarget: lacks.length === 0,
    lacks,
    desalts: effect.desalts,
    stages: line.stages.map((stage) => {
      const { logs, why } = stageEffect(stage, { ...water, ...place });
      return { name: stage.name, kind: stage.kind, logs, why };
    }),
    taps: tapReports,
    cartridges,
    sources: SOURCE_KINDS.map((kind) => {
      const { ok, hazard, logs, lacks: reasons, remarks } = judgeSource(line, kind, place);
      return { kind, treatable: ok, hazard, logs, reasons: ok ? remarks : reasons };
    }),
  };
  return {
    ...report,
    cautions: treatmentCautions({ line, report, journey, taps, unmeasured: effect.unmeasured }),
  };
}
