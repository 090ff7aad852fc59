import { PBF_GROUPS_MAX } from '../../source/limits.ts';
import { BrokenBlock } from '../wire/broken.ts';
import { Cursor, NOWHERE, type Range } from '../wire/cursor.ts';
import { StringTable } from './string-table.ts';

/** A PrimitiveBlock with its scale; the groups are ranges of `bytes`. */
export interface Block {
  bytes: Uint8Array;
  strings: StringTable;
  groups: Range[];
  /** Nanodegrees per stored unit, and what is added. */
  granularity: number;
  latOffset: number;
  lonOffset: number;
  /** Milliseconds per stored unit of time. */
  dateGranularity: number;
}

/**
 * Opens a block; its string table is valid until the next one is opened.
 *
 * @throws BrokenBlock
 */
export function openBlock(bytes: Uint8Array): Block {
  const cursor = new Cursor(bytes);
  let table: Range = NOWHERE;
  const groups: Range[] = [];
  const scale = { granularity: 100, latOffset: 0, lonOffset: 0, dateGranularity: 1000 };
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    switch (tag) {
      case 10:
        table = cursor.onlyRange(table);
        break;
      case 18:
        groups.push(cursor.range());
        if (groups.length > PBF_GROUPS_MAX) throw new BrokenBlock(`more than ${PBF_GROUPS_MAX} groups`);
        break;
      case 136:
        scale.granularity = cursor.integer();
        break;
      case 144:
        scale.dateGranularity = cursor.integer();
        break;
      case 152:
        scale.latOffset = cursor.integer();
        break;
      case 160:
        scale.lonOffset = cursor.integer();
        break;
      default:
        cursor.skip(tag);
    }
  }
  if (scale.granularity <= 0 || scale.dateGranularity <= 0)
    throw new BrokenBlock('a scale that is not positive');
  return { bytes, strings: new StringTable(bytes, table), groups, ...scale };
}

/** The forms that an object has in a group, by their field's tag; the nodes of a dense one come all in one. */
export const FORMS = { node: 10, denseNodes: 18, way: 26, relation: 34 } as const;

/** Goes through the objects of a block's groups. `visit` gets the form and a cursor, which it moves behind the object. */
export function forEachObject(block: Block, visit: (form: number, cursor: Cursor) => void): void {
  const cursor = new Cursor(block.bytes);
  for (const group of block.groups) {
    cursor.enter(group.start, group.end);
    for (let form = cursor.tag(); form !== 0; form = cursor.tag()) visit(form, cursor);
  }
}

/** Degrees of a stored latitude; sums in whole nanodegrees first, so that 7 decimal places come out exactly. */
export const latOf = (block: Block, stored: number): number =>
  (block.latOffset + block.granularity * stored) / 1e9;

/** Degrees of a stored longitude. */
export const lonOf = (block: Block, stored: number): number =>
  (block.lonOffset + block.granularity * stored) / 1e9;
