import type {
  GermClass,
  Logs,
  SourceKind,
  StageKind,
  TapUse,
  TreatmentReport,
} from '../../server/contract/treatment.ts';
import { t } from '../language/t.ts';
import { GERMS } from './germs.ts';

export const STAGE_WORDS: Record<StageKind, string> = {
  sediment: t('sediment filter'),
  carbon: t('carbon filter'),
  microfilter: t('microfilter'),
  ultrafilter: t('ultrafilter'),
  'reverse-osmosis': t('reverse osmosis'),
  uv: t('UV lamp'),
  chlorine: t('chlorine'),
  boiling: t('boiling'),
};
export const STAGE_KINDS = Object.keys(STAGE_WORDS) as StageKind[];
export const SOURCE_WORDS: Record<SourceKind, string> = {
  'piped-tap': t('piped tap'),
  'village-well': t('village well'),
  bore: t('bore or desert well'),
  spring: t('spring'),
  river: t('river or lake'),
  'rain-tank': t('rain tank'),
  unknown: t('unknown source'),
};
export const TAP_WORDS: Record<TapUse, string> = {
  drinking: t('for drinking'),
  kitchen: t('for the kitchen'),
  shower: t('for the shower'),
};

/** How far the water is treated: as it came, in part, or to the target. */
export type Quality = 'raw' | 'part' | 'fit';

export type LineStep =
  | { kind: 'source' | 'tank' | 'pump'; quality: Quality }
  | { kind: 'stage'; index: number; stage: TreatmentReport['stages'][number]; quality: Quality }
  | { kind: 'tap'; index: number; tap: TreatmentReport['taps'][number]; quality: Quality };

/** Float noise of adding logs must not make a line miss its target. */
const SLACK = 1e-9;

/** What the first stages take out together in clear water, credited up to the line's maximum. */
export function logsAfter(report: TreatmentReport, stages: number): Logs {
  const sum = (germs: GermClass) =>
    Math.min(
      report.maximumLog,
      report.stages.slice(0, stages).reduce((total, stage) => total + stage.logs[germs], 0),
    );
  return { bacteria: sum('bacteria'), viruses: sum('viruses'), protozoa: sum('protozoa') };
}

function qualityOf(logs: Logs, target: Logs): Quality {
  if (GERMS.every((germs) => logs[germs] + SLACK >= target[germs])) return 'fit';
  return GERMS.some((germs) => logs[germs] > 0) ? 'part' : 'raw';
}

/** The line as water runs through it, with how far it is treated on leaving each step; taps stand where they branch off. */
export function lineSteps(report: TreatmentReport, hasPump: boolean): LineStep[] {
  const qualityAfter = (stages: number) => qualityOf(logsAfter(report, stages), report.target.logs);
  const tapsAfter = (stages: number): LineStep[] =>
    report.taps.flatMap((tap, index) =>
      tap.afterStage === stages
        ? [
            {
              kind: 'tap' as const,
              index,
              tap,
              quality: tap.grade === 'drinking' ? 'fit' : qualityOf(tap.logs, report.target.logs),
            },
          ]
        : [],
    );
  const last = report.stages.length;
  const tank = (quality: Quality): LineStep[] => [
    { kind: 'tank', quality },
    ...(hasPump ? [{ kind: 'pump' as const, quality }] : []),
  ];
  const fills = report.at === 'filling';
  const steps: LineStep[] = [{ kind: 'source', quality: 'raw' }];
  if (!fills) steps.push(...tank('raw'));
  steps.push(...tapsAfter(0));
  for (const [index, stage] of report.stages.entries()) {
    steps.push({ kind: 'stage', index, stage, quality: qualityAfter(index + 1) });
    if (fills && index + 1 === last) steps.push(...tank(qualityAfter(last)));
    steps.push(...tapsAfter(index + 1));
  }
  return steps;
}
