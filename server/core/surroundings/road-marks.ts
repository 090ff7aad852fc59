import type { LonLat } from '../geodesy/lon-lat.ts';
import { meridianRadiusM, primeVerticalRadiusM, RADIANS_PER_DEGREE } from '../geodesy/wgs84.ts';
import type { DrawnRoads } from '../input/sources.ts';
import {
  type CellPart,
  type CellSet,
  cellOf,
  cellPartOf,
  cellsAround,
  PART_HEIGHT,
  partNumberOf,
  partWidth,
  stepsAlong,
} from '../route/cover/road-cells.ts';

const PARTS_OF_A_CELL = 64;
/** Words for each cell: the marks of its 64 parts, and whether they are not complete. */
const WORDS = 3;
const CROWDED = 2;

/** Places on a road are marked so far apart at most, in parts of a cell: no part is stepped over but by a corner. */
const STEP_IN_PARTS = 0.5;

/**
 * Notes which parts of cells (about 96 m) roads run through, within reach of a route. The words may be shared by threads.
 */
export class RoadMarks {
  readonly #reach: CellSet;
  readonly #words: Int32Array;

  /** `words`: as many as `wordsFor` says, all 0. */
  constructor(reach: CellSet, words: Int32Array) {
    this.#reach = reach;
    this.#words = words;
  }

  static wordsFor(reach: CellSet): number {
    return reach.slots.length * WORDS;
  }

  static of(reach: CellSet): RoadMarks {
    return new RoadMarks(reach, new Int32Array(RoadMarks.wordsFor(reach)));
  }

  /** Marks a place of a road. */
  mark(lon: number, lat: number): void {
    const number = partNumberOf(lon, lat);
    const cell = Math.floor(number / PARTS_OF_A_CELL);
    const part = number - cell * PARTS_OF_A_CELL;
    const slot = this.#reach.slotOf(cell);
    if (slot >= 0) Atomics.or(this.#words, slot * WORDS + (part >> 5), 1 << (part & 31));
  }

  /** Marks a road by its positions; one that is not known parts it. */
  markLine(places: Iterable<LonLat | null | undefined>): void {
    let before: LonLat | null = null;
    for (const place of places) {
      const here: LonLat | null = place ?? null;
      if (here !== null) {
        const from = before ?? here;
        this.markStep(from.lon, from.lat, here.lon, here.lat);
      }
      before = here;
    }
  }

  /** Marks a straight piece of a road; made of numbers, since maps have millions. */
  markStep(lon: number, lat: number, toLon: number, toLat: number): void {
    const [east, north] = [toLon - lon, toLat - lat];
    if (!this.#isReached(lon, lat, east, north)) return;
    const steps = Math.ceil(
      Math.max(Math.abs(east) / partWidth(lat), Math.abs(north) / PART_HEIGHT) / STEP_IN_PARTS,
    );
    for (let step = 0; step <= steps; step += 1) {
      const share = steps === 0 ? 0 : step / steps;
      this.mark(lon + share * east, lat + share * north);
    }
  }

  #isReached(lon: number, lat: number, east: number, north: number): boolean {
    const steps = stepsAlong(east, north);
    for (let step = 0; step <= steps; step += 1) {
      const share = steps === 0 ? 0 : step / steps;
      if (this.#reach.has(cellOf(lon + share * east, lat + share * north))) return true;
    }
    return false;
  }

  /** Notes that in a cell not all roads are drawn, since too much is mapped there. */
  crowd(cell: number): void {
    const slot = this.#reach.slotOf(cell);
    if (slot >= 0) Atomics.store(this.#words, slot * WORDS + CROWDED, 1);
  }

  #isNoted(first: number): boolean {
    for (let word = first; word < first + WORDS; word += 1) if (this.#words[word] !== 0) return true;
    return false;
  }

  /** What was noted, of cells of which anything was. */
  drawn(): DrawnRoads {
    const noted: { cell: number; first: number }[] = [];
    this.#reach.slots.forEach((held, slot) => {
      const first = slot * WORDS;
      if (held !== 0 && this.#isNoted(first)) noted.push({ cell: held - 1, first });
    });
    noted.sort((a, b) => a.cell - b.cell);
    const marks = new Int32Array(noted.length * WORDS);
    for (const [index, { first }] of noted.entries())
      marks.set(this.#words.subarray(first, first + WORDS), index * WORDS);
    return { cells: Int32Array.from(noted, ({ cell }) => cell), marks };
  }
}

/**
 * A road is near where a part that it runs through has its middle so near, metres: a road within 128 m always has, one
 * beyond 290 m never (half the diagonal of a part is 68 m, and its corner may be stepped over by 24 m). Ours.
 */
const PART_NEAR_M = 220;
/** Parts to each side of a place that can be so near. */
const PARTS_AWAY = 3;

/** Metres between places that are near each other, on a plane. */
function planeM(from: LonLat, to: LonLat): number {
  const latRad = from.lat * RADIANS_PER_DEGREE;
  const east = (((to.lon - from.lon + 540) % 360) - 180) * RADIANS_PER_DEGREE;
  const north = (to.lat - from.lat) * RADIANS_PER_DEGREE;
  return Math.hypot(east * primeVerticalRadiusM(latRad) * Math.cos(latRad), north * meridianRadiusM(latRad));
}

/** The roads that some extracts show near the route. */
export class RoadMap {
  readonly #words = new Map<number, Int32Array>();

  constructor(roads: readonly DrawnRoads[]) {
    for (const { cells, marks } of roads)
      for (const [index, cell] of cells.entries()) {
        const known = this.#words.get(cell) ?? new Int32Array(WORDS);
        for (let word = 0; word < WORDS; word += 1)
          known[word] = (known[word] ?? 0) | (marks[index * WORDS + word] ?? 0);
        this.#words.set(cell, known);
      }
  }

  #isMarked({ cell, part }: CellPart): boolean {
    const word = this.#words.get(cell)?.[part >> 5] ?? 0;
    return (word & (1 << (part & 31))) !== 0;
  }

  /** Whether a road is mapped near a place: within 128 m for sure, not beyond 290 m; where much is mapped, within 2 km. */
  isRoadNear(place: LonLat): boolean {
    const [eastDeg, northDeg] = [partWidth(place.lat), PART_HEIGHT];
    for (let north = -PARTS_AWAY; north <= PARTS_AWAY; north += 1)
      for (let east = -PARTS_AWAY; east <= PARTS_AWAY; east += 1) {
        const part = cellPartOf(place.lon + east * eastDeg, place.lat + north * northDeg);
        if (this.#isMarked(part) && planeM(place, part) <= PART_NEAR_M) return true;
      }
    return this.#isNearInCrowd(place);
  }

  /** Where not all roads are drawn, any road in the cells around is near enough. */
  #isNearInCrowd({ lon, lat }: LonLat): boolean {
    const around = cellsAround(lon, lat).map((cell) => this.#words.get(cell) ?? []);
    return (
      around.some(([, , crowded = 0]) => crowded !== 0) &&
      around.some(([low = 0, high = 0]) => (low | high) !== 0)
    );
  }
}
