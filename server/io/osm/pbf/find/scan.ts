import { isNear, isPlaceNear, type NearGrid } from '../../../../app/near-route.ts';
import type { Bbox, Commodity } from '../../../../contract/common.ts';
import type { PassedOver } from '../../../../core/input/sources.ts';
import { at } from '../../../../core/lists/at.ts';
import { cellOf } from '../../../../core/route/cover/road-cells.ts';
import { wantedFor } from '../../../../core/supply/tags/wanted.ts';
import { isDriven, isTold, isWide, surroundingKinds } from '../../../../core/surroundings/kinds.ts';
import type { RoadMarks } from '../../../../core/surroundings/road-marks.ts';
import type { FarObject } from '../../extract/far-objects.ts';
import { isInBox, isOnEarth } from '../../extract/position.ts';
import {
  isPlacedNode,
  type OsmType,
  type ParsedElement,
  type RawElement,
  type RawNode,
} from '../../extract/raw-element.ts';
import {
  addContent,
  CONTENT_COUNTED,
  type ContentCounts,
  countContent,
  noContent,
} from '../../extract/whole-file/content-census.ts';
import { RoadCells } from '../../keep/road-presence.ts';
import { PBF_WANTED_MAX } from '../../source/limits.ts';
import { kindsOf } from '../../surroundings/shapes.ts';
import { type Block, FORMS, forEachObject, latOf, lonOf } from '../block/block.ts';
import {
  denseIds,
  denseNodesAt,
  densePositions,
  hasUntagged,
  openDenseNodes,
  type TagHit,
  tagHits,
} from '../block/dense-nodes.ts';
import {
  decodePlainNode,
  decodeRelation,
  decodeWay,
  listedTags,
  wayLine,
  wayNodeIds,
} from '../block/elements.ts';
import {
  CROSSING_KEY,
  OTHER_KEY,
  PLACE_KEY,
  ROAD_KEY,
  SURROUNDING_KEY,
  SURROUNDING_MARK,
  WANTED_KEY,
} from '../block/key-flags.ts';
import { cursorOver, keysOf, valuesOf } from '../block/keys.ts';
import { BrokenBlock } from '../wire/broken.ts';
import type { Cursor, Range } from '../wire/cursor.ts';
import { type PackedFar, packFar } from './far-nodes.ts';
import { groundTagsOf, isGroundPlace } from './ground-kinds.ts';
import { HullSupports, type Supports } from './hull.ts';
import type { IdFilter } from './id-filter.ts';
import { emptySpan, type IdSpan, widen, widenByAll } from './id-span.ts';
import type { Untagged } from './maybe-cut.ts';
import { type AroundSearch, type NearNodes, noteNode } from './near-nodes.ts';

/** Keys by which a node may be ground that bears on supplies. */
const POINT_KEYS = CROSSING_KEY | PLACE_KEY;

export interface ScanSettings {
  /** Note which nodes lie in this box, and keep the places in it. */
  ground: { box: Bbox; nodesInside: IdFilter } | null;
  /** Find the hull of all positions. */
  hull: boolean;
  /** Keep wanted nodes on this land only, the rest as `far`; null keeps all. */
  near: NearGrid | null;
  /** Note roads and what else there is around the route; null notes nothing. */
  around: AroundSearch | null;
}

/** What a block shows of the ground around the route. */
export interface AroundResult {
  /** Cells near the route with a road, as far as not told before. */
  roadCells: number[];
  /** Ground that bears on supplies and may lie within reach. */
  surroundings: RawElement[];
}

/** What the first look at a block gives. */
export interface ScanResult extends AroundResult {
  spans: Record<OsmType, IdSpan>;
  untagged: Untagged;
  /** Wanted elements in full, in the block's order. */
  elements: RawElement[];
  /** Wanted nodes off the land that is near. */
  far: PackedFar;
  commodities: Commodity[];
  content: ContentCounts;
  skipped: PassedOver[];
  /** Deleted ones with tags of a supply. */
  deleted: FarObject[];
  places: RawElement[];
  /** Supports as they are and with western longitudes raised by 360; null when nothing changed. */
  supports: [Supports, Supports] | null;
}

export const idOf = (element: RawElement): string => `${element.type}/${element.id}`;

/** Looks through blocks for what concerns supply; holds what is carried from block to block in one thread. */
export class Scanner {
  readonly #settings: ScanSettings;
  readonly #hulls: [HullSupports, HullSupports] = [new HullSupports(), new HullSupports()];
  /** Once there are enough of a kind, nobody looks for another. */
  readonly #content = noContent();
  readonly #roadCells: RoadCells | null;
  #surroundings: RawElement[] = [];

