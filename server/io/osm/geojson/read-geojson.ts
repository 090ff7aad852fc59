import type { Geometry } from 'geojson';
import { isNear, type NearGrid } from '../../../app/near-route.ts';
import type { Bbox, Commodity } from '../../../contract/common.ts';
import { InputProblem } from '../../../core/input/problem.ts';
import type { MapPapers, MappedFeature, PassedOver, Tags } from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { Phrase } from '../../../core/phrases/phrases.ts';
import { parseKey } from '../extract/element-key.ts';
import { boxOfPositions, FarList, NOTHING_FAR } from '../extract/far-objects.ts';
import { OwnIds } from '../extract/own-ids.ts';
import { isOnEarth } from '../extract/position.ts';
import type { RawExtract, ReadOptions } from '../extract/raw-extract.ts';
import { commoditiesOf } from '../extract/wanted-tags.ts';
import { countContent, isGeneralMap, noContent, tellsByRoads } from '../extract/whole-file/content-census.ts';
import { DeclaredBounds } from '../extract/whole-file/declared-bounds.ts';
import { HullOfObjects } from '../extract/whole-file/hull.ts';
import { osmPapers, plainPapers } from '../extract/whole-file/papers.ts';
import { isObject, type JsonObject, shown } from '../json/json-object.ts';
import { geoJsonIdentity } from './geojson-identity.ts';
import { geoJsonTags } from './geojson-tags.ts';
import { GroundAround } from './ground-around.ts';

/** How deep the positions lie in `coordinates` (RFC 7946, 3.1). */
const DEPTHS: ReadonlyMap<unknown, number> = new Map([
  ['Point', 0],
  ['MultiPoint', 1],
  ['LineString', 1],
  ['MultiLineString', 2],
  ['Polygon', 2],
  ['MultiPolygon', 3],
]);

/** The names that a `crs` member may have for WGS 84 in longitude and latitude; any other is another system. */
const WGS84_NAMES = /CRS84|4326/i;

type Judged = { geometry: Geometry; positions: [number, number][] } | { reason: Phrase };

/** Checks a geometry, trims heights, and gathers its positions; or says why it cannot be used. */
function judge(value: unknown): Judged {
  if (!isObject(value)) return { reason: { phrase: 'skipped-no-geometry', facts: {} } };
  const depth = DEPTHS.get(value.type);
  if (depth === undefined)
    return { reason: { phrase: 'skipped-geometry-type', facts: { type: shown(value.type) } } };
  const positions: [number, number][] = [];
  let reason: Phrase | null = null;
  const trim = (part: unknown, levels: number): unknown => {
    if (!Array.isArray(part)) {
      reason ??= { phrase: 'skipped-misshapen', facts: {} };
      return part;
    }
    if (levels > 0) return part.map((inner) => trim(inner, levels - 1));
    const [lon, lat] = part as unknown[];
    if (isOnEarth(lon, lat)) positions.push([lon as number, lat as number]);
    else reason ??= { phrase: 'skipped-feature-off-earth', facts: { lon: shown(lon), lat: shown(lat) } };
    return [lon, lat];
  };
  const coordinates = trim(value.coordinates, depth);
  if (reason !== null) return { reason };
  if (positions.length === 0) return { reason: { phrase: 'skipped-empty-geometry', facts: {} } };
  return { geometry: { type: value.type, coordinates } as Geometry, positions };
}

/** Refuses coordinates of another system: they would put supplies where there are none. */
function checkSystem(document: JsonObject, source: string): void {
  const crs = document.crs;
  if (!isObject(crs) || !isObject(crs.properties)) return;
  const name = shown(crs.properties.name ?? '');
  if (WGS84_NAMES.test(name)) return;
  throw new InputProblem({
    code: 'json-shape',
    source,
    place: '/crs',
    came: `coordinates in the system "${name}"`,
    expected: 'longitude and latitude (WGS 84)',
    remedy: 'Export it as EPSG:4326',
  });
}

function boundsOf(document: JsonObject): DeclaredBounds {
  const bounds = new DeclaredBounds();
  const bbox = document.bbox;
  if (!Array.isArray(bbox)) return bounds;
  const numbers = bbox.map(Number);
  // With heights there are six numbers: west, south, lowest, east, north, highest (RFC 7946, 5).
  const [west, south, east, north] = numbers.length === 6 ? [0, 1, 3, 4].map((i) => numbers[i]) : numbers;
  bounds.add([west, south, east, north] as Bbox);
  return bounds;
}

class FeatureReader {
  readonly features: MappedFeature[] = [];
  readonly skipped: PassedOver[] = [];
  readonly hull = new HullOfObjects();
  readonly far = new FarList();
  readonly shown = new Set<Commodity>();
  readonly content = noContent();
  readonly around: GroundAround | null;
  placed = 0;
  offEarth = 0;
  /** Whether any feature says which OSM object it is. */
  namesOsm = false;
  readonly #ownIds = new OwnIds();
  readonly #source: string;
  readonly #near: NearGrid | null;

  constructor(source: string, near: NearGrid | null) {
    this.#source = source;
    this.#near = near;
    this.around = near?.around === undefined ? null : new GroundAround(near, near.around);
  }

