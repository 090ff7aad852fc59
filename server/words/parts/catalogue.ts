import type { CautionFacts } from '../../core/phrases/cautions.ts';
import type { LogFaultFacts, LogPlace } from '../../core/phrases/log-faults.ts';
import type { MisfitFacts } from '../../core/phrases/misfits.ts';
import type { Phrase, PhraseFacts } from '../../core/phrases/phrases.ts';
import type { ReasonFacts } from '../../core/phrases/reasons.ts';
import type { RouteRefusals } from '../../core/phrases/route.ts';
import type { Parts } from './part.ts';

/** Says a phrase that stands among the facts of another. */
export type Say = (phrase: Phrase) => Parts;

/** How each of some things is said, from the facts of the case. */
export type Sayings<Facts> = { readonly [Code in keyof Facts]: (facts: Facts[Code], say: Say) => Parts };

/** Why a value or a log cannot be used: what came, what was expected, what to do. One sentence each, no full stop. */
export interface MisfitWords {
  readonly came: string;
  readonly expected: string;
  readonly remedy: string;
}

/** How each contradiction in a file is told, from its facts and the path of its key. */
export type MisfitSayings = {
  readonly [Name in keyof MisfitFacts]: (facts: MisfitFacts[Name], path: string) => MisfitWords;
};

/** How each fault of a log is told. */
export type LogFaultSayings = {
  readonly [Name in keyof LogFaultFacts]: (facts: LogFaultFacts[Name]) => MisfitWords;
};

/** How it is told why no route can be made of a file, with the place that is wrong where there is one. */
export type RouteRefusalSayings = {
  readonly [Code in keyof RouteRefusals]: (facts: RouteRefusals[Code]) => PlacedWords;
};

export interface PlacedWords extends MisfitWords {
  readonly place: string | null;
}

/** Everything that is said, in one language. */
export interface Catalogue {
  readonly cautions: Sayings<CautionFacts>;
  readonly reasons: Sayings<ReasonFacts>;
  readonly phrases: Sayings<PhraseFacts>;
  readonly misfits: MisfitSayings;
  readonly routeRefusals: RouteRefusalSayings;
  readonly logFaults: LogFaultSayings;
  readonly logPlace: (place: LogPlace) => string;
}