  constructor(settings: ScanSettings) {
    this.#settings = settings;
    this.#roadCells = settings.around === null ? null : new RoadCells(settings.around.band);
  }

  /** @throws BrokenBlock */
  scan(block: Block): ScanResult {
    const result: ScanResult = {
      spans: { node: emptySpan(), way: emptySpan(), relation: emptySpan() },
      untagged: { node: false, way: false },
      elements: [],
      far: [],
      commodities: [],
      content: noContent(),
      roadCells: [],
      surroundings: [],
      skipped: [],
      deleted: [],
      places: [],
      supports: null,
    };
    forEachObject(block, (form, cursor) => {
      if (form === FORMS.way) this.#listed(block, 'way', cursor, result);
      else if (form === FORMS.denseNodes) this.#denseNodes(block, cursor.range(), result);
      else if (form === FORMS.relation) this.#listed(block, 'relation', cursor, result);
      else if (form === FORMS.node) this.#plainNode(block, cursor.range(), result);
      else cursor.skip(form);
    });
    addContent(this.#content, result.content);
    Object.assign(result, this.#takeAround());
    if (this.#settings.hull) result.supports = this.#newSupports();
    return result;
  }

  #newSupports(): [Supports, Supports] | null {
    const [plain, raised] = this.#hulls;
    if (!plain.changed && !raised.changed) return null;
    for (const hull of this.#hulls) {
      hull.settle();
      hull.changed = false;
    }
    return [plain.values.slice(), raised.values.slice()];
  }

  /** What was found around the route since the last call. */
  #takeAround(): AroundResult {
    const surroundings = this.#surroundings;
    this.#surroundings = [];
    return { roadCells: this.#roadCells?.takeNew() ?? [], surroundings };
  }

  /** Marks of the keys of nodes that still matter. */
  #mask(): number {
    const { ground, around } = this.#settings;
    const wantsPlaces = ground !== null || around !== null || this.#content.places < CONTENT_COUNTED;
    const wantsOthers = this.#content.others < CONTENT_COUNTED;
    return WANTED_KEY | CROSSING_KEY | (wantsPlaces ? PLACE_KEY : 0) | (wantsOthers ? OTHER_KEY : 0);
  }

  #position(id: number, lon: number, lat: number): void {
    const { ground, hull, near, around } = this.#settings;
    if (around !== null && (near === null || isPlaceNear(near, lon, lat))) noteNode(around, id, lon, lat);
    if (ground !== null && isInBox(ground.box, lon, lat)) ground.nodesInside.add(id);
    if (hull && isOnEarth(lon, lat)) {
      this.#hulls[0].add(lon, lat);
      this.#hulls[1].add(lon < 0 ? lon + 360 : lon, lat);
    }
  }

