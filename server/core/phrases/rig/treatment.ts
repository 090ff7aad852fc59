import type { GermClass, TapUse } from '../../../contract/treatment.ts';
import type { NoFacts, Phrased } from '../said/said.ts';
import type { ContainerName } from './mass.ts';
import type { UntoldCondition } from './treatment-stages.ts';

/** What an estimate of a tap's flow lacks. */
interface FlowGaps {
  'pump-untold': NoFacts;
  'drop-untold': { stage: string };
}
export type FlowGap = Phrased<FlowGaps>;

/** What to know about a treatment line on a trip. Stages and taps by their names. */
export interface TreatmentCautions {
  'treatment-below-target': {
    target: string;
    lacks: readonly { readonly germs: GermClass; readonly log: number }[];
  };
  'treatment-unmeasured': { conditions: readonly UntoldCondition[] };
  'treatment-frozen': { stages: readonly string[] };
  'treatment-may-freeze': { nightC: number };
  'boiling-height-unknown': NoFacts;
  'tap-flow-unknown': { tap: string; missing: readonly FlowGap[] };
  'tap-starves': { tap: string; use: TapUse; lPerMin: number; leastLPerMin: number };
  'tap-not-drinking': { tap: string; use: TapUse };
  'cartridge-spent': { name: string; litres: number; beyondL: number; backwash: boolean };
  'treatment-at-tap': NoFacts;
  /** Litres from the tank for each litre at the tap. */
  'osmosis-waste': { feed: number };
}

/** What takes pressure between pump and tap. */
interface PressureLabels {
  'hose-of': { lengthM: number; boreMm: number };
  'tap-named': { name: string };
}
export type PressureLabel = Phrased<PressureLabels> | ContainerName;

/** Labels of pressures and litres. */
export interface TreatmentPhrases extends FlowGaps, PressureLabels {
  'pump-at-flow': NoFacts;
  'days-at-rate': { days: number; litresPerDay: number };
  'thrown-away': NoFacts;
}
