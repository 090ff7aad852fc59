import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';

/** Litres filled before leaving. */
export interface Fill {
  readonly commodity: Commodity;
  readonly litres: number;
}

/** A supply laid beforehand; metres along the route. */
export interface Depot {
  readonly atM: number;
  readonly commodity: Commodity;
  readonly cans: number;
  readonly litres: number;
  /** The latest place that is reached with the reserve; false where it is laid earlier, beside the other commodity's. */
  readonly latest: boolean;
}

/** A stop off the plan that a way out goes by. */
export interface StopOnWayOut {
  readonly id: string;
  readonly name: string | null;
  readonly kind: SupplyKind;
  readonly commodity: Commodity;
  readonly atM: number;
  /** There and back. */
  readonly drivingM: number;
  readonly evidence: Evidence;
  readonly counts: boolean;
}

/** A change with which there is a plan: computed again with it, and found. */
export interface WayOut {
  readonly kind: 'fill-first' | 'more-cans' | 'less-washing' | 'longer-days' | 'depot' | 'other-stop';
  /** First a telephone call: it hangs on a point that does not count. Never a plan as it stands. */
  readonly telephoneFirst: boolean;
  readonly text: Phrase;
  readonly cans: Readonly<Record<Commodity, number>>;
  /** Of the change: litres filled before leaving, cans beyond those there are, litres a day less, hours a day, litres laid, way there and back. */
  readonly amount: number;
  readonly unit: 'cans' | 'l a day' | 'hours a day' | 'l' | 'm of way';
  readonly atM: number | null;
  readonly id: string | null;
  readonly commodity: Commodity | null;
  /** Of the cans it takes, full, beyond those there are. */
  readonly moreKg: number;
  /** What is laid beforehand, in route order; `atM`, `commodity` and `amount` are those of the first. */
  readonly depots?: readonly Depot[];
  /** Stops off the plan that it goes by, in route order; `id`, `atM` and `commodity` are those of the first. */
  readonly stops?: readonly StopOnWayOut[];
  /** What is filled before leaving; `commodity` and `amount` are those of the first. */
  readonly fills?: readonly Fill[];
  /** Of washing and shower water, what is given up. */
  readonly cutPercent?: number;
}

/** Fields of a way out that most leave as they are. */
export const WAY_OUT = {
  telephoneFirst: false,
  atM: null,
  id: null,
  commodity: null,
  moreKg: 0,
} as const satisfies Partial<WayOut>;
