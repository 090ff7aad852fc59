/**
 * A coarse grid over the Earth in which an extract's roads near a route are noted: about 770 m a cell, so that its
 * readers keep a number for each cell and no road. Ours.
 */
const CELLS_PER_DEGREE = 144;
const CELL_DEG = 1 / CELLS_PER_DEGREE;
const COLUMNS_MAX = 360 * CELLS_PER_DEGREE;
const ROWS = 180 * CELLS_PER_DEGREE;

/** Cells around the Earth in each degree of latitude from the South Pole up, so that a cell is about as wide as high. */
const COLUMNS = Array.from({ length: 181 }, (_, degree) => {
  const middle = degree - 90 + 0.5;
  return Math.max(1, Math.round(COLUMNS_MAX * Math.cos((Math.min(89.5, Math.abs(middle)) * Math.PI) / 180)));
});

/**
 * Degrees east of the 180th meridian, from 0 to less than 360: one rounding for cells and for their parts. The share of the
 * turn is less than 1, and so many times a whole number, rounded, less than that number.
 */
function turnedEast(lon: number): number {
  const east = lon + 180;
  return east >= 0 && east < 360 ? east : ((east % 360) + 360) % 360;
}

/** The number of the cell of a place, from 0; longitudes may run on past 180. */
export function cellOf(lon: number, lat: number): number {
  const columns = COLUMNS[Math.floor(lat + 90)] ?? 1;
  const column = Math.floor((turnedEast(lon) / 360) * columns);
  const row = Math.min(ROWS - 1, Math.max(0, Math.floor((lat + 90) / CELL_DEG)));
  return row * COLUMNS_MAX + column;
}

/** A cell has so many parts in a row, and as many rows of them: about 96 m each. */
const PARTS = 8;

/** A part of a cell: the cell's number, the part's from 0 in rows from the south, and its middle. */
export interface CellPart {
  readonly cell: number;
  readonly part: number;
  readonly lon: number;
  readonly lat: number;
}

/** The number of the part of a cell that a place lies in: the cell's times 64, and the part's; for the many places of roads. */
export function partNumberOf(lon: number, lat: number): number {
  const columns = COLUMNS[Math.floor(lat + 90)] ?? 1;
  const east = Math.floor((turnedEast(lon) / 360) * columns * PARTS);
  const north = Math.min(ROWS * PARTS - 1, Math.max(0, Math.floor(((lat + 90) / CELL_DEG) * PARTS)));
  const cell = Math.floor(north / PARTS) * COLUMNS_MAX + Math.floor(east / PARTS);
  return cell * PARTS * PARTS + (north % PARTS) * PARTS + (east % PARTS);
}

/** How many steps a straight line is gone in so that its places are at most half a cell apart. */
export const stepsAlong = (eastDeg: number, northDeg: number): number =>
  Math.ceil(Math.max(Math.abs(eastDeg), Math.abs(northDeg)) / (CELL_DEG / 2));

/** The part of a cell that a place lies in; longitudes may run on past 180. */
export function cellPartOf(lon: number, lat: number): CellPart {
  const columns = COLUMNS[Math.floor(lat + 90)] ?? 1;
  const east = Math.floor((turnedEast(lon) / 360) * columns * PARTS);
  const north = Math.min(ROWS * PARTS - 1, Math.max(0, Math.floor(((lat + 90) / CELL_DEG) * PARTS)));
  const [column, row] = [Math.floor(east / PARTS), Math.floor(north / PARTS)];
  return {
    cell: row * COLUMNS_MAX + column,
    part: (north % PARTS) * PARTS + (east % PARTS),
    lon: ((east + 0.5) / (columns * PARTS)) * 360 - 180,
    lat: -90 + ((north + 0.5) / PARTS) * CELL_DEG,
  };
}

/** How high a part of a cell is, and how wide at a latitude, degrees. */
export const PART_HEIGHT = CELL_DEG / PARTS;
export const partWidth = (lat: number): number => 360 / ((COLUMNS[Math.floor(lat + 90)] ?? 1) * PARTS);

/** All the cells that are at most so many rows and columns from that of a place. */
export function cellsWithin(lon: number, lat: number, cellsAway: number): number[] {
  const cells: number[] = [];
  for (let north = -cellsAway; north <= cellsAway; north += 1) {
    const rowLat = Math.min(89.999, Math.max(-90, lat + north * CELL_DEG));
    const widthDeg = 360 / (COLUMNS[Math.floor(rowLat + 90)] ?? 1);
    for (let east = -cellsAway; east <= cellsAway; east += 1)
      cells.push(cellOf(lon + east * widthDeg, rowLat));
  }
  return cells;
}

/** The cells of a place and of those around it: what lies in them is at most 2.2 km off, what does not at least 0.77 km. */
export function cellsAround(lon: number, lat: number): number[] {
  const columns = COLUMNS[Math.floor(lat + 90)] ?? 1;
  const widthDeg = 360 / columns;
  const cells: number[] = [];
  for (const north of [-CELL_DEG, 0, CELL_DEG])
    for (const east of [-widthDeg, 0, widthDeg]) cells.push(cellOf(lon + east, lat + north));
  return cells;
}

/** The places of a straight line that are at most half a cell apart, its ends included. */
export function* placesAlong(
  from: { lon: number; lat: number },
  to: { lon: number; lat: number },
): Generator<[lon: number, lat: number]> {
  const steps = stepsAlong(to.lon - from.lon, to.lat - from.lat);
  for (let step = 0; step <= steps; step += 1) {
    const share = steps === 0 ? 0 : step / steps;
    yield [from.lon + share * (to.lon - from.lon), from.lat + share * (to.lat - from.lat)];
  }
}

/** A set of cells as plain numbers that can be sent to other threads: open addressing, 0 for an empty slot. */
export class CellSet {
  readonly slots: Int32Array;

  constructor(slots: Int32Array) {
    this.slots = slots;
  }

  static of(cells: ReadonlySet<number>): CellSet {
    let size = 16;
    while (size < cells.size * 3) size *= 2;
    const slots = new Int32Array(size);
    for (const cell of cells) {
      let slot = (Math.imul(cell, 0x9e3779b1) >>> 0) & (size - 1);
      while (slots[slot] !== 0) slot = (slot + 1) & (size - 1);
      slots[slot] = cell + 1;
    }
    return new CellSet(slots);
  }

  has(cell: number): boolean {
    return this.slotOf(cell) >= 0;
  }

  /** Where in the slots a cell stands; -1 where it does not. */
  slotOf(cell: number): number {
    const { slots } = this;
    const last = slots.length - 1;
    let slot = (Math.imul(cell, 0x9e3779b1) >>> 0) & last;
    for (let held = slots[slot]; held !== 0 && held !== undefined; held = slots[slot]) {
      if (held === cell + 1) return slot;
      slot = (slot + 1) & last;
    }
    return -1;
  }
}