  #plainNode(block: Block, range: Range, result: ScanResult): void {
    const decoded = decodePlainNode(block, range);
    const { id, lon, lat, tags } = decoded.element;
    widen(result.spans.node, id);
    this.#position(id, lon, lat);
    if (tags === undefined) {
      result.untagged.node = true;
      return;
    }
    if (wantedFor(tags).length === 0) countContent(result.content, tags, false);
    this.#keepNode(decoded, tags, result);
  }

  #denseNodes(block: Block, range: Range, result: ScanResult): void {
    const dense = openDenseNodes(block.bytes, range);
    const ids = denseIds(block.bytes, dense);
    const count = ids.length;
    widenByAll(result.spans.node, ids);
    result.untagged.node ||= hasUntagged(block.bytes, dense, count);
    if (this.#settings.hull || this.#settings.ground !== null || this.#settings.around !== null) {
      const { lats, lons } = densePositions(block.bytes, dense, count);
      let place = 0;
      for (const id of ids) {
        // As many positions as ids, as was looked at; what is not there would be no place on earth.
        this.#position(id, lonOf(block, lons[place] ?? Number.NaN), latOf(block, lats[place] ?? Number.NaN));
        place += 1;
      }
    }
    const kept = tagHits(block, dense, this.#mask(), count).filter((hit) => this.#concerns(hit, result));
    if (kept.length === 0) return;
    const nodes = denseNodesAt(
      block,
      dense,
      ids,
      kept.map((hit) => hit.place),
    );
    nodes.forEach((decoded, index) => {
      const { tags } = at(kept, index);
      decoded.element.tags = tags;
      this.#keepNode(decoded, tags, result);
    });
  }

  #concerns(hit: TagHit, result: ScanResult): boolean {
    if ((hit.flags & WANTED_KEY) !== 0 && wantedFor(hit.tags).length > 0) return true;
    countContent(result.content, hit.tags, false);
    if ((hit.flags & POINT_KEYS) !== 0 && surroundingKinds(hit.tags, 'point').length > 0) return true;
    return this.#settings.ground !== null && isGroundPlace(hit.tags);
  }

  #keepNode(decoded: ParsedElement<RawNode>, tags: Record<string, string>, result: ScanResult): void {
    const { element } = decoded;
    this.#keepWanted(decoded, tags, result);
    this.#keepCrossing(decoded, tags);
    const { ground } = this.#settings;
    if (ground === null || decoded.deleted || !isGroundPlace(tags)) return;
    const { id, lat, lon } = element;
    if (isInBox(ground.box, lon, lat))
      result.places.push({ type: 'node', id, lat, lon, tags: groundTagsOf(tags) });
  }

  #keepCrossing({ element, deleted }: ParsedElement<RawNode>, tags: Record<string, string>): void {
    const { around } = this.#settings;
    if (around === null || deleted || !around.reach.has(cellOf(element.lon, element.lat))) return;
    if (surroundingKinds(tags, 'point').length > 0) this.#surroundings.push({ ...element, tags: told(tags) });
  }

  #keepWanted({ element, deleted }: ParsedElement, tags: Record<string, string>, result: ScanResult): void {
    const commodities = wantedFor(tags);
    if (commodities.length === 0) return;
    if (deleted) {
      result.skipped.push({ id: idOf(element), reason: { phrase: 'skipped-deleted', facts: {} } });
      const { type, id, version, timestamp } = element;
      result.deleted.push({ type, id, version, timestamp });
      return;
    }
    if (element.type === 'node' && !isOnEarth(element.lon, element.lat)) {
      result.skipped.push({
        id: idOf(element),
        reason: { phrase: 'skipped-block-off-earth', facts: { lat: element.lat, lon: element.lon } },
      });
      return;
    }
    if (isPlacedNode(element) && this.#isFar(element)) packFar(result.far, element);
    else result.elements.push(element);
    if (result.elements.length > PBF_WANTED_MAX)
      throw new BrokenBlock(`more than ${PBF_WANTED_MAX} supplies`);
    for (const commodity of commodities)
      if (!result.commodities.includes(commodity)) result.commodities.push(commodity);
  }

  #isFar({ lon, lat }: RawNode): boolean {
    const { near } = this.#settings;
    return near !== null && !isNear(near, [lon, lat, lon, lat]);
  }

  /** The ground around the route alone, of a block that was looked through before the nodes of all its ways were known. */
  around(block: Block): AroundResult {
    forEachObject(block, (form, cursor) => {
      if (form !== FORMS.way) {
        cursor.skip(form);
        return;
      }
      const range = cursor.range();
      const seen = keysOf(block, range);
      if (isRoad('way', seen)) this.#road(block, range);
      this.#keepSurrounding(block, 'way', range, seen);
    });
    return this.#takeAround();
  }

  /** Draws a road as far as its nodes lie near; most lie far off, and nothing is made for them. */
  #road(block: Block, range: Range): void {
    const { around } = this.#settings;
    if (around === null) return;
    const { ids, count, isLocated } = wayNodeIds(block, range);
    if (isLocated) {
      this.#drawLocated(block, range, around.marks);
      return;
    }
    const { nodes } = around;
    if (nodes.isEmpty) return;
    let marks: RoadMarks | null | undefined;
    let before = -1;
    for (let place = 0; place < count; place += 1) {
      const slot = nodes.slotOf(ids[place] ?? Number.NaN);
      if (slot >= 0) {
        marks ??= isDriven(listedTags(block, range)) ? around.marks : null;
        this.#drawStep(nodes, before < 0 ? slot : before, slot, marks);
      }
      before = slot;
    }
  }

  /** Draws a road that holds the positions of its nodes itself. */
  #drawLocated(block: Block, range: Range, marks: RoadMarks): void {
    const { geometry } = wayLine(block, range);
    this.#roadCells?.addLine(geometry ?? []);
    if (isDriven(listedTags(block, range))) marks.markLine(geometry ?? []);
  }

  #drawStep(nodes: NearNodes, from: number, to: number, marks: RoadMarks | null): void {
    const [lon, lat, toLon, toLat] = [nodes.lonAt(from), nodes.latAt(from), nodes.lonAt(to), nodes.latAt(to)];
    this.#roadCells?.addStep(lon, lat, toLon, toLat);
    marks?.markStep(lon, lat, toLon, toLat);
  }

  /** Keeps a way or relation that bears on supplies: one that may lie within reach, or is of a kind that is kept anyhow. */
  #keepSurrounding(block: Block, type: 'way' | 'relation', range: Range, seen: number): void {
    if (!mayBearOnSupplies(block, range, seen)) return;
    const { around } = this.#settings;
    if (around === null || !mayBe(type, listedTags(block, range))) return;
    const { element, deleted } = type === 'way' ? decodeWay(block, range) : decodeRelation(block, range);
    const kinds = kindsOf(element);
    if (deleted || kinds.length === 0) return;
    const mayReach =
      type === 'relation' ||
      kinds.some(isWide) ||
      (element.geometry?.some((at) => at !== null && around.reach.has(cellOf(at.lon, at.lat))) ??
        element.nodes?.some((id) => around.nodesInReach.has(id)));
    if (mayReach === true) this.#surroundings.push({ ...element, tags: told(element.tags ?? {}) });
  }

  /** A way or relation: its id and keys first, the rest only on a hit. */
  #listed(block: Block, type: 'way' | 'relation', outer: Cursor, result: ScanResult): void {
    const start = outer.pass();
    const end = outer.position;
    const cursor = cursorOver(block.bytes, { start, end });
    const span = result.spans[type];
    let id: number | null = null;
    let seen: number | null = null;
    for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
      if (tag === 8) id = cursor.integer();
      else if (tag === 18) {
        const from = cursor.pass();
        seen = block.strings.flagsOfList(from, cursor.position);
      } else cursor.skip(tag);
      if (id !== null && seen !== null) break;
    }
    if (id === null) throw new BrokenBlock(`a ${type} without id`);
    widen(span, id);
    if (seen === null) {
      result.untagged.way ||= type === 'way';
      return;
    }
    // Millions have none of these keys: nothing is made for them.
    if (seen === 0) return;
    if (isRoad(type, seen)) this.#road(block, { start, end });
    // Nothing is made for those without such a key, either.
    if (bears(seen)) this.#keepSurrounding(block, type, { start, end }, seen);
    if ((seen & WANTED_KEY) === 0 || !this.#keepListed(block, type, { start, end }, result))
      countKeys(result.content, seen);
  }

  /** A way or relation that has a key of a supply: false where it is none. */
  #keepListed(block: Block, type: 'way' | 'relation', range: Range, result: ScanResult): boolean {
    const tags = listedTags(block, range);
    if (tags === null || wantedFor(tags).length === 0) return false;
    this.#keepWanted(type === 'way' ? decodeWay(block, range) : decodeRelation(block, range), tags, result);
    return true;
  }
}

