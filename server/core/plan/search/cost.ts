import { type Cans, cansBeyond } from '../question/can-limits.ts';

/**
 * What a plan costs beyond its cans, each before the next: metres that hang on doubtful, implied and stated evidence, of
 * lost time, of driving off the route, and that cans are carried, in micrometres; legs. Whole numbers: sums are the same
 * in any order.
 */
export type Cost = readonly [number, number, number, number, number, number, number];

/** Metres as a part of a cost. */
export const inCost = (metres: number): number => Math.round(metres * 1e6);

/** Of what hangs on weak evidence, the parts come before the cans. */
const WEAK_PARTS = 3;

/** A cost with the cans to be got in their place among the aims: behind what hangs on weak evidence. */
export function withCansToGet(cost: Cost, cans: Cans, owned: Cans): readonly number[] {
  const toGet = cansBeyond(cans, owned);
  return [...cost.slice(0, WEAK_PARTS), toGet.fuel + toGet.water, ...cost.slice(WEAK_PARTS)];
}

export const NO_COST: Cost = [0, 0, 0, 0, 0, 0, 0];

export const sumOf = (a: Cost, b: Cost): Cost => [
  a[0] + b[0],
  a[1] + b[1],
  a[2] + b[2],
  a[3] + b[3],
  a[4] + b[4],
  a[5] + b[5],
  a[6] + b[6],
];

/** What a halt costs: lost time and driving. */
export interface HaltCost {
  readonly lost: number;
  readonly driving: number;
}

export const NO_HALT: HaltCost = { lost: 0, driving: 0 };

export const halts = (a: HaltCost, b: HaltCost): HaltCost => ({
  lost: a.lost + b.lost,
  driving: a.driving + b.driving,
});

export const haltingCost = ({ lost, driving }: HaltCost): Cost => [0, 0, 0, lost, driving, 0, 0];

/** Below nothing where `a` is the better. Without a loop: a search asks this many million times. */
export const compareCosts = (a: Cost, b: Cost): number =>
  a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || a[3] - b[3] || a[4] - b[4] || a[5] - b[5] || a[6] - b[6];

/** The same of costs that have their place among other aims. */
export function compareRanks(a: readonly number[], b: readonly number[]): number {
  for (let part = 0; part < a.length; part += 1) {
    const difference = (a[part] ?? 0) - (b[part] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
