import type { GermClass, StageKind } from '../../../contract/treatment.ts';
import type { NoFacts, Phrased } from '../said/said.ts';

/** A boil of so many minutes where so many are needed; null where the height is not known. */
interface Boil {
  readonly minutes: number;
  readonly neededMinutes: number;
  readonly at: { readonly altitudeM: number; readonly boilsAtC: number } | null;
}

/** Why a stage counts for nothing. */
interface StageRefusals {
  'may-have-frozen': NoFacts;
  'chlorine-before': NoFacts;
  'no-carbon': NoFacts;
  'life-used-up': { lifeL: number };
  'water-clogs': { ntu: number; standsNtu: number };
  'dose-untold': NoFacts;
  'water-shades-light': { ntu: number; clearNtu: number };
  'water-too-fast': { lPerMin: number; ratedLPerMin: number };
  'ph-too-high': { ph: number; belowPh: number };
  'too-cloudy-for-chlorine': { ntu: number };
  'chlorine-too-little': { mgPerLitre: number; neededMgPerLitre: number };
  'time-untold': NoFacts;
  'contact-too-short': { minutes: number; neededMinutes: number };
  'boil-too-short': Boil;
}
export type StageRefusal = Phrased<StageRefusals>;

/** Where the log reduction of a stage comes from. */
interface CreditSources {
  'as-stated': NoFacts;
  'stops-percent': { percent: number };
  'usual-for-kind': { kind: StageKind };
  'by-dose': { mJPerCm2: number; germs: GermClass };
  'dose-too-weak': { mJPerCm2: number; neededMJPerCm2: number };
  'viruses-pass-filters': NoFacts;
  'neither-log-nor-pores': NoFacts;
  'pores-too-wide': { poreMicron: number; mostMicron: number };
  'pores-narrow': { poreMicron: number; mostMicron: number };
  'pores-of-ultrafilter': { poreMicron: number };
}
export type CreditSource = Phrased<CreditSources>;

/** Conditions that nobody told and that were taken as met. Stages by their names. */
interface UntoldConditions {
  'cloudiness-untold': { stage: string };
  'flow-taken': { stage: string; ratedLPerMin: number };
  'ph-taken': { stage: string; belowPh: number };
  'warmth-taken': { stage: string };
}
export type UntoldCondition = Phrased<UntoldConditions>;

/** What to know of a stage beside its figures. */
interface StageRemarks {
  'counts-for-nothing': { why: StageRefusal };
  'stage-credit': { germs: GermClass; log: number; why: CreditSource };
  'drops-of-bleach': { mgPerLitre: number; dropsPerLitre: number; bleachPercent: number; mlPer10L: number };
  'better-below': { ntu: number };
  'boil-long-enough': Boil;
  'stricter-height': NoFacts;
}
export type StageRemark = Phrased<StageRemarks>;

export interface StagePhrases extends StageRefusals, CreditSources, UntoldConditions, StageRemarks {}
