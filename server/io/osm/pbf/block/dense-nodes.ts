import { numberAt } from '../../../../core/lists/at.ts';
import type { ParsedElement, RawNode } from '../../extract/raw-element.ts';
import { BrokenBlock } from '../wire/broken.ts';
import { Cursor, NOWHERE, type Range } from '../wire/cursor.ts';
import { decodeDeltas, integersAt, sumsAt } from '../wire/packed.ts';
import { type Block, latOf, lonOf } from './block.ts';
import { setEdit, tagsOf } from './elements.ts';
import { longNumber } from './string-table.ts';

/** Where the lists of a DenseNodes message lie. */
export interface DenseNodes {
  ids: Range;
  lats: Range;
  lons: Range;
  keysAndValues: Range;
  versions: Range;
  times: Range;
  visibles: Range;
}

export function openDenseNodes(bytes: Uint8Array, range: Range): DenseNodes {
  const dense: DenseNodes = {
    ids: NOWHERE,
    lats: NOWHERE,
    lons: NOWHERE,
    keysAndValues: NOWHERE,
    versions: NOWHERE,
    times: NOWHERE,
    visibles: NOWHERE,
  };
  const cursor = new Cursor(bytes, range.start, range.end);
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 10) dense.ids = cursor.onlyRange(dense.ids);
    else if (tag === 42) openDenseInfo(bytes, cursor.range(), dense);
    else if (tag === 66) dense.lats = cursor.onlyRange(dense.lats);
    else if (tag === 74) dense.lons = cursor.onlyRange(dense.lons);
    else if (tag === 82) dense.keysAndValues = cursor.onlyRange(dense.keysAndValues);
    else cursor.skip(tag);
  }
  return dense;
}

function openDenseInfo(bytes: Uint8Array, range: Range, dense: DenseNodes): void {
  const cursor = new Cursor(bytes, range.start, range.end);
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 10) dense.versions = cursor.onlyRange(dense.versions);
    else if (tag === 18) dense.times = cursor.onlyRange(dense.times);
    else if (tag === 50) dense.visibles = cursor.onlyRange(dense.visibles);
    else cursor.skip(tag);
  }
}

/** Reused from block to block within a thread. */
let idScratch = new Float64Array(0);
let latScratch = new Float64Array(0);
let lonScratch = new Float64Array(0);

const lengthOf = (range: Range) => range.end - range.start;

/** All the ids; valid until the next call. */
export function denseIds(bytes: Uint8Array, dense: DenseNodes): Float64Array {
  if (idScratch.length < lengthOf(dense.ids)) idScratch = new Float64Array(lengthOf(dense.ids));
  return idScratch.subarray(0, decodeDeltas(bytes, dense.ids, idScratch));
}

/** All the positions as stored (see latOf, lonOf); valid until the next call. */
export function densePositions(bytes: Uint8Array, dense: DenseNodes, count: number) {
  if (latScratch.length < lengthOf(dense.lats)) latScratch = new Float64Array(lengthOf(dense.lats));
  if (lonScratch.length < lengthOf(dense.lons)) lonScratch = new Float64Array(lengthOf(dense.lons));
  const latCount = decodeDeltas(bytes, dense.lats, latScratch);
  const lonCount = decodeDeltas(bytes, dense.lons, lonScratch);
  if (latCount !== count || lonCount !== count)
    throw new BrokenBlock(`${count} nodes with ${latCount} latitudes and ${lonCount} longitudes`);
  return { lats: latScratch, lons: lonScratch };
}

/** Whether a node has no tags: an end of a list that follows another end, or the beginning. Looks no farther than the first. */
export function hasUntagged(bytes: Uint8Array, { keysAndValues }: DenseNodes, count: number): boolean {
  const { start, end } = keysAndValues;
  if (start === end) return count > 0;
  for (let position = start, before = 0; position < end; position += 1) {
    const byte = bytes[position] ?? 0;
    if (byte === 0 && before === 0) return true;
    before = byte;
  }
  return false;
}

/** A node of a dense block that has one of the keys looked for. */
export interface TagHit {
  /** Place in the block. */
  place: number;
  tags: Record<string, string>;
  /** Marks of its keys, see key-flags.ts. */
  flags: number;
}

/**
 * Nodes that have a key with one of the marks `mask`, and their tags. `count` is the number of nodes. Bytes past the
 * end are read as 0; the position, looked at in the end, tells of it.
 */
export function tagHits(block: Block, dense: DenseNodes, mask: number, count: number): TagHit[] {
  const hits: TagHit[] = [];
  const { bytes, strings } = block;
  const { flags } = strings;
  const { start, end } = dense.keysAndValues;
  if (start === end || (strings.anyFlag & mask) === 0) return hits;
  let position = start;
  let place = 0;
  let began = start;
  let seen = 0;
  while (position < end) {
    let key = bytes[position++] ?? 0;
    if (key === 0) {
      if ((seen & mask) !== 0) hits.push({ place, tags: denseTags(block, began, position - 1), flags: seen });
      place += 1;
      began = position;
      seen = 0;
      continue;
    }
    if (key > 127) {
      const second = bytes[position++] ?? 0;
      key = (key & 127) | ((second & 127) << 7);
      if (second > 127) key = longNumber(key, bytes[position++] ?? 0);
    }
    if (key >= strings.count) throw new BrokenBlock('a string number beyond the table');
    seen |= flags[key] ?? 0;
    while ((bytes[position++] ?? 0) > 127);
  }
  if (position > end || began !== end) throw new BrokenBlock('a list of tags that runs past its end');
  if (place !== count) throw new BrokenBlock(`tags of ${place} nodes where there are ${count}`);
  return hits;
}

function denseTags(block: Block, start: number, end: number): Record<string, string> {
  const cursor = new Cursor(block.bytes, start, end);
  const keys: number[] = [];
  const values: number[] = [];
  while (cursor.position < end) {
    keys.push(cursor.integer());
    values.push(cursor.integer());
  }
  return tagsOf(block, keys, values);
}

/** The nodes at ascending `places`, without tags. */
export function denseNodesAt(
  block: Block,
  dense: DenseNodes,
  ids: Float64Array,
  places: readonly number[],
): ParsedElement<RawNode>[] {
  const { bytes } = block;
  if (places.length > 0 && (dense.lats === NOWHERE || dense.lons === NOWHERE))
    throw new BrokenBlock('nodes without positions');
  const lats = sumsAt(bytes, dense.lats, places);
  const lons = sumsAt(bytes, dense.lons, places);
  const versions = lengthOf(dense.versions) === 0 ? null : integersAt(bytes, dense.versions, places);
  const times = lengthOf(dense.times) === 0 ? null : sumsAt(bytes, dense.times, places);
  const visibles = lengthOf(dense.visibles) === 0 ? null : integersAt(bytes, dense.visibles, places);
  return places.map((place, index) => {
    const element: RawNode = {
      type: 'node',
      id: numberAt(ids, place),
      lat: latOf(block, numberAt(lats, index)),
      lon: lonOf(block, numberAt(lons, index)),
    };
    setEdit(element, block, versions?.[index] ?? 0, times?.[index] ?? 0);
    return { element, deleted: visibles?.[index] === 0 };
  });
}
