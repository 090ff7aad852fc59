import { parseKey } from '../extract/element-key.ts';
import type { JsonObject } from '../json/json-object.ts';

export interface GeoJsonIdentity {
  /** "node/1"; null when the feature does not say which OSM object it is. */
  id: string | null;
  /** What else the feature is called, for an id of our own. */
  label: string | null;
  /** ISO time of the last edit. */
  editedAt: string | null;
  /** Properties that were used up here and are no tags. */
  usedKeys: ReadonlySet<string>;
}

const SHORT_TYPES: Readonly<Record<string, string>> = { n: 'node', w: 'way', r: 'relation' };

/** Writings of an OSM id: "node/1", "n1", and "a4", where an area's number is twice a way's, or twice a relation's + 1. */
function idOf(value: unknown): string | null {
  if (typeof value !== 'string') return null;
  if (parseKey(value) !== null) return value;
  const short = /^([nwr])(-?\d+)$/.exec(value);
  if (short !== null) {
    const [, type = '', number = ''] = short;
    return `${SHORT_TYPES[type]}/${number}`;
  }
  const area = /^a(\d+)$/.exec(value);
  if (area === null) return null;
  const number = Number(area[1]);
  return number % 2 === 0 ? `way/${number / 2}` : `relation/${(number - 1) / 2}`;
}

/** An id of type and number in two properties. */
function idOfParts(type: unknown, number: unknown): string | null {
  if (typeof type !== 'string' || (typeof number !== 'number' && typeof number !== 'string')) return null;
  const id = `${type}/${String(number)}`;
  return parseKey(id) === null ? null : id;
}

const textOf = (value: unknown): string | null =>
  typeof value === 'string' && value !== '' ? value : typeof value === 'number' ? String(value) : null;

/** Which OSM object a feature says that it is, and when that was last edited. */
export function geoJsonIdentity(feature: JsonObject, properties: JsonObject): GeoJsonIdentity {
  const usedKeys = new Set<string>();
  const take = (id: string | null, ...keys: string[]): string | null => {
    if (id !== null) for (const key of keys) usedKeys.add(key);
    return id;
  };
  const id =
    idOf(properties['@id']) ??
    take(idOfParts(properties['@type'], properties['@id'])) ??
    take(idOf(properties.id), 'id', 'type') ??
    take(idOfParts(properties.type, properties.id), 'type', 'id') ??
    take(idOf(properties.osm_id), 'osm_id') ??
    take(idOfParts(properties.osm_type, properties.osm_id), 'osm_type', 'osm_id') ??
    idOf(feature.id);
  if (id !== null && properties.id === id) usedKeys.add('id');
  const meta = properties.meta;
  const inMeta =
    typeof meta === 'object' && meta !== null && 'timestamp' in meta ? meta.timestamp : undefined;
  const editedAt = textOf(properties['@timestamp'] ?? inMeta ?? properties.timestamp);
  return { id, label: textOf(feature.id) ?? textOf(properties['@id']), editedAt, usedKeys };
}
