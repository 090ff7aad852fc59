import type { LandAround } from '../../../../app/near-route.ts';
import { CellSet, cellOf } from '../../../../core/route/cover/road-cells.ts';
import { RoadMarks } from '../../../../core/surroundings/road-marks.ts';
import type { LatLon } from '../../extract/position.ts';
import { IdFilter } from './id-filter.ts';

/** Slots of the table, a power of two: 17 MiB in all. Ours: a route of 5,000 km has some 30,000 cells in reach. */
const SLOTS = 2 ** 20;
/** The table is left as it is when so full: of what comes later no road is seen, which never makes cover. */
const FULL = SLOTS * 0.7;
/** Farther off the route than its cover goes by, the table is left as it is when so full, and so many are kept of a cell. */
const FULL_FARTHER = SLOTS * 0.4;
const NODES_OF_A_CELL_FARTHER = 150;
/** Nodes kept of one cell: roads are among the first that are mapped, so towns do not fill the table. Ours. */
const NODES_OF_A_CELL = 400;
/** Counters of nodes by cell; two cells that share one share its room. */
const COUNTERS = 2 ** 18;

/** Positions are kept as whole numbers of this many to a degree, as files have them. */
const PER_DEGREE = 1e7;

/** Ids of nodes near the route with their positions, in memory that threads share. */
export class NearNodes {
  readonly #low: Int32Array;
  readonly #high: Int32Array;
  readonly #lon: Int32Array;
  readonly #lat: Int32Array;
  readonly #counters: Int32Array;
  readonly #used: Int32Array;

  constructor(memory: SharedArrayBuffer) {
    this.#low = new Int32Array(memory, 0, SLOTS);
    this.#high = new Int32Array(memory, SLOTS * 4, SLOTS);
    this.#lon = new Int32Array(memory, SLOTS * 8, SLOTS);
    this.#lat = new Int32Array(memory, SLOTS * 12, SLOTS);
    this.#counters = new Int32Array(memory, SLOTS * 16, COUNTERS);
    this.#used = new Int32Array(memory, SLOTS * 16 + COUNTERS * 4, 1);
  }

  static readonly BYTES = SLOTS * 16 + COUNTERS * 4 + 4;

  get isEmpty(): boolean {
    return Atomics.load(this.#used, 0) === 0;
  }

  /** Adds a node that lies in a cell; false where there is no room for it. */
  add(id: number, { lon, lat }: LatLon, cell: number, isBesideRoute: boolean): boolean {
    if (Atomics.load(this.#used, 0) >= (isBesideRoute ? FULL : FULL_FARTHER)) return false;
    const counter = Math.imul(cell, 0x9e3779b1) >>> 14;
    const most = isBesideRoute ? NODES_OF_A_CELL : NODES_OF_A_CELL_FARTHER;
    if (Atomics.add(this.#counters, counter, 1) >= most) return false;
    const low = lowOf(id);
    const high = highOf(id);
    let slot = firstSlotOf(low, high);
    while (Atomics.compareExchange(this.#low, slot, 0, low) !== 0) slot = (slot + 1) & (SLOTS - 1);
    Atomics.store(this.#high, slot, high);
    Atomics.store(this.#lon, slot, Math.round(lon * PER_DEGREE));
    Atomics.store(this.#lat, slot, Math.round(lat * PER_DEGREE));
    Atomics.add(this.#used, 0, 1);
    return true;
  }

  /** Where the node in a slot is. */
  lonAt(slot: number): number {
    return (this.#lon[slot] ?? 0) / PER_DEGREE;
  }

  latAt(slot: number): number {
    return (this.#lat[slot] ?? 0) / PER_DEGREE;
  }

  /** The slot of a node; -1 where it is not known. */
  slotOf(id: number): number {
    const low = lowOf(id);
    const high = highOf(id);
    let slot = firstSlotOf(low, high);
    for (let held = this.#low[slot]; held !== 0 && held !== undefined; held = this.#low[slot]) {
      if (held === low && this.#high[slot] === high) return slot;
      slot = (slot + 1) & (SLOTS - 1);
    }
    return -1;
  }
}

/** The low 32 bits of an id, never 0, which stands for an empty slot. */
const lowOf = (id: number): number => ((id | 0) === 0 ? 1 : id | 0);

/** The bits above, turned round where the low ones were 0, so that no two ids are one. */
const highOf = (id: number): number => {
  const high = Math.floor(id / 2 ** 32) | 0;
  return (id | 0) === 0 ? ~high : high;
};

const firstSlotOf = (low: number, high: number): number =>
  Math.imul(low ^ Math.imul(high, 0x85ebca6b), 0x9e3779b1) >>> 12;

/** Where the ground around the route is looked for, and the nodes there. */
export interface AroundSearch {
  readonly band: CellSet;
  readonly reach: CellSet;
  readonly nodes: NearNodes;
  /** Tells of more nodes than there is room for where they are whether they lie within reach. */
  readonly nodesInReach: IdFilter;
  readonly marks: RoadMarks;
}

/** What can be sent to threads of a search. */
export interface AroundMemory extends LandAround {
  readonly nodes: SharedArrayBuffer;
  readonly nodesInReach: SharedArrayBuffer;
  readonly marks: SharedArrayBuffer;
}

/** Bytes of the filter of nodes within reach, a power of two: over a million nodes with few false yeses. Ours. */
const FILTER_BYTES = 4 * 1024 * 1024;

/** Room for a search, as threads share it. */
export const aroundMemory = ({ band, reach }: LandAround): AroundMemory => ({
  band,
  reach,
  nodes: new SharedArrayBuffer(NearNodes.BYTES),
  nodesInReach: new SharedArrayBuffer(FILTER_BYTES),
  marks: new SharedArrayBuffer(RoadMarks.wordsFor(new CellSet(reach)) * Int32Array.BYTES_PER_ELEMENT),
});

export function aroundSearch(memory: AroundMemory): AroundSearch {
  const reach = new CellSet(memory.reach);
  return {
    band: new CellSet(memory.band),
    reach,
    nodes: new NearNodes(memory.nodes),
    nodesInReach: new IdFilter(memory.nodesInReach),
    marks: new RoadMarks(reach, new Int32Array(memory.marks)),
  };
}

/** Notes a node that lies within reach of the route. */
export function noteNode(search: AroundSearch, id: number, lon: number, lat: number): void {
  const cell = cellOf(lon, lat);
  if (!search.reach.has(cell)) return;
  search.nodesInReach.add(id);
  if (!search.nodes.add(id, { lon, lat }, cell, search.band.has(cell))) search.marks.crowd(cell);
}
