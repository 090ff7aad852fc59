import { at } from '../../../../core/lists/at.ts';
import type { LatLon } from '../../extract/position.ts';
import type { Member, OsmType, ParsedElement, RawElement, RawNode } from '../../extract/raw-element.ts';
import { setTag } from '../../extract/set-tag.ts';
import { BrokenBlock } from '../wire/broken.ts';
import { Cursor, NOWHERE, type Range } from '../wire/cursor.ts';
import { isoTime } from '../wire/iso-time.ts';
import { decodeDeltas, decodeIntegers, decodeSums, holdLength } from '../wire/packed.ts';
import { type Block, latOf, lonOf } from './block.ts';
import { cursorOver } from './keys.ts';

/** Tags from two lists of string numbers of equal length. */
export function tagsOf(block: Block, keys: readonly number[], values: readonly number[]) {
  if (keys.length !== values.length)
    throw new BrokenBlock(`${keys.length} keys with ${values.length} values`);
  const tags: Record<string, string> = {};
  let index = 0;
  for (const key of keys) setTag(tags, block.strings.text(key), block.strings.text(at(values, index++)));
  return tags;
}

/** Version and time onto the element, where they are set. */
export function setEdit(element: RawElement, block: Block, version: number, storedTime: number): void {
  if (version > 0) element.version = version;
  const timestamp = isoTime(storedTime * block.dateGranularity);
  if (timestamp !== undefined) element.timestamp = timestamp;
}

/** Reads an Info message; gives whether it marks the element as deleted. */
function readInfo(element: RawElement, block: Block, range: Range): boolean {
  const cursor = new Cursor(block.bytes, range.start, range.end);
  let version = 0;
  let storedTime = 0;
  let visible = true;
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 8) version = cursor.integer();
    else if (tag === 16) storedTime = cursor.integer();
    else if (tag === 48) visible = cursor.integer() !== 0;
    else cursor.skip(tag);
  }
  setEdit(element, block, version, storedTime);
  return !visible;
}

/** A node that is not in dense form. Its position may lie off the Earth: the caller looks. */
export function decodePlainNode(block: Block, range: Range): ParsedElement<RawNode> {
  const parts = new Cursor(block.bytes, range.start, range.end);
  const common: CommonFields = { id: null, keys: NOWHERE, values: NOWHERE, info: NOWHERE };
  let lat: number | null = null;
  let lon: number | null = null;
  for (let tag = parts.tag(); tag !== 0; tag = parts.tag()) {
    if (tag === 8) common.id = parts.signed();
    else if (tag === 64) lat = parts.signed();
    else if (tag === 72) lon = parts.signed();
    else if (!readTextField(parts, tag, common)) parts.skip(tag);
  }
  const { id } = common;
  if (id === null || lat === null || lon === null) throw new BrokenBlock('a node without id or position');
  const element: RawNode = { type: 'node', id, lat: latOf(block, lat), lon: lonOf(block, lon) };
  setTags(element, block, common);
  return { element, deleted: readInfo(element, block, common.info) };
}

/** What nodes, ways and relations have alike; only the writing of the id differs. */
interface CommonFields {
  id: number | null;
  keys: Range;
  values: Range;
  info: Range;
}

/** Takes a field of tags or of the last edit; false for any other, which is left unread. */
function readTextField(parts: Cursor, tag: number, common: CommonFields): boolean {
  if (tag === 18) common.keys = parts.onlyRange(common.keys);
  else if (tag === 26) common.values = parts.onlyRange(common.values);
  else if (tag === 34) common.info = parts.range();
  else return false;
  return true;
}

function setTags(element: RawElement, block: Block, { keys, values }: CommonFields): void {
  if (keys === NOWHERE && values === NOWHERE) return;
  const tags = tagsOf(block, decodeIntegers(block.bytes, keys), decodeIntegers(block.bytes, values));
  element.tags = tags;
}

/** The tags alone of a way or relation: most that have a key of interest turn out to be of none. */
export function listedTags(block: Block, range: Range): Record<string, string> {
  const parts = new Cursor(block.bytes, range.start, range.end);
  let keys = NOWHERE;
  let values = NOWHERE;
  for (let tag = parts.tag(); tag !== 0; tag = parts.tag()) {
    if (tag === 18) keys = parts.onlyRange(keys);
    else if (tag === 26) values = parts.onlyRange(values);
    else parts.skip(tag);
    if (keys !== NOWHERE && values !== NOWHERE) break;
  }
  return tagsOf(block, decodeIntegers(block.bytes, keys), decodeIntegers(block.bytes, values));
}

interface ListFields {
  element: RawElement;
  deleted: boolean;
  /** Fields 8, 9 and 10, whose meaning differs by type. */
  eighth: Range;
  ninth: Range;
  tenth: Range;
}

