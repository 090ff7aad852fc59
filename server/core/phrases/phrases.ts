import type { LogPhrases } from './log.ts';
import type { PlanPhrases } from './plan.ts';
import type { NoFacts, Phrased } from './said.ts';
import type { WhatIfPhrases } from './what-if.ts';

/** Labels of the terms that a way, a need or a reserve is summed from. */
interface GapTerms {
  'along-the-route': NoFacts;
  'back-to-the-route': NoFacts;
  'failing-supply-and-back': NoFacts;
  'to-the-supply': NoFacts;
  'past-the-end': NoFacts;
  'allowance-for-bends': { straightLines: boolean };
}

/** Every phrase that stands inside another thing: labels, whys, names of kinds. */
export interface PhraseFacts extends GapTerms, LogPhrases, PlanPhrases, WhatIfPhrases {}
export type Phrase = Phrased<PhraseFacts>;