const isRoad = (type: 'way' | 'relation', seen: number): boolean => type === 'way' && (seen & ROAD_KEY) !== 0;

/** Whether marks of keys are among those of surroundings. */
const bears = (seen: number): boolean => (seen & (SURROUNDING_MARK | SURROUNDING_KEY)) !== 0;

/** Whether a way or relation with these marks of its keys may be ground that bears on supplies. */
const mayBearOnSupplies = (block: Block, range: Range, seen: number): boolean =>
  (seen & SURROUNDING_MARK) !== 0 ||
  ((seen & SURROUNDING_KEY) !== 0 && (valuesOf(block, range) & SURROUNDING_MARK) !== 0);

/** Whether a way or relation with these tags is ground that bears on supplies in one of the forms that it may have. */
const mayBe = (type: 'way' | 'relation', tags: Record<string, string>): boolean =>
  (type === 'way' ? (['line', 'ring'] as const) : (['area', 'boundary'] as const)).some(
    (shape) => surroundingKinds(tags, shape).length > 0,
  );

/** Those tags that tell what bears on supplies. */
const told = (tags: Record<string, string>): Record<string, string> =>
  Object.fromEntries(Object.entries(tags).filter(([key]) => isTold(key)));

/** Counts a way or relation that supplies nothing by the marks of its keys. */
function countKeys(content: ContentCounts, seen: number): void {
  if ((seen & ROAD_KEY) !== 0) content.roads += 1;
  if ((seen & PLACE_KEY) !== 0) content.places += 1;
  if ((seen & OTHER_KEY) !== 0) content.others += 1;
}
