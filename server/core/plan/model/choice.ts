import type { Commodity } from '../../../contract/common.ts';
import type { Leg } from '../legs/leg.ts';
import type { Aim } from './aims.ts';

/** One aim's value in the plan, and whether nothing better exists. */
export interface AimReached {
  readonly aim: Aim;
  readonly value: number;
  readonly proven: boolean;
  /** By how much it might be better at the most; 0 when proven. */
  readonly gap: number;
}

/** A leg of the plan: `shortL` less in the tanks than they hold, for the sake of the permitted masses. */
export interface PlannedLeg extends Leg {
  readonly shortL: number;
  /** Its end is only filled up at, since one halts there anyway: the plan does not hang on it. */
  readonly endsAtTopUp?: boolean;
}

/** Which supplies are used, with how many cans; nothing is simulated yet. */
export interface Choice {
  readonly legs: Readonly<Record<Commodity, readonly PlannedLeg[]>>;
  readonly cans: Readonly<Record<Commodity, number>>;
  readonly aims: readonly AimReached[];
  /** Whether every plan there is was looked at. */
  readonly complete: boolean;
}

/** `complete`: there is none at all; else none of what was looked at. */
export type Solution =
  | { readonly status: 'found'; readonly choice: Choice }
  | { readonly status: 'none'; readonly complete: boolean }
  | { readonly status: 'out-of-time' };
