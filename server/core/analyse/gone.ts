import type { MappedFeature } from '../input/sources.ts';
import { locate } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { DatedExtract, DatedFeature } from '../supply/points/dated.ts';
import { placeOf } from '../supply/points/place.ts';
import { wantedFor } from '../supply/tags/wanted.ts';
import type { AreaOnRoute } from './route-cover.ts';

/** Off the route no farther than this an extract that covers the route there is held to cover the place as well (ours). */
const BESIDE_M = 5_000;

/**
 * Marks features that a newer general extract does not have although it covers their place: the map's makers may have
 * taken them away.
 */
export function markGone(
  features: readonly DatedFeature[],
  extracts: readonly DatedExtract[],
  { route, areas }: { route: RouteLine; areas: readonly AreaOnRoute[] },
): DatedFeature[] {
  if (extracts.length < 2) return [...features];
  const dayOf = new Map(extracts.map(({ source, asOf }) => [source, asOf?.slice(0, 10) ?? null]));
  return features.map((feature) => {
    const day = dayOf.get(feature.source ?? '') ?? null;
    if (day === null) return feature;
    const newer = areas.find(({ area, spans }) => {
      const other = dayOf.get(area.source) ?? null;
      return (
        other !== null &&
        other > day &&
        area.isGeneral === true &&
        !feature.seenIn?.includes(area.source) &&
        wantedFor(feature.tags).includes(area.commodity) &&
        covers(route, feature, { area, spans })
      );
    });
    return newer === undefined ? feature : { ...feature, goneIn: newer.area.source };
  });
}

function covers(route: RouteLine, feature: MappedFeature, { spans }: AreaOnRoute): boolean {
  const place = placeOf(feature.geometry);
  if (place === null) return false;
  const { atM, offM } = locate(route, ...place);
  return offM <= BESIDE_M && spans.some(({ fromM, toM }) => fromM <= atM && atM <= toM);
}
