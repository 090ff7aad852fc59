import type { Bbox } from '../../../../contract/common.ts';
import type { Caution } from '../../../../core/phrases/cautions.ts';
import { FarList, type FarObjects, NOTHING_FAR } from '../../extract/far-objects.ts';
import type { LatLon } from '../../extract/position.ts';
import {
  isPlacedNode,
  type Member,
  type OsmType,
  type RawElement,
  type RawNode,
} from '../../extract/raw-element.ts';
import type { RawExtract, ReadOptions } from '../../extract/raw-extract.ts';
import {
  addContent,
  isGeneralMap,
  noContent,
  tellsByRoads,
} from '../../extract/whole-file/content-census.ts';
import { osmPapers } from '../../extract/whole-file/papers.ts';
import { keepNear, lendingOf } from '../../keep/keep-near.ts';
import { type Drawn, lineOfWay, surroundingsFrom } from '../../surroundings/shapes.ts';
import { Census, Newest } from '../find/census.ts';
import { FarNodes } from '../find/far-nodes.ts';
import { type Found, isBare, SOUGHT_NOTHING, type Sought } from '../find/find.ts';
import { GroundKeeper, groundWithNodes, type NodeLookup, positionsOf } from '../find/ground-keeper.ts';
import type { GroundWay } from '../find/ground-ways.ts';
import { HullSupports } from '../find/hull.ts';
import { maybeCut } from '../find/maybe-cut.ts';
import { type AroundMemory, aroundSearch } from '../find/near-nodes.ts';
import { ascendingOnce, NodeTable } from '../find/node-table.ts';
import { unpackNodes } from '../find/packed-nodes.ts';
import { type AroundResult, idOf, type ScanResult } from '../find/scan.ts';
import { pbfProblem } from '../wire/broken.ts';
import type { Frame } from '../wire/framing.ts';
import type { HeaderBlock } from '../wire/header-block.ts';

import type { Job } from './jobs.ts';
import type { Workers } from './workers.ts';

const ids = (): Record<OsmType, Set<number>> => ({ node: new Set(), way: new Set(), relation: new Set() });

const ascending = (sought: ReadonlySet<number>): Float64Array => Float64Array.from(sought).sort();

/** The node that a member is; empty for a way or relation. */
const nodeRef = ({ type, ref }: Member): number[] => (type === 'node' ? [ref] : []);

/** What was found besides the wanted elements. */
export interface Fetched {
  keeper: GroundKeeper;
  groundWays: readonly RawElement[];
  lentWays: readonly RawElement[];
  /** Ways of relations that bear on supplies, by their ids. */
  sides: ReadonlyMap<number, RawElement>;
  nodeOf: NodeLookup;
}

/** A file's origin where that is another than OpenStreetMap, whose addresses come in many writings. */
const foreignOrigin = (origin: string | null): string | null =>
  origin === null || /openstreetmap|overpass|osm/i.test(origin) ? null : origin;

/** One file's reading: scan, then fetch what the finds need. */
export class Reading {
  readonly #workers: Workers;
  readonly #options: ReadOptions;
  readonly #header: HeaderBlock;
  readonly #census = new Census();
  readonly #hulls = [new HullSupports(), new HullSupports()] as const;
  readonly #cautions: Caution[] = [];
  readonly #skipped: RawExtract['skipped'] = [];
  readonly #shows = { fuel: false, water: false };
  readonly #content = noContent();
  readonly #untagged = { node: false, way: false };
  readonly #roadCells = new Set<number>();
  /** Blobs given out so far, and before which of them not all nodes were known. */
  #givenOut = 0;
  #nodesKnownFrom = 0;
  readonly #wayFrames: { number: number; frame: Frame }[] = [];
  #taken = 0;
  readonly #places: RawElement[] = [];
  readonly #deleted = new FarList();
  #wanted: RawElement[] = [];
  readonly #farNodes = new FarNodes();
  readonly #around: AroundMemory | null;
  /** Ground that may bear on supplies, each in its newest version. */
  readonly #surroundings = new Newest();
  #foreignBlobs = 0;

  constructor(workers: Workers, options: ReadOptions, header: HeaderBlock, around: AroundMemory | null) {
    this.#around = around;
    this.#workers = workers;
    this.#options = options;
    this.#header = header;
  }

