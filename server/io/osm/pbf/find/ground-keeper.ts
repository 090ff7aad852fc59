import type { Bbox } from '../../../../contract/common.ts';
import type { Caution } from '../../../../core/phrases/cautions.ts';
import { isInBox } from '../../extract/position.ts';
import type { RawElement, RawNode } from '../../extract/raw-element.ts';
import { rankName } from './ground-kinds.ts';
import type { GroundWay } from './ground-ways.ts';

/** Most ways and most of their nodes kept as ground: what memory and a browser's map bear. Ours. */
export interface GroundCaps {
  ways: number;
  nodes: number;
}
const GROUND_CAPS: GroundCaps = { ways: 20_000, nodes: 150_000 };

/** Ways of the ground as they come; when there are too many, whole ranks go, the lowest first. */
export class GroundKeeper {
  readonly #caps: GroundCaps;
  readonly #ranks = new Map<number, RawElement[]>();
  #wayCount = 0;
  #nodeCount = 0;
  /** Ways of the last rank left that did not fit. */
  #cut = 0;
  readonly #dropped: number[] = [];

  constructor(caps: GroundCaps = GROUND_CAPS) {
    this.#caps = caps;
  }

  /** Ways of a lower rank need not be brought any more. */
  get leastRank(): number {
    return this.#dropped.length === 0 ? 0 : Math.max(...this.#dropped) + 1;
  }

  #full(moreNodes: number): boolean {
    return this.#wayCount + 1 > this.#caps.ways || this.#nodeCount + moreNodes > this.#caps.nodes;
  }

  add({ rank, way }: GroundWay): void {
    if (rank < this.leastRank) return;
    const nodeCount = way.nodes?.length ?? 0;
    while (this.#full(nodeCount)) {
      const lowest = Math.min(rank, ...this.#ranks.keys());
      if (this.#ranks.size === 0 || (this.#ranks.size === 1 && this.#ranks.has(rank))) {
        this.#cut += 1;
        return;
      }
      this.#drop(lowest);
      if (lowest === rank) return;
    }
    const bucket = this.#ranks.get(rank) ?? [];
    bucket.push(way);
    this.#ranks.set(rank, bucket);
    this.#wayCount += 1;
    this.#nodeCount += nodeCount;
  }

  #drop(rank: number): void {
    for (const way of this.#ranks.get(rank) ?? []) {
      this.#wayCount -= 1;
      this.#nodeCount -= way.nodes?.length ?? 0;
    }
    this.#ranks.delete(rank);
    this.#dropped.push(rank);
  }

  /** The ways kept, highest rank first. */
  ways(): RawElement[] {
    return [...this.#ranks].sort(([a], [b]) => b - a).flatMap(([, ways]) => ways);
  }

  cautions(source: string): Caution[] {
    if (this.#dropped.length === 0 && this.#cut === 0) return [];
    const missing = [...this.#dropped].sort((a, b) => b - a).map(rankName);
    return [{ code: 'ground-thinned', facts: { source, missing, cut: this.#cut } }];
  }
}

/** A node that has a position, by its id; undefined where the file has none. */
export type NodeLookup = (id: number) => RawNode | undefined;

/** The ways that do touch the box, each with those of its nodes that are known, and these nodes once each. */
export function groundWithNodes(ways: readonly RawElement[], box: Bbox, nodeOf: NodeLookup): RawElement[] {
  const nodes = new Map<number, RawNode>();
  const kept: RawElement[] = [];
  for (const way of ways) {
    const known = positionsOf(way, nodeOf);
    if (known.length < 2 || !known.some((node) => isInBox(box, node.lon, node.lat))) continue;
    for (const node of known) nodes.set(node.id, node.tags === undefined ? node : positionOf(node));
    const { geometry: _, ...rest } = way;
    kept.push({ ...rest, nodes: known.map((node) => node.id) });
  }
  return [...nodes.values(), ...kept];
}

const positionOf = ({ id, lat, lon }: RawNode): RawNode => ({ type: 'node', id, lat, lon });

/** A way's nodes with position, from the way itself or from elsewhere; those without are left out. */
export function positionsOf(way: RawElement, nodeOf: NodeLookup): RawNode[] {
  const positions: RawNode[] = [];
  way.nodes?.forEach((id, index) => {
    const point = way.geometry?.[index];
    const node = nodeOf(id);
    if (node !== undefined) positions.push(node);
    else if (point) positions.push({ type: 'node', id, lat: point.lat, lon: point.lon });
  });
  return positions;
}
