import { isInBox } from '../../extract/position.ts';
import type { RawElement } from '../../extract/raw-element.ts';
import { type Block, FORMS, forEachObject } from '../block/block.ts';
import { decodeWay, listedTags } from '../block/elements.ts';
import { GROUND_WAY_KEY } from '../block/key-flags.ts';
import { keysOf } from '../block/keys.ts';
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
  forEachObject(block, (form, cursor) => {
    if (form !== FORMS.way) {
      cursor.skip(form);
      return;
    }
    const range = cursor.range();
    if ((keysOf(block, range) & GROUND_WAY_KEY) === 0) return;
    const tags = listedTags(block, range);
    const rank = groundRankOf(tags);
    if (rank === 0 || rank < leastRank) return;
    const { element, deleted } = decodeWay(block, range);
    if (!deleted && mayTouch(ground, element))
      kept.push({ rank, way: { ...element, tags: groundTagsOf(tags) } });
  });
  return kept;
}

const mayTouch = (
  { box, nodesInside }: NonNullable<ScanSettings['ground']>,
  { nodes = [], geometry }: RawElement,
): boolean =>
  geometry === undefined
    ? nodes.some((id) => nodesInside.has(id))
    : geometry.some((point) => point !== null && isInBox(box, point.lon, point.lat));
