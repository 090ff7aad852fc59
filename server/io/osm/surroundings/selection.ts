import type { Surrounding } from '../../../core/input/sources.ts';
import { cellOf } from '../../../core/route/cover/road-cells.ts';
import { isKeptWhole, isTold, isWide } from '../../../core/surroundings/kinds.ts';
import { detached } from '../extract/detached.ts';
import { keyOf, keyOfRef } from '../extract/element-key.ts';
import { LentGeometry } from '../extract/lent-geometry.ts';
import { compareAge } from '../extract/newest.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { Member, RawElement } from '../extract/raw-element.ts';
import type { NearPlaces } from './near-places.ts';
import { type Drawn, kindsOf, lineOfWay, type SurroundingLand, surroundingsFrom } from './shapes.ts';

const onEarthOrNull = (at: unknown): LatLon | null => (liesOnEarth(at) ? { lon: at.lon, lat: at.lat } : null);

/** Picks the ground that bears on supplies from elements that come one by one, in one pass or more. */
export class SurroundingsSelection {
  readonly #land: SurroundingLand;
  readonly #places: NearPlaces;
  readonly #kept = new Map<string, RawElement>();
  readonly #lent = new LentGeometry();
  #droppedAny = false;
  /** A way was left out before a node near the route came: it may have been its. */
  wantsSecondPass = false;

  constructor(land: SurroundingLand, places: NearPlaces) {
    this.#land = land;
    this.#places = places;
  }

  /** The first pass over all elements; `isNearNode` as the places say. */
  visit(element: RawElement, isNearNode: boolean): void {
    if (isNearNode) this.wantsSecondPass ||= this.#droppedAny;
    if (element.tags === undefined) return;
    const kinds = kindsOf(element);
    if (kinds.length === 0) return;
    const isKept = element.type === 'relation' || isNearNode || kinds.some(isWide) || this.#isNear(element);
    if (!isKept) {
      this.#droppedAny ||= element.type === 'way';
      return;
    }
    const key = keyOf(element);
    const known = this.#kept.get(key);
    if (known === undefined || compareAge(element, known) >= 0)
      this.#kept.set(key, detached(element, isTold));
  }

  #isNear({ nodes, geometry }: RawElement): boolean {
    return (
      geometry?.some((at) => at !== null && this.#land.reach.has(cellOf(at.lon, at.lat))) === true ||
      nodes?.some((id) => this.#places.has(id)) === true
    );
  }

  /** What is taken away: deleted in this file. */
  remove(element: RawElement): void {
    const known = this.#kept.get(keyOf(element));
    if (known !== undefined && compareAge(element, known) >= 0) this.#kept.delete(keyOf(element));
  }

  /** After the first pass: what lies farther off than the places reach has to be found. */
  endFirstPass(): void {
    for (const element of this.#kept.values()) {
      const isKnown = element.nodes?.every((id) => this.#places.has(id)) === true;
      const isWhole = kindsOf(element).some((what) => isWide(what) || isKeptWhole(what));
      if (element.type === 'relation' || (isWhole && !isKnown)) this.#lent.need(element);
    }
  }

  get isWanting(): boolean {
    return this.#lent.isWanting;
  }

  offer(element: RawElement): void {
    this.#lent.offer(element);
  }

  endPass(): void {
    this.#lent.endPass();
  }

  surroundings(): Surrounding[] {
    const lent = new Map(this.#lent.elements.map((element) => [keyOf(element), element]));
    const placeOf = (id: number): LatLon | null =>
      this.#places.get(id) ?? onEarthOrNull(lent.get(keyOfRef('node', id)));
    const lineOf = ({ nodes, geometry }: RawElement): Drawn | null =>
      geometry?.map(onEarthOrNull) ?? nodes?.map(placeOf) ?? null;
    const memberLine = (member: Member): Drawn | null => {
      if (member.geometry !== undefined) return member.geometry.map(onEarthOrNull);
      const key = keyOfRef('way', member.ref);
      return lineOfWay(this.#kept.get(key) ?? lent.get(key), lineOf);
    };
    return surroundingsFrom([...this.#kept.values()], this.#land, { lineOf, memberLine });
  }
}
