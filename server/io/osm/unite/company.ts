import { keyOfRef } from '../extract/element-key.ts';
import { isOnEarth } from '../extract/position.ts';
import type { OsmType, RawElement } from '../extract/raw-element.ts';

/**
 * Tells what must be converted together with some of the wanted ways and relations, so that they come out as if all
 * were converted at once: what they are made of; the relations that a way is part of, which may stand for it; and
 * what holds the positions of nodes that it needs.
 */
export class Company {
  readonly #elements: ReadonlyMap<string, RawElement>;
  /** Place in the order of the elements, of ways and relations. */
  readonly #order = new Map<RawElement, number>();
  /** Relations by the number of a wanted way that is among their members. */
  readonly #parents = new Map<number, RawElement[]>();
  /** Ways and relations that themselves hold the position of a node. */
  readonly #holders = new Map<number, RawElement[]>();

  /** `elements` by "node/1"; `wanted` are the wanted ways and relations among them. */
  constructor(elements: ReadonlyMap<string, RawElement>, wanted: readonly RawElement[]) {
    this.#elements = elements;
    const ways = new Set(wanted.filter(({ type }) => type === 'way').map(({ id }) => id));
    for (const element of elements.values()) {
      if (element.type === 'node') continue;
      this.#order.set(element, this.#order.size);
      if (element.geometry !== undefined)
        for (const id of element.nodes ?? []) this.#note(this.#holders, id, element);
      this.#noteMembers(element, ways);
    }
  }

  #noteMembers(relation: RawElement, ways: ReadonlySet<number>): void {
    for (const { type, ref, lat } of relation.members ?? []) {
      if (type === 'way' && ways.has(ref)) this.#note(this.#parents, ref, relation);
      if (lat !== undefined) this.#note(this.#holders, ref, relation);
    }
  }

  #note(lists: Map<number, RawElement[]>, id: number, element: RawElement): void {
    const list = lists.get(id);
    if (list === undefined) lists.set(id, [element]);
    else if (list.at(-1) !== element) list.push(element);
  }

  #placeOf(element: RawElement): number {
    const place = this.#order.get(element);
    if (place === undefined) throw new Error(`${element.type}/${element.id} is not among the elements`);
    return place;
  }

  /** The batch and its company, in the order of all the elements, nodes first. */
  of(batch: readonly RawElement[]): RawElement[] {
    const nodes = new Set<RawElement>();
    const listed = new Set<RawElement>();
    const pending = [...batch];
    for (let element = pending.pop(); element !== undefined; element = pending.pop()) {
      if (listed.has(element)) continue;
      listed.add(element);
      if (element.type === 'way') pending.push(...(this.#parents.get(element.id) ?? []));
      const need = (type: OsmType, id: number): void => {
        if (type === 'node') pending.push(...(this.#holders.get(id) ?? []));
        const needed = this.#elements.get(keyOfRef(type, id));
        if (needed?.type === 'node') {
          if (isOnEarth(needed.lon, needed.lat)) nodes.add(needed);
        } else if (needed?.type === 'way') pending.push(needed);
      };
      for (const id of element.nodes ?? []) need('node', id);
      for (const member of element.members ?? []) need(member.type, member.ref);
    }
    return [...nodes, ...[...listed].sort((a, b) => this.#placeOf(a) - this.#placeOf(b))];
  }
}