  #nameOf(number: number): string {
    return `${this.#source} feature ${number}`;
  }

  read(value: unknown, number: number): void {
    if (!isObject(value) || value.type !== 'Feature') {
      this.skipped.push({ id: this.#nameOf(number), reason: { phrase: 'skipped-no-feature', facts: {} } });
      return;
    }
    const judged = judge(value.geometry);
    if ('positions' in judged) {
      this.placed += 1;
      for (const [lon, lat] of judged.positions) this.hull.add(lon, lat);
    } else if (judged.reason.phrase === 'skipped-feature-off-earth') this.offEarth += 1;
    const properties = isObject(value.properties) ? value.properties : {};
    const identity = geoJsonIdentity(value, properties);
    const tags = geoJsonTags(properties, identity.usedKeys);
    this.namesOsm ||= identity.id !== null;
    const fallbackId = identity.id ?? this.#nameOf(number);
    if (Object.keys(tags).length === 0) {
      this.skipped.push({ id: fallbackId, reason: { phrase: 'skipped-no-tags', facts: {} } });
      return;
    }
    this.around?.take(identity.id, tags, judged);
    const commodities = commoditiesOf(tags);
    if (commodities.length === 0) {
      this.#count(tags, judged);
      return;
    }
    if ('reason' in judged) {
      this.skipped.push({ id: fallbackId, reason: judged.reason });
      return;
    }
    for (const commodity of commodities) this.shown.add(commodity);
    const id = identity.id ?? this.#ownIds.of(tags.name ?? identity.label ?? String(number));
    if (this.#isFar(id, identity.editedAt, judged.positions)) return;
    this.features.push({ id, geometry: judged.geometry, tags, editedAt: identity.editedAt });
  }

  #count(tags: Tags, judged: Judged): void {
    const isLine = 'geometry' in judged && judged.geometry.type !== 'Point';
    countContent(this.content, tags, isLine);
  }

  /** Notes a far object. Those of the user's own naming stay: their names hang on one another. */
  #isFar(id: string, editedAt: string | null, positions: readonly [number, number][]): boolean {
    const object = parseKey(id);
    const box = boxOfPositions(positions);
    if (object === null || this.#near === null || box === null || isNear(this.#near, box)) return false;
    this.far.add({ ...object, timestamp: editedAt }, box);
    return true;
  }
}

/** Exports of overpass-turbo and osmtogeojson carry the base's time and the terms; features by OSM ids are OSM's. */
function papersOf(document: JsonObject, namesOsm: boolean): MapPapers {
  const { timestamp, copyright, attribution, licence, license } = document;
  const written = { asOf: timestamp, attribution: copyright ?? attribution, licence: licence ?? license };
  return namesOsm ? osmPapers(written) : plainPapers(written);
}

function groundOf({
  around,
  content,
}: FeatureReader): Pick<RawExtract, 'roads' | 'surroundings' | 'drawnRoads'> {
  if (around === null) return { roads: null, surroundings: [], drawnRoads: null };
  const { surroundings } = around;
  const roads = tellsByRoads(content) ? around.roads() : { roads: null, drawnRoads: null };
  return { ...roads, surroundings };
}

const nowhereOnEarth = (source: string) =>
  new InputProblem({
    code: 'coordinate-out-of-range',
    source,
    came: 'no feature has a position on earth',
    expected: 'longitude from -180 to 180 and latitude from -90 to 90, in this order',
    remedy: 'Export it as EPSG:4326',
  });

/**
 * Reads GeoJSON whose features carry OSM tags. Features that supply nothing are passed over; those that do and cannot
 * be placed are listed as skipped. A `bbox` member is taken for declared bounds.
 * Throws InputProblem: `json-shape`, and `coordinate-out-of-range` when no feature lies on earth.
 */
export function readGeoJson(document: JsonObject, options: ReadOptions): RawExtract {
  const { source } = options;
  checkSystem(document, source);
  const list = document.type === 'Feature' ? [document] : document.features;
  if (!Array.isArray(list)) {
    throw new InputProblem({
      code: 'json-shape',
      source,
      place: '/features',
      came: 'no list of features',
      expected: 'an array',
      remedy: 'Export it again',
    });
  }
  const reader = new FeatureReader(source, options.near ?? null);
  for (const [i, value] of list.entries()) reader.read(value, i + 1);
  if (reader.placed === 0 && reader.offEarth > 0) {
    throw nowhereOnEarth(source);
  }
  const bounds = boundsOf(document);
  const cautions: Caution[] = bounds.cautions(source);
  if (reader.skipped.length > 0) {
    cautions.push({ code: 'features-skipped', facts: { source, count: reader.skipped.length } });
  }
  return {
    source,
    format: 'geojson',
    papers: papersOf(document, reader.namesOsm),
    elements: [],
    wanted: new Set(),
    far: reader.far.objects(),
    ...groundOf(reader),
    unwanted: NOTHING_FAR,
    deleted: NOTHING_FAR,
    features: reader.features,
    bounds: bounds.first,
    hull: bounds.any ? null : reader.hull.ring(),
    shows: {
      fuel: reader.shown.has('fuel'),
      water: reader.shown.has('water'),
      general: isGeneralMap(reader.content),
    },
    counts: { nodes: 0, ways: 0, relations: 0 },
    ground: [],
    skipped: reader.skipped,
    cautions,
  };
}
