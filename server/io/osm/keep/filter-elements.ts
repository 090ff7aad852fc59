import { isNear, type NearGrid } from '../../../app/near-route.ts';
import type { Bbox, Commodity } from '../../../contract/common.ts';
import type { PassedOver, Tags } from '../../../core/input/sources.ts';
import type { Caution } from '../../../core/phrases/cautions.ts';
import type { Phrase } from '../../../core/phrases/phrases.ts';
import { CellSet } from '../../../core/route/cover/road-cells.ts';
import { detached, lentOnly } from '../extract/detached.ts';
import { keyOf, keyOfRef } from '../extract/element-key.ts';
import { FarList, type FarObjects, NOTHING_FAR } from '../extract/far-objects.ts';
import { LentGeometry } from '../extract/lent-geometry.ts';
import { compareAge, isOfKnownAge } from '../extract/newest.ts';
import { isOnEarth, liesOnEarth } from '../extract/position.ts';
import type { ParsedElement, RawElement } from '../extract/raw-element.ts';
import type { RawExtract } from '../extract/raw-extract.ts';
import { commoditiesOf } from '../extract/wanted-tags.ts';
import { countContent, isGeneralMap, noContent, tellsByRoads } from '../extract/whole-file/content-census.ts';
import { HullOfObjects } from '../extract/whole-file/hull.ts';
import { PASSES_MAX } from '../source/limits.ts';
import { NearPlaces } from '../surroundings/near-places.ts';
import { SurroundingsSelection } from '../surroundings/selection.ts';
import { GroundSelection } from './ground-selection.ts';
import { keepNear, type Lookup, lendingOf } from './keep-near.ts';
import { newestOf } from './newest-element.ts';
import { RoadPresence } from './road-presence.ts';

/** Goes once over all the elements of a file; called again for each pass. */
export type EachElement = (visit: (parsed: ParsedElement) => void) => Promise<void>;

export interface FilterOptions {
  /** Keep ground elements that touch this box; null for none. */
  ground: Bbox | null;
  /** Keep wanted objects that may touch this land; null for all. */
  near?: NearGrid | null | undefined;
  /** Asked on the first object: whether the hull of all positions will be needed. */
  wantsHull: () => boolean;
  /** What an object may supply; a parameter for tests. */
  commodities?: (tags: Tags) => readonly Commodity[];
}

export type Filtered = Pick<
  RawExtract,
  | 'elements'
  | 'wanted'
  | 'far'
  | 'roads'
  | 'surroundings'
  | 'drawnRoads'
  | 'unwanted'
  | 'deleted'
  | 'hull'
  | 'shows'
  | 'counts'
  | 'ground'
  | 'skipped'
  | 'cautions'
>;

/** Of so many objects that supply nothing the age is noted, at 32 bytes each; a file of more is a general map. Ours. */
const UNWANTED_MAX = 500_000;

/** The positions that an element carries itself. */
function* ownPositions(element: RawElement): Generator<[number, number]> {
  if (element.lon !== undefined && element.lat !== undefined) yield [element.lon, element.lat];
  if (element.center !== undefined) yield [element.center.lon, element.center.lat];
  for (const at of element.geometry ?? []) if (at !== null) yield [at.lon, at.lat];
}

const badPosition = ({ type, lat, lon }: RawElement): Phrase | null => {
  if (type !== 'node' || isOnEarth(lon, lat)) return null;
  return lon === undefined && lat === undefined
    ? { phrase: 'skipped-no-position', facts: {} }
    : { phrase: 'skipped-off-earth', facts: { lat, lon } };
};

/** The first pass: which objects are wanted, in their newest version, and what the file is. */
class WantedPass {
  readonly wanted = new Map<string, RawElement>();
  readonly counts = { nodes: 0, ways: 0, relations: 0 };
  readonly hull = new HullOfObjects();
  readonly skipped: PassedOver[] = [];
  readonly content = noContent();
  deletedSeen = 0;
  readonly #deleted = new Map<string, RawElement>();
  readonly #unwanted = new FarList();
  readonly #near: NearGrid | null;
  readonly #commodities: (tags: Tags) => readonly Commodity[];
  readonly #wantsHull: () => boolean;

