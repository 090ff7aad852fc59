import { lowerBound } from '../../../lists/lower-bound.ts';
import { isOnEarth } from '../../extract/position.ts';
import type { ParsedElement, RawElement } from '../../extract/raw-element.ts';
import { type Block, FORMS, forEachObject } from '../block/block.ts';
import { denseIds, denseNodesAt, openDenseNodes } from '../block/dense-nodes.ts';
import { decodePlainNode, decodeRelation, decodeWay } from '../block/elements.ts';
import { Cursor, type Range } from '../wire/cursor.ts';
import { type PackedNodes, packNodes } from './packed-nodes.ts';

/** Ids looked for in a block, ascending. */
export interface Sought {
  node: Float64Array;
  way: Float64Array;
  relation: Float64Array;
}

export const SOUGHT_NOTHING: Sought = {
  node: new Float64Array(0),
  way: new Float64Array(0),
  relation: new Float64Array(0),
};

const holds = (ids: Float64Array, id: number): boolean => ids[lowerBound(ids, id)] === id;

/** The places of a block's ids that are among `sought`. */
function placesOf(ids: Float64Array, sought: Float64Array): number[] {
  const places: number[] = [];
  let ahead = 0;
  let before = Number.NEGATIVE_INFINITY;
  for (let place = 0; place < ids.length; place += 1) {
    const id = ids[place] ?? Number.NaN;
    // Ids usually rise: walk along. When one falls back, look it up from the start.
    if (id < before) ahead = lowerBound(sought, id);
    else while ((sought[ahead] ?? Number.POSITIVE_INFINITY) < id) ahead += 1;
    before = id;
    if (sought[ahead] === id) places.push(place);
  }
  return places;
}

/**
 * The elements of a block with the ids sought, in the block's order, without tags and times: what lends geometry.
 * Deleted ones come with `version` alone, so that an older version of the same object can be known as old.
 *
 * @throws BrokenBlock
 */
export function findInBlock(block: Block, sought: Sought): Found {
  const nodes: RawElement[] = [];
  const listed: RawElement[] = [];
  forEachObject(block, (form, cursor) => {
    const ids = idsFor(form, sought);
    if (ids.length === 0) {
      cursor.skip(form);
      return;
    }
    const list = form === FORMS.way || form === FORMS.relation ? listed : nodes;
    for (const parsed of findInObject(block, form, cursor.range(), ids)) list.push(lent(parsed));
  });
  return { nodes: packNodes(nodes), listed };
}

const NONE = new Float64Array(0);

/** The ids sought among objects of that form. */
function idsFor(form: number, sought: Sought): Float64Array {
  if (form === FORMS.denseNodes || form === FORMS.node) return sought.node;
  if (form === FORMS.way) return sought.way;
  return form === FORMS.relation ? sought.relation : NONE;
}

function findInObject(block: Block, form: number, range: Range, ids: Float64Array): ParsedElement[] {
  if (form === FORMS.denseNodes) return findDense(block, range, ids);
  if (form === FORMS.node) {
    const node = decodePlainNode(block, range);
    return holds(ids, node.element.id) ? [node] : [];
  }
  if (!holds(ids, listedId(block, range))) return [];
  return [form === FORMS.way ? decodeWay(block, range) : decodeRelation(block, range)];
}

/** What was found in a block. */
export interface Found {
  nodes: PackedNodes;
  listed: RawElement[];
}

/** A found element that gives no geometry: no position, no nodes, no members. */
export const isBare = (element: RawElement): boolean =>
  element.lat === undefined && element.nodes === undefined && element.members === undefined;

/** What geometry needs of an element, and its version, so that the newest can be told. */
function lent({ element, deleted }: ParsedElement): RawElement {
  const { type, id, lat, lon, version, nodes, members, geometry } = element;
  const kept: RawElement = { type, id };
  if (version !== undefined) kept.version = version;
  if (deleted || (type === 'node' && !isOnEarth(lon, lat))) return kept;
  if (lat !== undefined && lon !== undefined) {
    kept.lat = lat;
    kept.lon = lon;
  }
  if (nodes !== undefined) kept.nodes = nodes;
  if (members !== undefined) kept.members = members;
  if (geometry !== undefined) kept.geometry = geometry;
  return kept;
}

function findDense(block: Block, range: Range, sought: Float64Array): ParsedElement[] {
  const dense = openDenseNodes(block.bytes, range);
  const ids = denseIds(block.bytes, dense);
  const places = placesOf(ids, sought);
  return places.length === 0 ? [] : denseNodesAt(block, dense, ids, places);
}

/** The id of a way or relation; NaN when it has none (the full reading tells then). */
function listedId(block: Block, { start, end }: Range): number {
  const cursor = new Cursor(block.bytes, start, end);
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 8) return cursor.integer();
    cursor.skip(tag);
  }
  return Number.NaN;
}
