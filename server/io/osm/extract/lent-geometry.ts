import { lentOnly } from './detached.ts';
import { keyOf, keyOfRef } from './element-key.ts';
import { compareAge } from './newest.ts';
import { isOnEarth } from './position.ts';
import type { OsmType, RawElement } from './raw-element.ts';

/** Whether a way says by itself where all its nodes are (Overpass `out geom`, locations on ways). */
const hasWholeGeometry = (way: RawElement): boolean =>
  way.geometry !== undefined && way.geometry.length > 0 && way.geometry.every((at) => at !== null);

/** The objects that an element needs to be placed. */
function needsOf(element: RawElement): { type: OsmType; id: number }[] {
  if (element.type === 'way' && !hasWholeGeometry(element)) {
    return (element.nodes ?? []).map((id) => ({ type: 'node', id }));
  }
  if (element.type !== 'relation') return [];
  return (element.members ?? [])
    .filter((member) => member.lat === undefined && member.geometry === undefined)
    .map((member) => ({ type: member.type, id: member.ref }));
}

/** Gathers, over several passes, what some elements need and what that needs in turn. */
export class LentGeometry {
  readonly #wanting: Record<OsmType, Set<number>> = { node: new Set(), way: new Set(), relation: new Set() };
  readonly #asked = new Set<string>();
  readonly #found = new Map<string, RawElement>();

  /** Notes what the element needs; true when something of it has not been looked for yet. */
  need(element: RawElement): void {
    for (const { type, id } of needsOf(element)) {
      const key = keyOfRef(type, id);
      if (this.#asked.has(key)) continue;
      this.#asked.add(key);
      this.#wanting[type].add(id);
    }
  }

  get isWanting(): boolean {
    return this.#wanting.node.size + this.#wanting.way.size + this.#wanting.relation.size > 0;
  }

  /** Offers every element of a pass; keeps the newest version of those that are needed. */
  offer(element: RawElement): void {
    if (!this.#wanting[element.type].has(element.id)) return;
    if (element.type === 'node' && !isOnEarth(element.lon, element.lat)) return;
    const key = keyOf(element);
    const known = this.#found.get(key);
    if (known === undefined || compareAge(element, known) >= 0) this.#found.set(key, lentOnly(element));
  }

  /** After a pass: what was found needs things of its own. */
  endPass(): void {
    for (const type of ['node', 'way', 'relation'] as const) {
      const sought = [...this.#wanting[type]];
      this.#wanting[type].clear();
      if (type === 'node') continue;
      for (const id of sought) {
        const element = this.#found.get(keyOfRef(type, id));
        if (element !== undefined) this.need(element);
      }
    }
  }

  get elements(): RawElement[] {
    return [...this.#found.values()];
  }
}
