import type { RigFile } from '../../../contract/rig.ts';
import { amountBetween, type Profile } from '../../gaps/course/profile.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { metresOf } from '../../quantity/rates.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';
import type { UreaUse } from './fuel-use.ts';

/** How a station says that it sells urea solution, from a pump or in canisters (id-tagging-schema, `fuel:*`). */
const UREA_KEYS = ['fuel:adblue', 'fuel:adblue:canister'] as const;

/** Of the tank (ours). */
const RESERVE_SHARE = 0.1;

export interface UreaFacts {
  urea: NonNullable<RigFile['fuel']['urea']>;
  /** Litres of fuel along the route, and for a metre off it, at the rate the verdict uses. */
  fuelL: { along: Profile; off: number };
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
  const use = ureaAlong(facts);
  const ways = waysBetween(facts, stops, use);
  const longestM = Math.max(0, ...ways.map((way) => way.wayM));
  const routeL = use.along(0, lengthM);
  const reserveL = reserveOf(urea);
  const usableL = urea.tankLitres - reserveL;
  const rangeM = routeL === 0 ? 0 : usableL / (routeL / amountBetween(wayM, 0, lengthM));
  const shortL = Math.max(0, ...ways.map((way) => way.litres - usableL));
  return {
    urea: {
      needL: routeL,
      tankL: urea.tankLitres,
      reserveL,
      rangeM,
      longestM,
      shortL,
      points: stops.map(({ id, name, atM, detourM }) => ({ id, name, atM, detourM })),
    },
    cautions: shortL === 0 ? [] : [{ code: 'urea-short', facts: { longestM, rangeM, shortL } }],
  };
}

/** Litres of it along the route, and for a metre off it. */
interface UreaAlong {
  readonly along: (fromM: number, toM: number) => number;
  readonly off: number;
}

/** By the fuel that is burnt, so that sand, load and climbs count; else by the way. */
function ureaAlong({ urea, fuelL, wayM, offWay }: UreaFacts): UreaAlong {
  const { percentOfFuel, litresPer1000Km = 0 } = urea;
  if (percentOfFuel !== undefined) {
    const share = percentOfFuel / 100;
    return {
      along: (fromM, toM) => amountBetween(fuelL.along, fromM, toM) * share,
      off: fuelL.off * share,
    };
  }
  const perM = litresPer1000Km / metresOf(1000);
  return { along: (fromM, toM) => amountBetween(wayM, fromM, toM) * perM, off: offWay * perM };
}

/** Its own reserve: as told, else a tenth of the tank where it goes by the fuel (ours). */
const reserveOf = ({ reserveLitres, percentOfFuel, tankLitres }: UreaFacts['urea']): number =>
  reserveLitres ?? (percentOfFuel === undefined ? 0 : tankLitres * RESERVE_SHARE);

/** The ways between two places that sell it, start and end among them: metres, and litres of it. */
function waysBetween(
  { wayM, offWay, lengthM, onwardM }: UreaFacts,
  stops: readonly Passing[],
  use: UreaAlong,
): { wayM: number; litres: number }[] {
  let [fromM, fromOffM] = [0, 0];
  return [...stops, { atM: lengthM, detourM: onwardM }].map(({ atM, detourM }) => {
    const offM = fromOffM + detourM;
    const way = {
      wayM: amountBetween(wayM, fromM, atM) + offM * offWay,
      litres: use.along(fromM, atM) + offM * use.off,
    };
    [fromM, fromOffM] = [atM, detourM];
    return way;
  });
}