  constructor(options: FilterOptions) {
    this.#near = options.near ?? null;
    this.#commodities = options.commodities ?? commoditiesOf;
    this.#wantsHull = options.wantsHull;
  }

  visit({ element, deleted }: ParsedElement): void {
    if (element.type === 'node') this.counts.nodes += 1;
    else if (element.type === 'way') this.counts.ways += 1;
    else this.counts.relations += 1;
    const key = keyOf(element);
    if (deleted) this.#visitDeleted(key, element);
    else this.#visitLiving(key, element);
  }

  #visitDeleted(key: string, element: RawElement): void {
    this.deletedSeen += 1;
    const known = this.#deleted.get(key);
    if (known === undefined || compareAge(element, known) > 0) this.#deleted.set(key, lentOnly(element));
    const living = this.wanted.get(key);
    if (living !== undefined && compareAge(element, living) >= 0) this.wanted.delete(key);
  }

  #visitLiving(key: string, element: RawElement): void {
    if (this.#wantsHull()) {
      for (const [lon, lat] of ownPositions(element)) if (isOnEarth(lon, lat)) this.hull.add(lon, lat);
    }
    const tags = element.tags;
    if (tags === undefined || this.#commodities(tags).length === 0) {
      if (tags !== undefined) countContent(this.content, tags, element.type !== 'node');
      this.#supersede(key, element);
      this.#noteUnwanted(element);
      return;
    }
    const bad = badPosition(element);
    if (bad !== null) {
      this.skipped.push({ id: key, reason: bad });
      this.#supersede(key, element);
      return;
    }
    const known = this.wanted.get(key);
    const gone = this.#deleted.get(key);
    if (gone !== undefined && compareAge(gone, element) >= 0) return;
    const kept = detached(element);
    this.wanted.set(key, known === undefined ? kept : newestOf(known, kept));
  }

  /**
   * A newer version that is no supply any more takes an older one away. It must be known to be newer: replies often
   * give an object twice, with its tags and as a bare node of something else.
   */
  #supersede(key: string, element: RawElement): void {
    if (this.wanted.size === 0) return;
    const known = this.wanted.get(key);
    if (known !== undefined && compareAge(element, known) > 0) this.wanted.delete(key);
  }

  /** Notes what may have been a supply once, where its age can tell that it is no more. */
  #noteUnwanted(element: RawElement): void {
    if (this.#unwanted.length >= UNWANTED_MAX || !isOfKnownAge(element)) return;
    const isFar =
      this.#near !== null &&
      liesOnEarth(element) &&
      !isNear(this.#near, [element.lon, element.lat, element.lon, element.lat]);
    if (!isFar) this.#unwanted.add(element, null);
  }

  get unwanted(): FarObjects {
    return this.#unwanted.objects();
  }

  get deleted(): FarObjects {
    const list = new FarList();
    for (const element of this.#deleted.values()) list.add(element, null);
    return list.objects();
  }

  shows(): Filtered['shows'] {
    const shown = new Set(
      [...this.wanted.values()].flatMap((element) => this.#commodities(element.tags ?? {})),
    );
    return { fuel: shown.has('fuel'), water: shown.has('water'), general: isGeneralMap(this.content) };
  }
}

function cautionsOf(pass: WantedPass, ground: GroundSelection | null): Caution[] {
  const cautions: Caution[] = [];
  if (pass.deletedSeen > 0) {
    cautions.push({ code: 'deleted-passed-over', facts: { count: pass.deletedSeen } });
  }
  if (pass.skipped.length > 0) {
    cautions.push({ code: 'position-missing', facts: { count: pass.skipped.length } });
  }
  if (ground !== null && ground.dropped > 0) {
    cautions.push({ code: 'ground-thinned', facts: { lesserWays: ground.dropped } });
  }
  return cautions;
}

function keptOf(
  wanted: ReadonlyMap<string, RawElement>,
  lending: readonly RawElement[],
  near: NearGrid | null,
): Pick<Filtered, 'elements' | 'wanted' | 'far'> {
  if (near === null) {
    return {
      elements: [...wanted.values(), ...lending],
      wanted: new Set(wanted.keys()),
      far: NOTHING_FAR,
    };
  }
  const lent = new Map(lending.map((element) => [keyOf(element), element]));
  const all = [...wanted.values()];
  const lookup: Lookup = (type, id) => {
    const key = keyOfRef(type, id);
    return wanted.get(key) ?? lent.get(key);
  };
  const kept = keepNear(all, near, lookup);
  return {
    elements: [...kept.near, ...lendingOf(kept.near, all, lookup)],
    wanted: new Set(kept.near.map(keyOf)),
    far: kept.far,
  };
}

/** What is picked of the land around the route. */
class Around {
  readonly roads: RoadPresence;
  readonly surroundings: SurroundingsSelection;
  readonly #places: NearPlaces;

  constructor(near: NearGrid, band: CellSet, reach: CellSet) {
    this.#places = new NearPlaces(reach);
    this.roads = new RoadPresence(band, reach, this.#places);
    this.surroundings = new SurroundingsSelection({ near, reach }, this.#places);
  }

  visit(element: RawElement): void {
    const isNearNode = element.type === 'node' && this.#places.take(element);
    this.roads.visit(element, isNearNode);
    this.surroundings.visit(element, isNearNode);
  }

  get wantsSecondPass(): boolean {
    return this.roads.wantsSecondPass || this.surroundings.wantsSecondPass;
  }
}

function aroundOf(near: NearGrid | null): Around | null {
  if (near?.around === undefined) return null;
  const { band, reach } = near.around;
  return new Around(near, new CellSet(band), new CellSet(reach));
}

/**
 * Keeps the elements that concern supply, in the newest version that the file has of each, with the nodes and members
 * that they need, in as many passes as that takes (one when only nodes are wanted).
 */
export async function filterElements(each: EachElement, options: FilterOptions): Promise<Filtered> {
  const first = new WantedPass(options);
  const ground = options.ground === null ? null : new GroundSelection(options.ground);
  const around = aroundOf(options.near ?? null);
  await each((parsed) => {
    first.visit(parsed);
    if (parsed.deleted) around?.surroundings.remove(parsed.element);
    else {
      ground?.visit(parsed.element);
      around?.visit(parsed.element);
    }
  });
  if (around?.wantsSecondPass === true)
    await each(({ element, deleted }) => {
      if (!deleted && element.type === 'way') around.visit(element);
    });
  const lent = new LentGeometry();
  for (const element of first.wanted.values()) lent.need(element);
  ground?.endFirstPass();
  around?.surroundings.endFirstPass();
  const isWanting = () => lent.isWanting || ground?.isWanting || around?.surroundings.isWanting;
  for (let pass = 2; pass <= PASSES_MAX && isWanting(); pass += 1) {
    await each(({ element, deleted }) => {
      if (deleted) return;
      lent.offer(element);
      ground?.visit(element);
      around?.surroundings.offer(element);
    });
    lent.endPass();
    ground?.endPass();
    around?.surroundings.endPass();
  }
  const lending = lent.elements.filter((element) => !first.wanted.has(keyOf(element)));
  return {
    ...keptOf(first.wanted, lending, options.near ?? null),
    roads: tellsByRoads(first.content) ? (around?.roads.cells() ?? null) : null,
    surroundings: around?.surroundings.surroundings() ?? [],
    drawnRoads: tellsByRoads(first.content) ? (around?.roads.drawn() ?? null) : null,
    unwanted: first.unwanted,
    deleted: first.deleted,
    hull: first.hull.ring(),
    shows: first.shows(),
    counts: first.counts,
    ground: ground?.elements ?? [],
    skipped: first.skipped,
    cautions: cautionsOf(first, ground),
  };
}
