import type { Caution } from '../../../contract/common.ts';
import type { FuelUse } from '../../../contract/fuel-use.ts';
import { amountBetween, type Profile } from '../../gaps/profile.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';

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
  onwardKm: number;
}

/**
 * Urea solution over the route: what it takes, how far a tank goes, and the longest way between stations that list
 * it and count for fuel. The start is taken as full; past the end the way goes on to the next supply.
 */
export function ureaOf(facts: UreaFacts): { urea: NonNullable<FuelUse['urea']>; cautions: Caution[] } {
  const selling = new Set(
    facts.points
      .filter((point) => point.commodity === 'fuel' && UREA_KEYS.some((key) => point.tags[key] === 'yes'))
      .map((point) => point.id),
  );
  const stops = facts.passings.filter(
    (passing) => passing.commodity === 'fuel' && passing.counts && selling.has(passing.id),
  );
  const { litresPer1000Km, tankLitres } = facts.urea;
  const edges = [
    { atM: 0, offM: 0 },
    ...stops.map((stop) => ({ atM: stop.atM, offM: stop.detourM })),
    { atM: facts.lengthM, offM: facts.onwardKm * 1000 },
  ];
  const longestKm = edges.slice(1).reduce((longest, edge, index) => {
    const before = edges[index]!;
    const wayM = amountBetween(facts.wayM, before.atM, edge.atM);
    return Math.max(longest, (wayM + (before.offM + edge.offM) * facts.offWay) / 1000);
  }, 0);
  const shortL = Math.max(0, (longestKm / 1000) * litresPer1000Km - tankLitres);
  const urea = {
    needL: (amountBetween(facts.wayM, 0, facts.lengthM) / 1e6) * litresPer1000Km,
    tankL: tankLitres,
    rangeKm: (tankLitres / litresPer1000Km) * 1000,
    longestKm,
    shortL,
    points: stops.map(({ id, name, atM, detourM }) => ({
      id,
      name,
      atKm: atM / 1000,
      detourKm: detourM / 1000,
    })),
  };
  if (shortL === 0) return { urea, cautions: [] };
  const text = `Urea solution: the longest way without a place that lists it is ${longestKm.toFixed(0)} km, a tank goes ${urea.rangeKm.toFixed(0)} km. Carry ${shortL.toFixed(1)} l more: many engines do not start without it.`;
  return { urea, cautions: [{ code: 'urea-short', text }] };
}
