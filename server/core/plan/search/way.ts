import type { Commodity } from '../../../contract/common.ts';
import { type Cost, type HaltCost, NO_HALT } from './cost.ts';
import type { FailingPlace } from './failure-table.ts';
import type { MassesSoFar } from './masses-so-far.ts';
import type { SearchLeg } from './side-table.ts';

/** Both commodities on the way: the leg that each is on. */
export interface Way {
  readonly legs: Readonly<Record<Commodity, SearchLeg>>;
  /** What each leg still bears of further detour, halts of the other commodity so far made. */
  readonly spareM: Readonly<Record<Commodity, number>>;
  /** The least that legs which have ended had to spare. */
  readonly marginM: number;
  /** Of all legs so far, and of halts made. */
  readonly cost: Cost;
  readonly masses: MassesSoFar;
  /** At the stop that was come to last. */
  readonly stopHalts: StopHalts | null;
  /** The next place where a leg ends. */
  readonly reachedM: number;
  readonly open: readonly OpenPlace[];
  readonly before: Way | null;
  /** One that is as good in all that matters was found since. */
  isPassed: boolean;
}

/** Whether the leg of a commodity ends where a way has come to. */
export type Ends = Readonly<Record<Commodity, boolean>>;

/** Halts of both commodities at one stop so far: what each costs alone. */
export interface StopHalts {
  readonly stop: number;
  readonly cost: Readonly<Record<Commodity, HaltCost>>;
}

/** A place that was come to, and which ways are gone when its stop fails: it has to leave one that all bear. */
export interface OpenPlace {
  readonly place: FailingPlace;
  readonly mustGoOn: boolean;
  readonly mustGoBack: boolean;
}

export const NO_HALTS: StopHalts['cost'] = { fuel: NO_HALT, water: NO_HALT };

/** Fuel and water of one stop are one detour, the longer of the two. */
export const together = ({ fuel, water }: StopHalts['cost']): HaltCost => ({
  lost: Math.max(fuel.lost, water.lost),
  driving: Math.max(fuel.driving, water.driving),
});

/** What further halts cost more than those before them. */
export function moreOf(before: StopHalts | null, after: StopHalts | null): HaltCost {
  if (after === null || after === before) return NO_HALT;
  const all = together(after.cost);
  if (after.stop !== before?.stop) return all;
  const paid = together(before.cost);
  return { lost: all.lost - paid.lost, driving: all.driving - paid.driving };
}

export const nameOf = ({ place, mustGoOn, mustGoBack }: OpenPlace): string =>
  `${place.number} ${mustGoOn} ${mustGoBack}`;

export const haltsName = ({ cost: { fuel, water } }: StopHalts): string =>
  `${fuel.lost} ${fuel.driving} ${water.lost} ${water.driving}`;

/** The least margin that plans which go on from a way have at the most, metres. */
export const mostMarginM = ({ marginM, spareM }: Way): number => Math.min(marginM, spareM.fuel, spareM.water);

/** Metres of halts of the other commodity that a leg still bears; endless where it bears all that there are on it. */
export const bearsHalts = ({ hop, allM }: SearchLeg, spareM: number): number =>
  allM <= hop.spareM ? Number.POSITIVE_INFINITY : spareM;
