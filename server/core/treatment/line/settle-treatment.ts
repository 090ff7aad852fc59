import type { Hazard, SourceKind, TreatmentFile, TreatmentStage } from '../../../contract/treatment.ts';
import { HAZARDS, SOURCE_KINDS } from './hazards.ts';
import { logsText, TARGETS } from './logs.ts';
import type { Stage, Treatment } from './treatment.ts';

/** The most bacteria that the strictest target asks for; tests seldom show more (ours). */
export const MAXIMUM_LOG = 6;
/** All three classes in the worst water (ours to ask for it by default). */
export const TARGET = 'purifier';
/** Raw water in the tank is the worse case (ours). */
const AT = 'tap';

/** Share that a small reverse osmosis makes clean (from memory). */
const RECOVERY = 0.25;

type Assume = (path: string, value: string, why: string) => void;

/** Filters whose pores a frost tears. */
const MEMBRANES: readonly Stage['kind'][] = ['microfilter', 'ultrafilter', 'reverse-osmosis'];

/** Fills in what a rig file leaves out of its treatment line; the file is taken as checked. */
export function settleTreatment(
  file: TreatmentFile,
  assume: Assume,
): { treatment: Treatment; settled: TreatmentFile } {
  if (file.target === undefined) {
    assume(
      '/treatment/target',
      `${TARGET} (${logsText(TARGETS[TARGET])} log)`,
      'the strictest for bacteria (ours)',
    );
  }
  if (file.maximumLog === undefined) {
    assume('/treatment/maximumLog', `${MAXIMUM_LOG} log`, 'tests seldom show more (ours)');
  }
  if (file.at === undefined) assume('/treatment/at', AT, 'raw water in the tank is the worse case (ours)');
  if (file.treatEverything === undefined) {
    assume('/treatment/treatEverything', 'no', 'water stated fit to drink is drunk as it comes (ours)');
  }
  const target = file.target ?? TARGET;
  const at = file.at ?? AT;
  const maximumLog = file.maximumLog ?? MAXIMUM_LOG;
  const treatEverything = file.treatEverything ?? false;
  const stages = file.stages.map((stage, index) => namedStage(stage, index, assume));
  const hazards = Object.fromEntries(SOURCE_KINDS.map((kind) => [kind, hazardOf(kind, file)])) as Record<
    SourceKind,
    Hazard
  >;
  return {
    treatment: {
      stages: stages.map((stage) => ({ ...stage, mayHaveFrozen: mayHaveFrozen(stage, file) })),
      at,
      pump: file.pump ?? null,
      taps: (file.taps ?? []).map((tap) => ({
        ...tap,
        measuredLPerMin: tap.measuredLPerMin ?? null,
        drop: tap.drop ?? null,
      })),
      hoses: file.hoses ?? [],
      target:
        typeof target === 'string'
          ? { name: target, logs: TARGETS[target] }
          : { name: 'custom', logs: target },
      maximumLog,
      treatEverything,
      hazards,
    },
    settled: { ...file, stages, at, target, maximumLog, treatEverything, hazards },
  };
}

/** What the file says of a kind stands over what we expect of it; its reason too, or that the user says so. */
function hazardOf(kind: SourceKind, file: TreatmentFile): Hazard {
  const given = file.hazards?.[kind];
  if (given === undefined) return HAZARDS[kind];
  return { ...HAZARDS[kind], why: 'your own figures in part or in whole', ...given };
}

/** A stage with its name and, for reverse osmosis, its recovery: both may stand in a file as well. */
function namedStage(stage: TreatmentStage, index: number, assume: Assume): TreatmentStage & { name: string } {
  const named = { ...stage, name: stage.name ?? `${index + 1} ${stage.kind}` };
  if (stage.kind !== 'reverse-osmosis' || stage.recovery !== undefined) return named;
  const why = 'small units throw three quarters away (from memory)';
  assume(`/treatment/stages/${index}/recovery`, String(RECOVERY), why);
  return { ...named, recovery: RECOVERY };
}

/** What may have frozen in a line, by itself or as one of its membranes. */
const mayHaveFrozen = (stage: TreatmentStage, file: TreatmentFile): boolean =>
  stage.mayHaveFrozen === true || (file.mayHaveFrozen === true && MEMBRANES.includes(stage.kind));
