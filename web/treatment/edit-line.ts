import type { StageKind, TreatmentFile, TreatmentStage } from '../../server/contract/treatment.ts';
import { t } from '../language/t.ts';

export type StageKey = Exclude<keyof TreatmentStage, 'kind' | 'name' | 'logs' | 'stopsPercent'>;

const OF_FILTERS = [
  'flowLPerMin',
  'poreMicron',
  'standsNtu',
  'leavesNtu',
  'drop',
  'lifeLitres',
  'usedLitres',
  'backwash',
  'mayHaveFrozen',
] as const satisfies readonly StageKey[];

/** What a stage of each kind can tell of itself, beside its name and what it takes out. */
export const STAGE_KEYS: Record<StageKind, readonly StageKey[]> = {
  sediment: OF_FILTERS,
  carbon: OF_FILTERS,
  microfilter: OF_FILTERS,
  ultrafilter: OF_FILTERS,
  'reverse-osmosis': [...OF_FILTERS, 'recovery'],
  uv: ['doseMJPerCm2', 'flowLPerMin', 'standsNtu', 'drop', 'mayHaveFrozen'],
  chlorine: ['mgPerLitre', 'productPercent', 'minutes', 'standsNtu'],
  boiling: ['minutes'],
};

/** What "add" puts in: an ordinary stage of its kind (ours), for the reader to change. */
export const TYPICAL_STAGE: Record<StageKind, TreatmentStage> = {
  sediment: { kind: 'sediment', poreMicron: 20, lifeLitres: 10_000 },
  carbon: { kind: 'carbon', lifeLitres: 4000 },
  microfilter: { kind: 'microfilter', poreMicron: 0.2, lifeLitres: 2000 },
  ultrafilter: { kind: 'ultrafilter', poreMicron: 0.02, lifeLitres: 10_000 },
  'reverse-osmosis': { kind: 'reverse-osmosis', recovery: 0.25, flowLPerMin: 0.2 },
  uv: { kind: 'uv', doseMJPerCm2: 40, flowLPerMin: 4 },
  chlorine: { kind: 'chlorine', mgPerLitre: 2, minutes: 30 },
  boiling: { kind: 'boiling', minutes: 1 },
};
export const TYPICAL_DROP = { kPa: 20, atLPerMin: 4 } as const;
/** 45 psi at no flow. */
export const TYPICAL_PUMP = { noFlowKPa: 310, ratedKPa: 140, ratedLPerMin: 11 } as const;

export const TYPICAL_LINE: TreatmentFile = {
  stages: [TYPICAL_STAGE.sediment, TYPICAL_STAGE.ultrafilter, TYPICAL_STAGE.carbon],
  taps: [{ name: t('drinking tap'), afterStage: 3, use: 'drinking' }],
};

/** True while a stage says no more than "add" put in. */
export function isTypical(stage: TreatmentStage): boolean {
  const typical: Record<string, unknown> = { ...TYPICAL_STAGE[stage.kind] };
  const said = Object.entries(stage).filter(([key]) => key !== 'name');
  return said.length === Object.keys(typical).length && said.every(([key, value]) => typical[key] === value);
}

/** A name that we gave by the stage's place ("2 carbon") means nothing once the place changes. */
function withoutPlacedName(stage: TreatmentStage): TreatmentStage {
  const { name, ...rest } = stage;
  return name === undefined || /^\d+ [a-z-]+$/.test(name) ? rest : stage;
}

/** The line with one more stage at its end; what tapped the line there taps it after the new stage. */
export function addStage(line: TreatmentFile, kind: StageKind): TreatmentFile {
  const last = line.stages.length;
  return {
    ...line,
    stages: [...line.stages, TYPICAL_STAGE[kind]],
    ...(line.taps === undefined
      ? {}
      : {
          taps: line.taps.map((tap) =>
            tap.afterStage === last && tap.use === 'drinking' ? { ...tap, afterStage: last + 1 } : tap,
          ),
        }),
  };
}

/** The line without a stage: taps and hoses behind it move up. */
export function removeStage(line: TreatmentFile, index: number): TreatmentFile {
  const moved = <T extends { afterStage: number }>(one: T): T =>
    one.afterStage > index ? { ...one, afterStage: one.afterStage - 1 } : one;
  return {
    ...line,
    stages: line.stages.filter((_, place) => place !== index).map(withoutPlacedName),
    ...(line.taps === undefined ? {} : { taps: line.taps.map(moved) }),
    ...(line.hoses === undefined ? {} : { hoses: line.hoses.map(moved) }),
  };
}

/** Two neighbouring stages change places; taps stay where they are. */
export function swapStages(line: TreatmentFile, index: number): TreatmentFile {
  const first = line.stages[index];
  const second = line.stages[index + 1];
  if (first === undefined || second === undefined) return line;
  const stages = line.stages.map(withoutPlacedName);
  stages[index] = withoutPlacedName(second);
  stages[index + 1] = withoutPlacedName(first);
  return { ...line, stages };
}

/** The stage as one of another kind: what that kind cannot tell is left out, what it needs is typical. */
export function ofKind(stage: TreatmentStage, kind: StageKind): TreatmentStage {
  const kept = STAGE_KEYS[kind].filter((key) => stage[key] !== undefined && key in stage);
  const { name } = withoutPlacedName(stage);
  return {
    ...TYPICAL_STAGE[kind],
    ...(isTypical(stage) ? {} : Object.fromEntries(kept.map((key) => [key, stage[key]]))),
    ...(name === undefined ? {} : { name }),
    kind,
  };
}
