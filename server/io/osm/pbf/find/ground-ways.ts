import { isInBox } from '../../extract/position.ts';
import type { RawElement } from '../../extract/raw-element.ts';
import type { Block } from '../block/block.ts';
import { decodeWay, listedTags } from '../block/elements.ts';
import { GROUND_WAY_KEY } from '../block/key-flags.ts';
import { Cursor } from '../wire/cursor.ts';
import { groundRankOf, groundTagsOf } from './ground-kinds.ts';
import type { ScanSettings } from './scan.ts';

/** A road or coast that may touch the box. */
export interface GroundWay {
  rank: number;
  way: RawElement;
}

/**
 * Ways of a block that are ground of at least `leastRank` and may have a node in the box: certain where the way holds
 * its own positions, otherwise as the filter says.
 *
 * @throws BrokenBlock
 */
export function groundWaysOf(
  block: Block,
  ground: NonNullable<ScanSettings['ground']>,
  leastRank: number,
): GroundWay[] {
  const kept: GroundWay[] = [];
  if ((block.strings.anyFlag & GROUND_WAY_KEY) === 0) return kept;
  const cursor = new Cursor(block.bytes);
  const inner = new Cursor(block.bytes);
  for (const group of block.groups) {
    cursor.enter(group.start, group.end);
    for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
      if (tag !== 26) {
        cursor.skip(tag);
        continue;
      }
      const range = cursor.range();
      inner.enter(range.start, range.end);
      if ((keyFlags(block, inner) & GROUND_WAY_KEY) === 0) continue;
      const tags = listedTags(block, range);
      const rank = groundRankOf(tags);
      if (rank === 0 || rank < leastRank) continue;
      const { element, deleted } = decodeWay(block, range);
      if (deleted) continue;
      const inside =
        element.geometry === undefined
          ? (element.nodes ?? []).some((id) => ground.nodesInside.has(id))
          : element.geometry.some((point) => point !== null && isInBox(ground.box, point.lon, point.lat));
      if (inside) kept.push({ rank, way: { ...element, tags: groundTagsOf(tags) } });
    }
  }
  return kept;
}

function keyFlags(block: Block, cursor: Cursor): number {
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    if (tag === 18) {
      const from = cursor.pass();
      return block.strings.flagsOfList(from, cursor.position);
    }
    cursor.skip(tag);
  }
  return 0;
}
