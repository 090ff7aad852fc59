import type { MapData } from '../../../server/contract/answers/map.ts';
import type { Commodity } from '../../../server/contract/common.ts';

/** A gap that is not held, as it lies along the route. */
export interface TroubleSpan {
  commodity: Commodity;
  fromKm: number;
  toKm: number;
}

/** Each gap whose verdict is not `enough`: the map's pieces of it taken together. */
export function troubleSpans(map: MapData): TroubleSpan[] {
  const spans = new Map<string, TroubleSpan>();
  for (const { properties } of map.route.features) {
    const { commodity, gap, verdict, fromKm, toKm } = properties;
    if (verdict === 'enough') continue;
    const key = `${commodity} ${gap}`;
    const known = spans.get(key);
    spans.set(key, {
      commodity,
      fromKm: Math.min(fromKm, known?.fromKm ?? fromKm),
      toKm: Math.max(toKm, known?.toKm ?? toKm),
    });
  }
  return [...spans.values()];
}

/** A supply with none other of its commodity this near along the route is never drawn together with another (ours). */
const ALONE_KM = 30;
/** Places that are the same but for rounding. */
const SAME_KM = 0.01;

/**
 * Supplies that must never go into a cluster, as "fuel node/1": those where a plan fills, those at either end of a gap
 * that is not held, and those that count with no other near along the route.
 */
export function keySupplies(map: MapData, usedOnes: ReadonlySet<string> | null): Set<string> {
  const keys = new Set(usedOnes ?? []);
  const troubles = troubleSpans(map);
  for (const commodity of ['fuel', 'water'] as const) {
    const passings = map.supplies.features
      .filter(({ properties }) => properties.counts && properties.commodity === commodity)
      .flatMap(({ properties: { id, atKm } }) => atKm.map((km) => ({ id, km })))
      .sort((a, b) => a.km - b.km);
    const ends = troubles
      .filter((span) => span.commodity === commodity)
      .flatMap(({ fromKm, toKm }) => [fromKm, toKm]);
    for (const [index, { id, km }] of passings.entries()) {
      const isEnd = ends.some((end) => Math.abs(end - km) < SAME_KM);
      const before = passings.slice(0, index).findLast((other) => other.id !== id)?.km;
      const after = passings.slice(index + 1).find((other) => other.id !== id)?.km;
      const isAlone =
        km - (before ?? Number.NEGATIVE_INFINITY) > ALONE_KM &&
        (after ?? Number.POSITIVE_INFINITY) - km > ALONE_KM;
      if (isEnd || isAlone) keys.add(`${commodity} ${id}`);
    }
  }
  return keys;
}
