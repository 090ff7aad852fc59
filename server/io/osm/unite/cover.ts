import type { Commodity } from '../../../contract/common.ts';
import type { CoverArea } from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { NoCoverWhy } from '../../../core/phrases/readers.ts';
import { ringsOfBox } from '../../../core/route/cover/box-cover.ts';
import type { RawExtract } from '../extract/raw-extract.ts';

type Ring = [number, number][];

const COMMODITIES: readonly Commodity[] = ['fuel', 'water'];

/** The part of a convex closed ring on one side of a meridian (Sutherland and Hodgman 1974); null when none is. */
function clipAtMeridian(ring: Ring, meridian: number, keepWest: boolean): Ring | null {
  const keeps = (lon: number): boolean => (keepWest ? lon <= meridian : lon >= meridian);
  const kept: Ring = [];
  let from: [number, number] | undefined;
  for (const to of ring) {
    if (from !== undefined) {
      if (keeps(from[0])) kept.push(from);
      if (keeps(from[0]) !== keeps(to[0])) {
        const share = (meridian - from[0]) / (to[0] - from[0]);
        kept.push([meridian, from[1] + share * (to[1] - from[1])]);
      }
    }
    from = to;
  }
  const first = kept[0];
  return first === undefined || kept.length < 3 ? null : [...kept, first];
}

/** A hull whose longitudes may run on past 180, as rings within ±180. */
export function ringsOfHull(hull: Ring): Ring[] {
  if (hull.every(([lon]) => lon <= 180)) return [hull];
  const west = clipAtMeridian(hull, 180, true);
  const east = clipAtMeridian(hull, 180, false);
  const back = east?.map(([lon, lat]): [number, number] => [lon - 360, lat]) ?? null;
  return [west, back].filter((ring): ring is Ring => ring !== null);
}

/** The commodities for which this file would show every supply in its area. */
function commoditiesCovered(extract: RawExtract): readonly Commodity[] {
  // A file cut down to fuel says nothing of water, whatever bounds its header kept from the file it was cut from.
  const { fuel, water, general } = extract.shows;
  // Likewise a general map whose supplies are all of one kind; one without any is of a land that has none.
  if (general && fuel === water) return COMMODITIES;
  return COMMODITIES.filter((commodity) => extract.shows[commodity]);
}

const noCover = ({ source }: RawExtract, why: NoCoverWhy): Caution => ({
  code: 'cover-none',
  facts: { source, why },
});

/** What one extract covers, and what to know about it. */
export function coverOfExtract(extract: RawExtract): { areas: CoverArea[]; cautions: Caution[] } {
  const { source } = extract;
  const commodities = commoditiesCovered(extract);
  if (extract.format === 'gpx-waypoints') {
    return { areas: [], cautions: [noCover(extract, 'waypoints')] };
  }
  if (commodities.length === 0) {
    return { areas: [], cautions: [noCover(extract, 'no-supply')] };
  }
  const boxes = extract.bounds === null ? [] : [extract.bounds, ...(extract.moreBounds ?? [])];
  const guessed = boxes.length === 0;
  const rings = guessed ? ringsOfHull(extract.hull ?? []) : boxes.flatMap(ringsOfBox);
  if (rings.every((ring) => ring.length === 0)) {
    const incomplete = extract.cautions.some((caution) => caution.code === 'extract-incomplete');
    const why = incomplete ? 'incomplete' : 'no-area';
    return { areas: [], cautions: [noCover(extract, why)] };
  }
  const { general: isGeneral } = extract.shows;
  const isCut = extract.cautions.some((caution) => caution.code === 'maybe-cut');
  const plain = { rings, guessed, source, isGeneral, ...(isCut && { maybeCut: true as const }) };
  const trimmedBy =
    extract.roads !== null ? { roads: extract.roads } : isGeneral ? null : ('objects' as const);
  const areas = commodities.map((commodity): CoverArea => {
    const area = { commodity, ...plain };
    return trimmedBy === null ? area : { ...area, trimmedBy };
  });
  return { areas, cautions: [] };
}
