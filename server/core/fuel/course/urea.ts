import { amountBetween, type Profile } from '../../gaps/profile.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { metresOf } from '../../quantity/rates.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';
import type { UreaUse } from './fuel-use.ts';

/** How a station says that it sells urea solution, from a pump or in canisters (id-tagging-schema, `fuel:*`). */
const UREA_KEYS = ['fuel:adblue', 'fuel:adblue:canister'] as const;

export interface UreaFacts {
  urea: { litresPer1000Km: number; tankLitres: number };
  lengthM: number;
  wayM: Profile;
  /** Metres of way for a metre off the route. */
  offWay: number;
  passings: readonly Passing[];
  points: readonly SupplyPoint[];
  /** Past the end of the route to the next supply. */
  onwardM: number;
}

export interface UreaReport {
  readonly urea: UreaUse;
  readonly cautions: readonly Caution[];
}

/**
 * Urea solution over the route: what it takes, how far a tank goes, and the longest way between stations that list
 * it and count for fuel. The start is taken as full; past the end the way goes on to the next supply.
 */
export function ureaOf(facts: UreaFacts): UreaReport {
  const { urea, passings, points, wayM, lengthM } = facts;
  const selling = new Set(
    points
      .filter((point) => point.commodity === 'fuel' && UREA_KEYS.some((key) => point.tags[key] === 'yes'))
      .map((point) => point.id),
  );
  const stops = passings.filter(
    (passing) => passing.commodity === 'fuel' && passing.counts && selling.has(passing.id),
  );
  const perM = urea.litresPer1000Km / metresOf(1000);
  const longestM = longestWay(facts, stops);
  const rangeM = urea.tankLitres / perM;
  const shortL = Math.max(0, longestM * perM - urea.tankLitres);
  return {
    urea: {
      needL: amountBetween(wayM, 0, lengthM) * perM,
      tankL: urea.tankLitres,
      rangeM,
      longestM,
      shortL,
      points: stops.map(({ id, name, atM, detourM }) => ({ id, name, atM, detourM })),
    },
    cautions: shortL === 0 ? [] : [{ code: 'urea-short', facts: { longestM, rangeM, shortL } }],
  };
}

/** Metres of the longest way between two places that sell it, start and end among them. */
function longestWay({ wayM, offWay, lengthM, onwardM }: UreaFacts, stops: readonly Passing[]): number {
  let [longestM, fromM, fromOffM] = [0, 0, 0];
  for (const { atM, detourM } of [...stops, { atM: lengthM, detourM: onwardM }]) {
    const alongM = amountBetween(wayM, fromM, atM);
    longestM = Math.max(longestM, alongM + (fromOffM + detourM) * offWay);
    [fromM, fromOffM] = [atM, detourM];
  }
  return longestM;
}