  async scan(frames: Iterable<Frame>, dataStart: number, fileBytes: number): Promise<void> {
    this.#options.onProgress?.(dataStart, fileBytes);
    await this.#workers.run(this.#scanJobs(frames), (result, { frame }) => {
      this.#take(result as ScanResult, frame);
      this.#options.onProgress?.(frame.blobStart + frame.blobBytes, fileBytes);
    });
  }

  *#scanJobs(frames: Iterable<Frame>): Generator<Job> {
    for (const frame of frames) {
      if (frame.type === 'OSMData') {
        this.#givenOut += 1;
        yield { kind: 'scan', frame };
      } else if (frame.type === 'OSMHeader') {
        throw pbfProblem({
          code: 'pbf-broken',
          source: this.#options.source,
          byte: frame.frameStart,
          came: 'a second file header',
          expected: 'one',
          remedy: 'Files joined end to end must be merged, for example with: osmium merge',
        });
      } else this.#foreignBlobs += 1;
    }
  }

  #take(result: ScanResult, frame: Frame): void {
    this.#census.add(frame, result.spans);
    this.#farNodes.take(result.far, this.#wanted.length);
    for (const element of result.elements) this.#wanted.push(element);
    for (const skipped of result.skipped) this.#skipped.push(skipped);
    for (const place of result.places) this.#places.push(place);
    for (const age of result.deleted) this.#deleted.add(age, null);
    for (const commodity of result.commodities) this.#shows[commodity] = true;
    addContent(this.#content, result.content);
    this.#untagged.node ||= result.untagged.node;
    this.#untagged.way ||= result.untagged.way;
    this.#takeAround(result);
    if (result.spans.node.count > 0) this.#nodesKnownFrom = this.#givenOut;
    if (result.spans.way.count > 0) this.#wayFrames.push({ number: this.#taken, frame });
    this.#taken += 1;
    if (result.supports !== null) {
      this.#hulls[0].merge(result.supports[0]);
      this.#hulls[1].merge(result.supports[1]);
    }
  }

  #takeAround({ roadCells, surroundings }: AroundResult): void {
    for (const cell of roadCells) this.#roadCells.add(cell);
    for (const element of surroundings) this.#surroundings.add(element);
  }

  /** Fetches what the finds need; the file and its threads are not needed after it. */
  async fetch(box: Bbox | null): Promise<Fetched> {
    if (this.#around !== null) await this.#lookAroundAgain();
    const keeper = new GroundKeeper();
    if (box !== null) await this.#gatherGround(keeper);
    const groundWays = keeper.ways();

    const { lentWays, sides } = await this.#fetchWaysAndRepeats();
    const ways = [...this.#wanted.filter((element) => element.type === 'way'), ...lentWays];
    const around = [...this.#surroundings.all('way'), ...sides.values()];
    const nodeOf = await this.#fetchNodes([...ways, ...groundWays, ...around]);
    return { keeper, groundWays, lentWays, sides, nodeOf };
  }

  finish(box: Bbox | null, { keeper, groundWays, lentWays, sides, nodeOf }: Fetched): RawExtract {
    this.#wanted = this.#wanted.filter((element) => this.#canBePlaced(element));
    const { lending, far } = this.#leaveFar(lentWays, nodeOf);
    const elements = this.#assemble(lending, nodeOf);

    const { source } = this.#options;
    this.#cautions.push(...keeper.cautions(source), ...this.#fileCautions());
    return {
      source,
      format: 'pbf',
      papers: osmPapers({ asOf: this.#header.asOf, attribution: foreignOrigin(this.#header.origin) }),
      elements,
      wanted: new Set(this.#wanted.map(idOf)),
      far,
      unwanted: NOTHING_FAR,
      deleted: this.#deleted.objects(),
      features: [],
      bounds: this.#header.bounds,
      hull: this.#hull(),
      shows: { ...this.#shows, general: isGeneralMap(this.#content) },
      roads: this.#roads(),
      ...this.#landAround(sides, nodeOf),
      counts: { nodes: this.#counts().node, ways: this.#counts().way, relations: this.#counts().relation },
      ground: box === null ? [] : [...this.#places, ...groundWithNodes(groundWays, box, nodeOf)],
      skipped: this.#skipped,
      cautions: this.#cautions,
    };
  }

  /** Looks again at blobs that were given out before all nodes were known. */
  async #lookAroundAgain(): Promise<void> {
    const early = this.#wayFrames.filter(({ number }) => number < this.#nodesKnownFrom);
    const jobs = early.map(({ frame }): Job => ({ kind: 'around', frame }));
    await this.#workers.run(jobs, (result) => this.#takeAround(result as AroundResult));
  }

  #roads(): Int32Array | null {
    if (this.#around === null || !tellsByRoads(this.#content)) return null;
    return Int32Array.from(this.#roadCells).sort();
  }

  #landAround(
    sides: ReadonlyMap<number, RawElement>,
    nodeOf: NodeLookup,
  ): Pick<RawExtract, 'surroundings' | 'drawnRoads'> {
    const near = this.#options.near ?? null;
    if (near === null || this.#around === null) return { surroundings: [], drawnRoads: null };
    const { reach, marks } = aroundSearch(this.#around);
    const placeOf = (id: number, written: LatLon | null | undefined): LatLon | null => {
      const { lon, lat } = nodeOf(id) ?? written ?? {};
      return lon === undefined || lat === undefined ? null : { lon, lat };
    };
    const lineOf = ({ nodes, geometry }: RawElement): Drawn =>
      (nodes ?? []).map((id, index) => placeOf(id, geometry?.[index]));
    const wayOf = (id: number) => this.#surroundings.get('way', id) ?? sides.get(id);
    const surroundings = surroundingsFrom(
      [
        ...this.#surroundings.all('node'),
        ...this.#surroundings.all('way'),
        ...this.#surroundings.all('relation'),
      ],
      { near, reach },
      { lineOf, memberLine: ({ ref }) => lineOfWay(wayOf(ref), lineOf) },
    );
    return { surroundings, drawnRoads: tellsByRoads(this.#content) ? marks.drawn() : null };
  }

  async #gatherGround(keeper: GroundKeeper): Promise<void> {
    const frames = this.#census.framesWith('way');
    const jobs = function* (): Generator<Job> {
      for (const frame of frames) yield { kind: 'ground', frame, leastRank: keeper.leastRank };
    };
    await this.#workers.run(jobs(), (result) => {
      for (const way of result as GroundWay[]) keeper.add(way);
    });
  }

  /** Ways that relations need; drops what a newer version in the same file makes void. */
  async #fetchWaysAndRepeats(): Promise<Pick<Fetched, 'lentWays' | 'sides'>> {
    const sought = ids();
    const types = (['node', 'way', 'relation'] as const).filter((type) => this.#census.mayRepeat(type));
    for (const element of this.#wanted)
      if (types.includes(element.type)) sought[element.type].add(element.id);
    const wantedWays = new Set(this.#wanted.filter(({ type }) => type === 'way').map(({ id }) => id));
    for (const member of this.#wanted.flatMap((element) => element.members ?? []))
      if (member.type === 'way' && !wantedWays.has(member.ref)) sought.way.add(member.ref);
    const lending = new Set(sought.way);
    const sidesOf = this.#sidesWanted();
    for (const id of sidesOf) sought.way.add(id);

    const newest = await this.#find(sought);
    const sides = new Map<number, RawElement>();
    for (const way of newest.all('way')) if (sidesOf.has(way.id)) sides.set(way.id, way);
    if (types.includes('node')) this.#wanted = this.#farNodes.settle(this.#wanted);
    this.#dropOutdated(newest);
    const wantedNow = new Set(this.#wanted.map(idOf));
    const lentWays = [...newest.all('way')].filter(
      (way) => lending.has(way.id) && !isBare(way) && !wantedNow.has(idOf(way)),
    );
    return { lentWays, sides };
  }

  /** Ways that relations which bear on supplies are made of, as far as they are not kept themselves. */
  #sidesWanted(): Set<number> {
    const wanted = new Set<number>();
    for (const { members = [] } of this.#surroundings.all('relation'))
      for (const { type, ref } of members)
        if (type === 'way' && this.#surroundings.get('way', ref) === undefined) wanted.add(ref);
    return wanted;
  }

  #dropOutdated(inFile: Newest): void {
    const newest = new Newest();
    for (const element of this.#wanted) newest.add(element);
    this.#wanted = this.#wanted.filter((element) => {
      const { type, id, version = 0 } = element;
      if (newest.get(type, id) !== element) return false;
      if ((inFile.get(type, id)?.version ?? 0) <= version) return true;
      this.#skipped.push({ id: idOf(element), reason: { phrase: 'skipped-newer-in-file', facts: {} } });
      return false;
    });
  }

  *#findJobs(sorted: Sought): Generator<Job> {
    for (const search of this.#census.searches(sorted)) yield { kind: 'find', ...search };
  }

  async #find(sought: Record<OsmType, Set<number>>): Promise<Newest> {
    const found = new Newest();
    const sorted = {
      node: ascending(sought.node),
      way: ascending(sought.way),
      relation: ascending(sought.relation),
    };
    await this.#workers.run(this.#findJobs(sorted), (result) => {
      const { nodes, listed } = result as Found;
      for (const element of unpackNodes(nodes)) found.add(element);
      for (const element of listed) found.add(element);
    });
    return found;
  }

  /** Finds, of the nodes of these ways and of the wanted relations, and of the wanted nodes themselves, one by its id. */
  async #fetchNodes(ways: readonly RawElement[]): Promise<NodeLookup> {
    const wanted = new Map<number, RawNode>();
    for (const element of this.#wanted) if (isPlacedNode(element)) wanted.set(element.id, element);
    const sought = ascendingOnce(Float64Array.from(this.#nodesNeeded(ways, (id) => wanted.has(id))));
    const table = new NodeTable(sought);
    await this.#workers.run(this.#findJobs({ ...SOUGHT_NOTHING, node: sought }), (result) => {
      table.take((result as Found).nodes);
    });
    return (id) => wanted.get(id) ?? table.get(id);
  }

  *#nodesNeeded(ways: readonly RawElement[], isKnown: (id: number) => boolean): Generator<number> {
    const all = function* (wanted: readonly RawElement[]): Generator<number> {
      for (const way of ways) if (way.geometry === undefined) yield* way.nodes ?? [];
      for (const { members = [] } of wanted) yield* members.flatMap(nodeRef);
    };
    for (const id of all(this.#wanted)) if (!isKnown(id)) yield id;
  }

  /** Drops the wanted elements that lie far away; gives what ways and relations lend to the rest. */
  #leaveFar(lentWays: readonly RawElement[], nodeOf: NodeLookup): { lending: RawElement[]; far: FarObjects } {
    const near = this.#options.near ?? null;
    if (near === null) return { lending: [...lentWays], far: NOTHING_FAR };
    const listed = new Map<string, RawElement>();
    for (const element of [...lentWays, ...this.#wanted])
      if (element.type !== 'node') listed.set(idOf(element), element);
    const all = this.#wanted;
    const listedOf = (type: OsmType, id: number) => listed.get(`${type}/${id}`);
    const kept = keepNear(all, near, (type, id) => (type === 'node' ? nodeOf(id) : listedOf(type, id)));
    this.#wanted = kept.near;
    const far = new FarList();
    this.#farNodes.addTo(far);
    far.join(kept.far);
    return { lending: lendingOf(kept.near, all, listedOf), far: far.objects() };
  }

  #assemble(lending: readonly RawElement[], nodeOf: NodeLookup): RawElement[] {
    const used = new Map<number, RawElement>();
    const ways = [...this.#wanted, ...lending].filter(({ type }) => type === 'way');
    for (const element of this.#wanted) if (element.type === 'node') used.set(element.id, element);
    for (const way of ways)
      for (const node of positionsOf(way, nodeOf)) if (!used.has(node.id)) used.set(node.id, node);
    for (const member of [...this.#wanted, ...lending].flatMap((element) => element.members ?? [])) {
      const node = member.type === 'node' ? nodeOf(member.ref) : undefined;
      if (node !== undefined) used.set(node.id, node);
    }
    const listed = [...this.#wanted.filter((element) => element.type !== 'node'), ...lending];
    return [...used.values(), ...listed.map(({ geometry: _, ...element }) => element)];
  }

  #canBePlaced(element: RawElement): boolean {
    if (element.type !== 'relation' || element.members?.some((member) => member.type !== 'relation'))
      return true;
    this.#skipped.push({ id: idOf(element), reason: { phrase: 'skipped-no-placed-members', facts: {} } });
    return false;
  }

  /** The narrower of the two hulls, so that data on both sides of the 180th meridian does not span the Earth. */
  #hull(): [number, number][] | null {
    const [plain, raised] = this.#hulls;
    return (raised.width < plain.width ? raised : plain).ring();
  }

  #counts(): Record<OsmType, number> {
    const count = (type: OsmType) => this.#census.count(type);
    return { node: count('node'), way: count('way'), relation: count('relation') };
  }

  #cutCautions(): Caution[] {
    const why = maybeCut({
      counts: this.#counts(),
      untagged: this.#untagged,
      isLocated: this.#header.isLocated,
      isGeneral: isGeneralMap(this.#content),
      blocks: this.#census.blobCounts(),
    });
    return why === null ? [] : [{ code: 'maybe-cut', facts: { source: this.#options.source, why } }];
  }

  #fileCautions(): Caution[] {
    const { source } = this.#options;
    const cautions = this.#cutCautions();
    if (this.#header.boundsRefused) cautions.push({ code: 'bounds-refused', facts: { source } });
    if (this.#foreignBlobs > 0)
      cautions.push({ code: 'pbf-foreign-blob', facts: { source, count: this.#foreignBlobs } });
    return cautions;
  }
}
