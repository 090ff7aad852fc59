import type { Surface } from '../../contract/surface.ts';
import type { LogPhrases } from './log.ts';
import type { NotePhrases } from './notes.ts';
import type { PlanPhrases } from './plan/plan.ts';
import type { WhatIfPhrases } from './plan/what-if.ts';
import type { ReaderPhrases } from './readers.ts';
import type { CrewPhrases, HelpReason } from './rig/crew.ts';
import type { DefaultPhrases } from './rig/defaults.ts';
import type { FuelPhrases } from './rig/fuel.ts';
import type { MassPhrases } from './rig/mass.ts';
import type { TreatmentPhrases } from './rig/treatment.ts';
import type { StagePhrases } from './rig/treatment-stages.ts';
import type { WaterPhrases } from './rig/treatment-waters.ts';
import type { NoFacts, Phrased } from './said/said.ts';
import type { SupplyKinds } from './said/supply-kinds.ts';

/** Labels of the terms that a way, a need or a reserve is summed from. */
interface GapTerms {
  'along-the-route': NoFacts;
  'back-to-the-route': NoFacts;
  'failing-supply-and-back': NoFacts;
  'to-the-supply': NoFacts;
  'past-the-end': NoFacts;
  'allowance-for-bends': { straightLines: boolean };
  'off-the-route': { wayM: number };
  'along-the-route-at': { wayM: number; litresPer100Km: number };
  'filling-and-waiting': NoFacts;
  'days-elapsed': { days: number; litresPerDay: number };
  'hotter-stretches': NoFacts;
  /** 0 to 1. */
  'share-of-need': { share: number };
  'reserve-km': { km: number; litresPer100Km: number; surface: Surface | null };
  'reserve-days': { days: number; litresPerDay: number; graded: boolean; why: HelpReason | null };
  /** 0 to 1. */
  'reserve-fraction': { share: number };
  'reserve-litres': { litres: number };
}

/** Defaults of the pace. */
interface PacePhrases {
  'slow-pace': { kmPerHour: number };
  'share-of-rig-pace': { share: number };
}

/** Every phrase that stands inside another thing: labels, whys, names of kinds. */
export interface PhraseFacts
  extends TreatmentPhrases,
    GapTerms,
    PacePhrases,
    LogPhrases,
    NotePhrases,
    PlanPhrases,
    WhatIfPhrases,
    CrewPhrases,
    DefaultPhrases,
    FuelPhrases,
    MassPhrases,
    ReaderPhrases,
    StagePhrases,
    SupplyKinds,
    WaterPhrases {}
export type Phrase = Phrased<PhraseFacts>;
