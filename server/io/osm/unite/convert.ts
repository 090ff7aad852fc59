/// <reference path="./osmtogeojson.d.ts" />
import type { Geometry } from 'geojson';
import osmtogeojson, { type OsmFeature } from 'osmtogeojson';
import type { MappedFeature, PassedOver } from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { Phrase } from '../../../core/phrases/phrases.ts';
import { keyOf, keyOfRef } from '../extract/element-key.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';
import { KnownPositions, type Placed } from '../keep/known-positions.ts';
import { Company } from './company.ts';

export interface Converted {
  features: MappedFeature[];
  skipped: PassedOver[];
  cautions: Caution[];
}

/** Ways and relations that are made into features at a time: memory is taken for so many only. Ours. */
const BATCH_OF = 500;

/** Ids named in a caution before it says "and others". Ours. */
const NAMED_MAX = 5;

const onEarthOrNull = (at: unknown): LatLon | null => (liesOnEarth(at) ? { lat: at.lat, lon: at.lon } : null);

/** What is no way has no role: osmtogeojson would take its number for that of a way. */
const roleInArea = ({ type, role }: { type: string; role: string }): string =>
  type === 'way' ? role || 'outer' : '';

/**
 * A copy that osmtogeojson may change, without what it would place by a stand-in (centres and bounds are ours to use),
 * and with ways of no role in a multipolygon taken for outlines, as they mostly are.
 */
function prepared(element: RawElement): RawElement {
  const { center: _center, bounds: _bounds, ...copy } = element;
  if (copy.type === 'way') {
    if (copy.nodes !== undefined) copy.nodes = [...copy.nodes];
    if (copy.geometry !== undefined) copy.geometry = copy.geometry.map(onEarthOrNull);
    if (copy.geometry?.every((at) => at === null)) delete copy.geometry;
  }
  if (copy.type === 'relation') {
    const isArea = copy.tags?.type === 'multipolygon' || copy.tags?.type === 'boundary';
    copy.members = (copy.members ?? []).map((member) => ({
      ...member,
      ...(isArea && { role: roleInArea(member) }),
      ...(member.geometry !== undefined && { geometry: member.geometry.map(onEarthOrNull) }),
    }));
  }
  return copy;
}

const RANK: Readonly<Record<string, number>> = { MultiPolygon: 3, Polygon: 3, LineString: 2, Point: 1 };

const isRing = (ring: number[][]): boolean => {
  const first = ring[0];
  const last = ring.at(-1);
  return ring.length >= 4 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
};

function isSound(geometry: Geometry): boolean {
  if (geometry.type === 'Polygon') return geometry.coordinates.every(isRing);
  if (geometry.type === 'MultiPolygon') return geometry.coordinates.flat().every(isRing);
  return true;
}

/** The best of the features made of one element: areas before lines before points. */
function bestById(features: readonly OsmFeature[]): Map<string, OsmFeature> {
  const best = new Map<string, OsmFeature>();
  for (const feature of features) {
    const id = String(feature.id);
    const known = best.get(id);
    if (known === undefined || (RANK[feature.geometry.type] ?? 0) > (RANK[known.geometry.type] ?? 0)) {
      best.set(id, feature);
    }
  }
  return best;
}

const saysTheSame = (way: RawElement, relation: RawElement): boolean =>
  Object.entries(way.tags ?? {}).every(([key, value]) => relation.tags?.[key] === value);

/** For each way that outlines a wanted relation with the same tags: that relation. */
function outlinesOf(wanted: readonly RawElement[], elements: ReadonlyMap<string, RawElement>) {
  const outlines = new Map<string, string>();
  for (const relation of wanted) {
    if (relation.type !== 'relation' || relation.tags?.type !== 'multipolygon') continue;
    for (const member of relation.members ?? []) {
      const key = keyOfRef(member.type, member.ref);
      const way = member.type === 'way' ? elements.get(key) : undefined;
      if (way !== undefined && saysTheSame(way, relation)) outlines.set(key, keyOf(relation));
    }
  }
  return outlines;
}

function roughCaution(ids: readonly string[]): Caution[] {
  if (ids.length === 0) return [];
  return [{ code: 'placed-roughly', facts: { count: ids.length, ids: ids.slice(0, NAMED_MAX) } }];
}

/** Each wanted element, in order, with the feature that osmtogeojson makes of it; nodes need none made. */
function* madeInBatches(
  wanted: readonly RawElement[],
  byKey: ReadonlyMap<string, RawElement>,
  batchOf: number,
): Generator<{ element: RawElement; made: OsmFeature | undefined }> {
  const listed = wanted.filter(({ type }) => type !== 'node');
  const company = new Company(byKey, listed);
  let made = new Map<string, OsmFeature>();
  let done = 0;
  for (const element of wanted) {
    if (element.type === 'node') {
      yield { element, made: undefined };
      continue;
    }
    if (done % batchOf === 0) {
      const together = company.of(listed.slice(done, done + batchOf));
      made = bestById(osmtogeojson({ elements: together.map(prepared) }).features);
    }
    done += 1;
    yield { element, made: made.get(keyOf(element)) };
  }
}

/**
 * Turns the wanted among the elements into features with their mapped geometry and their own tags. Every wanted element
 * gives one feature or one entry in `skipped`; `elements` has each object once, with the nodes and members needed.
 * `batchOf`, how many ways and relations are made at a time, changes nothing in the result.
 */
export function convert(
  elements: readonly RawElement[],
  wantedKeys: ReadonlySet<string>,
  batchOf = BATCH_OF,
): Converted {
  return convertKeyed(new Map(elements.map((element) => [keyOf(element), element])), wantedKeys, batchOf);
}

/** The same of elements by "node/1". */
export function convertKeyed(
  byKey: ReadonlyMap<string, RawElement>,
  wantedKeys: ReadonlySet<string>,
  batchOf = BATCH_OF,
): Converted {
  const wanted: RawElement[] = [];
  for (const [key, element] of byKey) if (wantedKeys.has(key)) wanted.push(element);
  const outlines = outlinesOf(wanted, byKey);
  const known = new KnownPositions(byKey);
  const converted: Converted = { features: [], skipped: [], cautions: [] };
  const rough: string[] = [];
  for (const { element, made } of madeInBatches(wanted, byKey, batchOf)) {
    const id = keyOf(element);
    const outlined = outlines.get(id);
    if (outlined !== undefined) {
      converted.skipped.push({ id, reason: { phrase: 'skipped-outline', facts: { of: outlined } } });
      continue;
    }
    const placed = placedBy(made, element, known);
    if ('phrase' in placed) {
      converted.skipped.push({ id, reason: placed });
      continue;
    }
    if (placed.rough) rough.push(id);
    const editedAt = element.timestamp ?? null;
    converted.features.push({ id, geometry: placed.geometry, tags: element.tags ?? {}, editedAt });
  }
  converted.cautions.push(...roughCaution(rough));
  return converted;
}

/** Where an element is: as osmtogeojson made it, or by what is known; or why it cannot be placed. */
function placedBy(
  feature: OsmFeature | undefined,
  element: RawElement,
  known: KnownPositions,
): Placed | Phrase {
  // Closed rings are a true part of the area even when a member is missing; open ones are not.
  if (feature !== undefined && isSound(feature.geometry)) {
    return { geometry: feature.geometry, rough: feature.properties?.tainted === true };
  }
  return known.place(element);
}
