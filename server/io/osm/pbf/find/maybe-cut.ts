import type { MaybeCutWhy } from '../../../../core/phrases/readers.ts';
import type { OsmType } from '../../extract/raw-element.ts';

/** Objects that a block of the usual writers (osmium, osmosis, the planet's own) holds at most. */
const USUAL_BLOCK = 8000;

/** Blocks of fewer objects than these are no writer's full ones. Ours. */
const LEAST_FULL = 1000;

/** Which types have an object without tags: such a one is there only for the sake of what it is a part of. */
export interface Untagged {
  node: boolean;
  way: boolean;
}

/** What of a file tells whether its end is missing. */
export interface SeenOfFile {
  counts: Readonly<Record<OsmType, number>>;
  untagged: Untagged;
  /** Ways hold the positions of their nodes, which are left out for that. */
  isLocated: boolean;
  isGeneral: boolean;
  /** Objects of all types in each block, in the file's order. */
  blocks: readonly number[];
}

/**
 * What makes a file look as if it had been cut exactly between two blobs; null where nothing does. A pbf file tells neither
 * its length nor its end. Files are sorted by type, so that what comes last is what is missing: parts are there and
 * nothing that is made of them, or the last block is full to the brim, as none but by chance (one in 8,000) is.
 * Not told: a cut between blocks of relations where the writer fills blocks by their bytes.
 */
export function maybeCut({ counts, untagged, isLocated, isGeneral, blocks }: SeenOfFile): MaybeCutWhy | null {
  const { node, way, relation } = counts;
  if (node + way + relation === 0) return 'no-objects';
  if (node + (isLocated ? way : 0) === 0) return 'no-nodes';
  if (relation === 0) {
    if (way === 0 && (untagged.node || isLocated)) return 'no-ways';
    if (way > 0 && (untagged.way || isGeneral)) return 'no-relations';
  }
  return endsFull(blocks) ? 'full-block' : null;
}

function endsFull(blocks: readonly number[]): boolean {
  const last = blocks.at(-1) ?? 0;
  if (last === USUAL_BLOCK) return true;
  const fullest = blocks.reduce((most, count) => Math.max(most, count), 0);
  return last >= LEAST_FULL && last === fullest && blocks.filter((count) => count === fullest).length > 1;
}
