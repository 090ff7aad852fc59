import { InputProblem } from '../../../core/input/problem.ts';
import type { OsmType, ParsedElement, RawElement } from '../extract/raw-element.ts';
import { setTag } from '../extract/set-tag.ts';
import { isObject, type JsonObject, shown } from './json-object.ts';

type Member = NonNullable<RawElement['members']>[number];
type At = { lat: number; lon: number };

const isOsmType = (value: unknown): value is OsmType =>
  value === 'node' || value === 'way' || value === 'relation';

/** Some converters write numbers as text; what is no number at all becomes NaN, and later no position. */
export const numberOf = (value: unknown): number =>
  typeof value === 'number'
    ? value
    : typeof value === 'string' && value.trim() !== ''
      ? Number(value)
      : Number.NaN;

const idOf = (value: unknown): number | null => {
  const id = numberOf(value);
  return Number.isSafeInteger(id) ? id : null;
};

/** A position, null when the object has none. */
const atOf = (value: unknown): At | null =>
  isObject(value) && (value.lat !== undefined || value.lon !== undefined)
    ? { lat: numberOf(value.lat), lon: numberOf(value.lon) }
    : null;

const lineOf = (value: unknown): (At | null)[] | null => (Array.isArray(value) ? value.map(atOf) : null);

function tagsOf(value: unknown): Record<string, string> | null {
  if (!isObject(value)) return null;
  const tags: Record<string, string> = {};
  for (const [key, tag] of Object.entries(value)) {
    if (typeof tag === 'string') setTag(tags, key, tag);
    else if (typeof tag === 'number' || typeof tag === 'boolean') setTag(tags, key, String(tag));
  }
  return tags;
}

function shapeProblem(source: string, place: string, came: string, expected: string): InputProblem {
  return new InputProblem({ code: 'json-shape', source, place, came, expected, remedy: 'Download it again' });
}

function memberOf(value: unknown, place: string, source: string): Member {
  if (!isObject(value)) throw shapeProblem(source, place, 'a member that is no object', 'an object');
  const ref = idOf(value.ref);
  if (!isOsmType(value.type) || ref === null) {
    throw shapeProblem(source, place, 'a member without type or ref', 'node, way or relation, and a number');
  }
  const member: Member = { type: value.type, ref, role: typeof value.role === 'string' ? value.role : '' };
  const at = atOf(value);
  if (at !== null) Object.assign(member, at);
  const line = lineOf(value.geometry);
  if (line !== null) member.geometry = line;
  return member;
}

function addParts(element: RawElement, value: JsonObject, place: string, source: string): void {
  if (element.type === 'way' && Array.isArray(value.nodes)) {
    element.nodes = value.nodes.map((node) => {
      const ref = idOf(node);
      if (ref === null) throw shapeProblem(source, `${place}/nodes`, `a node "${shown(node)}"`, 'a number');
      return ref;
    });
  }
  const line = element.type === 'way' ? lineOf(value.geometry) : null;
  if (line !== null) element.geometry = line;
  if (element.type === 'relation') {
    const members = Array.isArray(value.members) ? value.members : [];
    element.members = members.map((member, i) => memberOf(member, `${place}/members/${i}`, source));
  }
  const center = atOf(value.center);
  if (center !== null) element.center = center;
  if (isObject(value.bounds)) {
    const { minlat, minlon, maxlat, maxlon } = value.bounds;
    element.bounds = {
      minlat: numberOf(minlat),
      minlon: numberOf(minlon),
      maxlat: numberOf(maxlat),
      maxlon: numberOf(maxlon),
    };
  }
}

/**
 * Checks one entry of `elements` and takes what is needed of it; null for what is no OSM object (areas, counts, derived
 * elements). Throws InputProblem `json-shape` at `place`.
 */
export function overpassElement(value: unknown, place: string, source: string): ParsedElement | null {
  if (!isObject(value)) throw shapeProblem(source, place, 'an element that is no object', 'an object');
  if (!isOsmType(value.type)) {
    if (typeof value.type === 'string') return null;
    throw shapeProblem(source, place, 'an element without type', 'node, way or relation');
  }
  const id = idOf(value.id);
  if (id === null)
    throw shapeProblem(source, place, `a ${value.type} without a number as id`, 'a whole number');
  const element: RawElement = { type: value.type, id };
  if (element.type === 'node') Object.assign(element, atOf(value));
  addParts(element, value, place, source);
  const tags = tagsOf(value.tags);
  if (tags !== null) element.tags = tags;
  const version = idOf(value.version);
  if (version !== null) element.version = version;
  if (typeof value.timestamp === 'string') element.timestamp = value.timestamp;
  return { element, deleted: value.visible === false || value.action === 'delete' };
}
