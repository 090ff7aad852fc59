import type { GermClass, Logs, SourceKind } from '../../../contract/treatment.ts';
import type { NoFacts, Phrased } from '../said/said.ts';
import type { StageRefusal, UntoldCondition } from './treatment-stages.ts';

/** What is expected of a kind of source, and why. */
interface HazardReasons {
  /** Where nobody tested it. */
  'expected-of': { kind: SourceKind };
  'own-figures': NoFacts;
  'own-words': { words: string };
}
export type HazardReason = Phrased<HazardReasons>;

/** Why a note of the user's is not used. Dates are ISO. */
interface UnusedNotes {
  'note-ahead': { on: string };
  'note-too-old': { on: string; days: number };
}
export type UnusedNote = Phrased<UnusedNotes>;

/** Salt of a water, the osmotic pressure of what a membrane leaves of it, and what the pump has against that. */
interface Pressing {
  tdsMgPerLitre: number;
  osmoticKPa: number;
  pumpKPa: number;
}

/** Why a line does not make a water fit. Stages by their names. */
interface WaterLacks extends UnusedNotes {
  'stage-clogs': { stage: string; why: StageRefusal };
  'stage-counts-for-nothing': { stage: string; why: StageRefusal };
  'short-of-target': {
    lacks: readonly { readonly germs: GermClass; readonly log: number }[];
    target: string;
    logs: Logs;
  };
  'salt-not-known': NoFacts;
  'salt-stays': NoFacts;
  /** Of a line with reverse osmosis. */
  'salinity-not-told': NoFacts;
  'osmosis-pump-untold': NoFacts;
  'osmosis-too-weak': Pressing;
  'chemicals-stay': NoFacts;
  /** What it gives in a day is less than what is drunk of it. */
  'treats-too-little': { givesLPerDay: number; drunkLPerDay: number };
}
export type WaterLack = Phrased<WaterLacks>;

interface WaterRemarks {
  'chemicals-not-known': NoFacts;
  'osmosis-strong-enough': Pressing;
}
export type WaterRemark = Phrased<WaterRemarks> | UntoldCondition;

interface WaterFits {
  'taken-as': { kind: SourceKind; logs: Logs; at: 'filling' | 'tap' };
}
export type WaterFit = Phrased<WaterFits>;

interface FillingTimes {
  'filled-in': { litres: number; minutes: number; lPerMin: number; how: FillingWay };
}
export type FillingTime = Phrased<FillingTimes>;

/** At the flow that the user noted, or drawn by hand. */
export type FillingWay = 'noted' | 'rope-and-bucket';

export interface WaterPhrases extends HazardReasons, WaterLacks, WaterRemarks, WaterFits, FillingTimes {}
