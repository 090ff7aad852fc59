import { SLACK } from '../../quantity/slack.ts';
import { pourAfterL } from './pour.ts';
import type { CarrySide, SupplyEdge } from './problem.ts';

/** What is aboard of a commodity: litres in the fixed tanks, and full cans. */
export interface Held {
  tankL: number;
  cans: number;
}

type Store = Pick<CarrySide, 'course' | 'canL'>;

/** What is left of what a way began with; of a can that is drawn from, no more than the tanks have room for. */
export function arriveWith({ course, canL }: Store, { tankL, cans }: Held, usedL: number): Held {
  const capacityL = course.rig[course.commodity].drawableL;
  const full = pourAfterL({ capacityL, tankL, canL, cans }).filter((afterL) => usedL < afterL).length;
  return { tankL: Math.min(capacityL, tankL + (cans - full) * canL - usedL), cans: full };
}

/**
 * What a supply that does not give all that is wanted is left with: the tanks are filled first, then cans up to
 * `wantedCans`; a can that comes full stays so.
 */
export function leaveBound(
  { course, canL }: Store,
  { terms }: SupplyEdge,
  arrived: Held,
  wantedCans: number,
): Held & { filledL: number } {
  const mostL = terms?.mostL ?? Number.POSITIVE_INFINITY;
  const intoTanksL = Math.min(course.rig[course.commodity].drawableL - arrived.tankL, mostL);
  const affordable = Math.floor((mostL - intoTanksL) / canL + SLACK);
  const filledCans =
    terms?.fillsCans === false ? 0 : Math.max(0, Math.min(wantedCans - arrived.cans, affordable));
  return {
    tankL: arrived.tankL + intoTanksL,
    cans: arrived.cans + filledCans,
    filledL: intoTanksL + filledCans * canL,
  };
}
