import type { SourceKind, TreatmentFile, TreatmentStage } from '../../../contract/treatment.ts';
import { MAXIMUM_LOG, RECOVERY, TARGET, TREAT_AT, TREAT_EVERYTHING } from '../../defaults/rig-defaults.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { HazardReason } from '../../phrases/rig/treatment-waters.ts';
import type { Assume } from '../../quantity/assumption.ts';
import { EXPECTED, type Hazard, SOURCE_KINDS } from './hazards.ts';
import { TARGETS } from './logs.ts';
import { membraneFault } from './osmosis.ts';
import type { Stage, Treatment } from './treatment.ts';

/** Filters whose pores a frost tears. */
const MEMBRANES: readonly Stage['kind'][] = ['microfilter', 'ultrafilter', 'reverse-osmosis'];

/**
 * Fills in what a rig file leaves out of its treatment line; the file is taken as checked. Hazards stay in the file as
 * the user gave them: why they are expected is said in words, which are not for here.
 */
export function settleTreatment(
  file: TreatmentFile,
  assume: Assume,
): { treatment: Treatment; settled: TreatmentFile } {
  assumeLine(file, assume);
  const target = file.target ?? TARGET;
  const at = file.at ?? TREAT_AT;
  const maximumLog = file.maximumLog ?? MAXIMUM_LOG;
  const treatEverything = file.treatEverything ?? TREAT_EVERYTHING;
  const stages = file.stages.map((stage, index) => namedStage(stage, index, assume));
  const hazards = Object.fromEntries(SOURCE_KINDS.map((kind) => [kind, hazardOf(kind, file)])) as Record<
    SourceKind,
    Hazard
  >;
  return {
    treatment: {
      stages: stages.map((stage, index) => ({
        ...stage,
        mayHaveFrozen: mayHaveFrozen(stage, file),
        fault: membraneFault(stages, index),
      })),
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
    settled: { ...file, stages, at, target, maximumLog, treatEverything },
  };
}

/** Notes what is taken of the line as a whole. */
function assumeLine(file: TreatmentFile, assume: Assume): void {
  if (file.target === undefined) {
    const value: Phrase = { phrase: 'target', facts: { name: TARGET, logs: TARGETS[TARGET] } };
    assume('/treatment/target', value, { phrase: 'strictest-for-bacteria', facts: {} });
  }
  if (file.maximumLog === undefined) {
    const value: Phrase = { phrase: 'log', facts: { log: MAXIMUM_LOG } };
    assume('/treatment/maximumLog', value, { phrase: 'tests-seldom-more', facts: {} });
  }
  if (file.at === undefined) {
    const value: Phrase = { phrase: 'word', facts: { word: TREAT_AT } };
    assume('/treatment/at', value, { phrase: 'raw-water-worse', facts: {} });
  }
  if (file.treatEverything === undefined) {
    const why: Phrase = { phrase: 'stated-fit-as-it-comes', facts: {} };
    assume('/treatment/treatEverything', { phrase: 'no', facts: {} }, why);
  }
}

/** What the file says of a kind stands over what we expect of it; its reason too, or that the user says so. */
function hazardOf(kind: SourceKind, file: TreatmentFile): Hazard {
  const given = file.hazards?.[kind];
  const expected = EXPECTED[kind];
  if (given === undefined) return { ...expected, why: { phrase: 'expected-of', facts: { kind } } };
  const { why: words, ...figures } = given;
  const why: HazardReason =
    words === undefined ? { phrase: 'own-figures', facts: {} } : { phrase: 'own-words', facts: { words } };
  return { ...expected, ...figures, why };
}

/** A stage with its name and, for reverse osmosis, its recovery: both may stand in a file as well. */
function namedStage(stage: TreatmentStage, index: number, assume: Assume): TreatmentStage & { name: string } {
  const named = { ...stage, name: stage.name ?? `${index + 1} ${stage.kind}` };
  if (stage.kind !== 'reverse-osmosis' || stage.recovery !== undefined) return named;
  const value: Phrase = { phrase: 'number', facts: { value: RECOVERY } };
  assume(`/treatment/stages/${index}/recovery`, value, { phrase: 'small-osmosis', facts: {} });
  return { ...named, recovery: RECOVERY };
}

/** What may have frozen in a line, by itself or as one of its membranes. */
const mayHaveFrozen = (stage: TreatmentStage, file: TreatmentFile): boolean =>
  stage.mayHaveFrozen === true || (file.mayHaveFrozen === true && MEMBRANES.includes(stage.kind));
