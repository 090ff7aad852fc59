/** A label that would like to stand at `topPx` (y downwards) and takes `heightPx` there. */
export interface LabelWish {
  key: string;
  topPx: number;
  heightPx: number;
  /** Where the whole label does not fit, so much of it may stand. */
  shorterPx?: number;
  /** Smaller comes first. */
  rank: number;
  /** How far it may be moved from where it would like to stand. */
  maxShiftPx: number;
}

export interface PlacedLabel {
  key: string;
  topPx: number;
  heightPx: number;
  /** How far it was moved, downwards positive. */
  shiftPx: number;
}

interface Bounds {
  topPx: number;
  bottomPx: number;
}

/** A float's rounding must not count as an overlap or as a shift. */
const HAIR_PX = 1e-6;

/**
 * Labels along one edge, in one column: the best ranked first, each where it fits with every label already taken,
 * in the order of their wishes, none overlapping, none moved further than it allows, none outside the bounds.
 * A label that does not fit stands shorter where it may, else is left out. Gives the placed ones from top to bottom.
 */
export function placeLabels(wishes: readonly LabelWish[], bounds: Bounds): PlacedLabel[] {
  const byRank = [...wishes].sort((a, b) => a.rank - b.rank || a.topPx - b.topPx);
  let taken: LabelWish[] = [];
  let placed: PlacedLabel[] = [];
  for (const wish of byRank) {
    const sizes = wish.shorterPx === undefined ? [wish.heightPx] : [wish.heightPx, wish.shorterPx];
    for (const heightPx of sizes) {
      const trial = insertByTop(taken, { ...wish, heightPx });
      const arranged = arrange(trial, bounds);
      if (arranged === null) continue;
      taken = trial;
      placed = arranged;
      break;
    }
  }
  return placed;
}

function insertByTop(taken: readonly LabelWish[], wish: LabelWish): LabelWish[] {
  const after = taken.findIndex((other) => other.topPx > wish.topPx);
  const at = after === -1 ? taken.length : after;
  return [...taken.slice(0, at), wish, ...taken.slice(at)];
}

/**
 * Least squares in a fixed order: labels that would overlap are pooled into a block that stands at the mean of their
 * wishes (the pool-adjacent-violators method of isotonic regression). Null when a label would go too far.
 */
function arrange(wishes: readonly LabelWish[], bounds: Bounds): PlacedLabel[] | null {
  interface Block {
    members: LabelWish[];
    heightPx: number;
    /** Sum of (wish - offset inside the block): its mean is where the block would like to stand. */
    sumPx: number;
  }
  const topOf = (block: Block): number => {
    const mean = block.sumPx / block.members.length;
    return Math.max(bounds.topPx, Math.min(mean, bounds.bottomPx - block.heightPx));
  };
  const blocks: Block[] = [];
  for (const wish of wishes) {
    let block: Block = { members: [wish], heightPx: wish.heightPx, sumPx: wish.topPx };
    for (let above = blocks.at(-1); above !== undefined; above = blocks.at(-1)) {
      if (topOf(above) + above.heightPx <= topOf(block) + HAIR_PX) break;
      blocks.pop();
      block = {
        members: [...above.members, ...block.members],
        heightPx: above.heightPx + block.heightPx,
        sumPx: above.sumPx + block.sumPx - block.members.length * above.heightPx,
      };
    }
    blocks.push(block);
  }

  const placed: PlacedLabel[] = [];
  for (const block of blocks) {
    let topPx = topOf(block);
    if (topPx < bounds.topPx - HAIR_PX || topPx + block.heightPx > bounds.bottomPx + HAIR_PX) return null;
    for (const wish of block.members) {
      const shiftPx = topPx - wish.topPx;
      if (Math.abs(shiftPx) > wish.maxShiftPx + HAIR_PX) return null;
      placed.push({ key: wish.key, topPx, heightPx: wish.heightPx, shiftPx });
      topPx += wish.heightPx;
    }
  }
  return placed;
}
