import { CellSet, cellOf } from '../../../../core/route/road-cells.ts';

/** Slots of the table, a power of two: 13 MiB in all. Ours: a route of 5,000 km has some 30,000 cells in reach. */
const SLOTS = 2 ** 20;
/** The table is left as it is when so full: of what comes later no road is seen, which never makes cover. */
const FULL = SLOTS * 0.7;
/** Nodes kept of one cell: roads are among the first that are mapped, so towns do not fill the table. Ours. */
const NODES_OF_A_CELL = 400;
/** Counters of nodes by cell; two cells that share one share its room. */
const COUNTERS = 2 ** 18;

/** Ids of nodes near the route with their positions to a cell, in memory that threads share. */
export class NearNodes {
  readonly #low: Int32Array;
  readonly #high: Int32Array;
  readonly #cell: Int32Array;
  readonly #counters: Int32Array;
  readonly #used: Int32Array;

  constructor(memory: SharedArrayBuffer) {
    this.#low = new Int32Array(memory, 0, SLOTS);
    this.#high = new Int32Array(memory, SLOTS * 4, SLOTS);
    this.#cell = new Int32Array(memory, SLOTS * 8, SLOTS);
    this.#counters = new Int32Array(memory, SLOTS * 12, COUNTERS);
    this.#used = new Int32Array(memory, SLOTS * 12 + COUNTERS * 4, 1);
  }

  static readonly BYTES = SLOTS * 12 + COUNTERS * 4 + 4;

  get isEmpty(): boolean {
    return Atomics.load(this.#used, 0) === 0;
  }

  add(id: number, cell: number): void {
    if (Atomics.load(this.#used, 0) >= FULL) return;
    const counter = Math.imul(cell, 0x9e3779b1) >>> 14;
    if (Atomics.add(this.#counters, counter, 1) >= NODES_OF_A_CELL) return;
    const low = lowOf(id);
    const high = highOf(id);
    let slot = slotOf(low, high);
    while (Atomics.compareExchange(this.#low, slot, 0, low) !== 0) slot = (slot + 1) & (SLOTS - 1);
    Atomics.store(this.#high, slot, high);
    Atomics.store(this.#cell, slot, cell + 1);
    Atomics.add(this.#used, 0, 1);
  }

  /** The cell of a node; -1 where it is not known. */
  cellOf(id: number): number {
    const low = lowOf(id);
    const high = highOf(id);
    let slot = slotOf(low, high);
    for (let held = this.#low[slot]; held !== 0 && held !== undefined; held = this.#low[slot]) {
      if (held === low && this.#high[slot] === high) return (this.#cell[slot] ?? 0) - 1;
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

const slotOf = (low: number, high: number): number =>
  Math.imul(low ^ Math.imul(high, 0x85ebca6b), 0x9e3779b1) >>> 12;

/** Where roads are looked for, and the nodes there. */
export interface RoadSearch {
  readonly band: CellSet;
  readonly nodes: NearNodes;
}

/** What can be sent to threads of a search. */
export interface RoadMemory {
  readonly band: Int32Array;
  readonly nodes: SharedArrayBuffer;
}

export const roadSearch = ({ band, nodes }: RoadMemory): RoadSearch => ({
  band: new CellSet(band),
  nodes: new NearNodes(nodes),
});

/** Notes a node that lies near the route. */
export const noteNode = ({ band, nodes }: RoadSearch, id: number, lon: number, lat: number): void => {
  const cell = cellOf(lon, lat);
  if (band.has(cell)) nodes.add(id, cell);
};