/** What ways and relations have alike. */
function decodeListFields(block: Block, type: 'way' | 'relation', range: Range): ListFields {
  const parts = new Cursor(block.bytes, range.start, range.end);
  const common: CommonFields = { id: null, keys: NOWHERE, values: NOWHERE, info: NOWHERE };
  const lists = { eighth: NOWHERE, ninth: NOWHERE, tenth: NOWHERE };
  for (let tag = parts.tag(); tag !== 0; tag = parts.tag()) {
    if (tag === 8) common.id = parts.integer();
    else if (tag === 66) lists.eighth = parts.onlyRange(lists.eighth);
    else if (tag === 74) lists.ninth = parts.onlyRange(lists.ninth);
    else if (tag === 82) lists.tenth = parts.onlyRange(lists.tenth);
    else if (!readTextField(parts, tag, common)) parts.skip(tag);
  }
  const { id } = common;
  if (id === null) throw new BrokenBlock(`a ${type} without id`);
  const element: RawElement = { type, id };
  setTags(element, block, common);
  return { element, deleted: readInfo(element, block, common.info), ...lists };
}

/** A way; `geometry` holds the positions of its nodes where the file has them in the way itself. */
export function decodeWay(block: Block, range: Range): ParsedElement {
  const { element, deleted, eighth, ninth, tenth } = decodeListFields(block, 'way', range);
  const nodes = decodeSums(block.bytes, eighth);
  element.nodes = nodes;
  if (ninth !== NOWHERE || tenth !== NOWHERE) {
    const lats = decodeSums(block.bytes, ninth);
    const lons = decodeSums(block.bytes, tenth);
    if (lats.length !== nodes.length || lons.length !== nodes.length)
      throw new BrokenBlock(`way ${element.id} with ${nodes.length} nodes and ${lats.length} positions`);
    element.geometry = lats.map((lat, index) => ({
      lat: latOf(block, lat),
      lon: lonOf(block, at(lons, index)),
    }));
  }
  return { element, deleted };
}

let lineIdScratch = new Float64Array(2_048);

/**
 * The ids of a way's nodes, for the millions of ways of which nothing is kept: how many of them `ids` holds, which is good
 * until the next call; and whether the way holds the positions itself.
 */
export function wayNodeIds(
  block: Block,
  range: Range,
): { ids: Float64Array; count: number; isLocated: boolean } {
  const parts = cursorOver(block.bytes, range);
  let nodes = NOWHERE;
  let isLocated = false;
  for (let tag = parts.tag(); tag !== 0; tag = parts.tag()) {
    if (tag === 66) nodes = parts.onlyRange(nodes);
    else {
      isLocated ||= tag === 74;
      parts.skip(tag);
    }
  }
  holdLength(nodes);
  const most = nodes.end - nodes.start;
  if (lineIdScratch.length < most) lineIdScratch = new Float64Array(most);
  return { ids: lineIdScratch, count: decodeDeltas(block.bytes, nodes, lineIdScratch), isLocated };
}

/** The line of a way alone: ids of its nodes, and their positions where the file has them in the way itself. */
export function wayLine(block: Block, range: Range): { nodes: number[]; geometry: LatLon[] | null } {
  const parts = new Cursor(block.bytes, range.start, range.end);
  const lists = { eighth: NOWHERE, ninth: NOWHERE, tenth: NOWHERE };
  for (let tag = parts.tag(); tag !== 0; tag = parts.tag()) {
    if (tag === 66) lists.eighth = parts.onlyRange(lists.eighth);
    else if (tag === 74) lists.ninth = parts.onlyRange(lists.ninth);
    else if (tag === 82) lists.tenth = parts.onlyRange(lists.tenth);
    else parts.skip(tag);
  }
  const nodes = decodeSums(block.bytes, lists.eighth);
  if (lists.ninth === NOWHERE || lists.tenth === NOWHERE) return { nodes, geometry: null };
  const lons = decodeSums(block.bytes, lists.tenth);
  const geometry = decodeSums(block.bytes, lists.ninth).flatMap((lat, index) => {
    const lon = lons[index];
    return lon === undefined ? [] : [{ lat: latOf(block, lat), lon: lonOf(block, lon) }];
  });
  return { nodes, geometry };
}

const MEMBER_TYPES: readonly OsmType[] = ['node', 'way', 'relation'];

export function decodeRelation(block: Block, range: Range): ParsedElement {
  const { element, deleted, eighth, ninth, tenth } = decodeListFields(block, 'relation', range);
  const roles = decodeIntegers(block.bytes, eighth);
  const refs = decodeSums(block.bytes, ninth);
  const types = decodeIntegers(block.bytes, tenth);
  if (roles.length !== refs.length || types.length !== refs.length)
    throw new BrokenBlock(`relation ${element.id} with member lists of different length`);
  element.members = refs.map((ref, index): Member => {
    const type = MEMBER_TYPES[at(types, index)];
    if (type === undefined) throw new BrokenBlock(`relation ${element.id} with a member of unknown type`);
    return { type, ref, role: block.strings.text(at(roles, index)) };
  });
  return { element, deleted };
}
