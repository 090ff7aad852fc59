import type { Bbox } from '../../../contract/common.ts';
import { detached } from '../extract/detached.ts';
import { LentGeometry } from '../extract/lent-geometry.ts';
import { isInBox, liesOnEarth } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';
import { GroundWays, groundKindOf, isDrawn } from './ground.ts';
import { IdList } from './id-list.ts';

/**
 * Picks the ground in a box while the file is read: places in it, and ways with a node in it. Nodes mostly come before
 * ways; where they do not, the ways are picked in a second pass.
 */
export class GroundSelection {
  readonly #box: Bbox;
  readonly #nodesInBox = new IdList();
  readonly #places: RawElement[] = [];
  readonly #lent = new LentGeometry();
  #ways = new GroundWays();
  #waySeen = false;
  #nodeAfterWay = false;
  #state: 'first pass' | 'ways again' | 'nodes' = 'first pass';

  constructor(box: Bbox) {
    this.#box = box;
  }

  visit(element: RawElement): void {
    if (this.#state === 'nodes') this.#lent.offer(element);
    else if (element.type === 'way') this.#visitWay(element);
    else if (element.type === 'node' && this.#state === 'first pass') this.#visitNode(element);
  }

  #visitNode(node: RawElement): void {
    if (this.#waySeen) this.#nodeAfterWay = true;
    if (!liesOnEarth(node) || !isInBox(this.#box, node.lon, node.lat)) return;
    this.#nodesInBox.add(node.id);
    if (node.tags !== undefined && groundKindOf('node', node.tags) !== null)
      this.#places.push(detached(node, isDrawn));
  }

  #visitWay(way: RawElement): void {
    this.#waySeen = true;
    const kind = way.tags === undefined ? null : groundKindOf('way', way.tags);
    if (kind === null) return;
    const touches =
      way.geometry?.some((at) => at !== null && isInBox(this.#box, at.lon, at.lat)) ||
      way.nodes?.some((id) => this.#nodesInBox.has(id));
    if (touches) this.#ways.add(detached(way, isDrawn), kind);
  }

  endFirstPass(): void {
    if (!this.#nodeAfterWay) {
      this.#seekNodes();
      return;
    }
    this.#ways = new GroundWays();
    this.#state = 'ways again';
  }

  endPass(): void {
    if (this.#state === 'ways again') this.#seekNodes();
    else this.#lent.endPass();
  }

  #seekNodes(): void {
    this.#state = 'nodes';
    for (const way of this.#ways.ways) this.#lent.need(way);
  }

  /** Whether another pass is needed. */
  get isWanting(): boolean {
    return this.#state === 'ways again' || this.#lent.isWanting;
  }

  /** Ways left out because there were too many. */
  get dropped(): number {
    return this.#ways.dropped;
  }

  /** Places, ways, and the ways' nodes. */
  get elements(): RawElement[] {
    return [...this.#places, ...this.#ways.ways, ...this.#lent.elements];
  }
}
