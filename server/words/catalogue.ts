import type { CautionFacts } from '../core/phrases/cautions.ts';
import type { PhraseFacts } from '../core/phrases/phrases.ts';
import type { ReasonFacts } from '../core/phrases/reasons.ts';
import type { Parts } from './part.ts';

/** How each of some things is said, from the facts of the case. */
export type Sayings<Facts> = { readonly [Code in keyof Facts]: (facts: Facts[Code]) => Parts };

/** Everything that is said, in one language. */
export interface Catalogue {
  readonly cautions: Sayings<CautionFacts>;
  readonly reasons: Sayings<ReasonFacts>;
  readonly phrases: Sayings<PhraseFacts>;
}
