import type { DrawnRoads, Tags } from '../../../core/input/sources.ts';
import { type CellSet, cellOf, stepsAlong } from '../../../core/route/cover/road-cells.ts';
import { isDriven } from '../../../core/surroundings/kinds.ts';
import { RoadMarks } from '../../../core/surroundings/road-marks.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';
import type { NearPlaces } from '../surroundings/near-places.ts';

/** Marks the cells that roads run through. */
export class RoadCells {
  readonly #band: CellSet;
  readonly #cells = new Set<number>();
  #fresh: number[] = [];

  constructor(band: CellSet) {
    this.#band = band;
  }

  add(cell: number): void {
    if (this.#cells.has(cell)) return;
    this.#cells.add(cell);
    this.#fresh.push(cell);
  }

  /** Those marked since the last call. */
  takeNew(): number[] {
    const fresh = this.#fresh;
    this.#fresh = [];
    return fresh;
  }

  /** A line of positions; null parts it. Only what is within reach of the route is marked. */
  addLine(positions: Iterable<LatLon | null | undefined>): void {
    let before: LatLon | null = null;
    for (const position of positions) {
      if (!liesOnEarth(position)) {
        before = null;
        continue;
      }
      const from: LatLon = before ?? position;
      this.addStep(from.lon, from.lat, position.lon, position.lat);
      before = position;
    }
  }

  /** A straight piece of a road; made of numbers, since maps have millions. */
  addStep(lon: number, lat: number, toLon: number, toLat: number): void {
    const [east, north] = [toLon - lon, toLat - lat];
    const steps = stepsAlong(east, north);
    for (let step = 0; step <= steps; step += 1) {
      const share = steps === 0 ? 0 : step / steps;
      const cell = cellOf(lon + share * east, lat + share * north);
      if (this.#band.has(cell)) this.add(cell);
    }
  }

  cells(): Int32Array {
    return Int32Array.from(this.#cells).sort();
  }
}

/** Where a file's roads run near a route: in cells for its cover, in their parts for what lies beside them. */
export class RoadPresence {
  readonly #cells: RoadCells;
  readonly #marks: RoadMarks;
  readonly #places: NearPlaces;
  #roadSeen = false;
  /** A road came before a node near the route: it may have been its. */
  wantsSecondPass = false;

  constructor(band: CellSet, reach: CellSet, places: NearPlaces) {
    this.#cells = new RoadCells(band);
    this.#marks = RoadMarks.of(reach);
    this.#places = places;
  }

  /** `isNearNode`: it is a node within reach, as the places say. */
  visit(element: RawElement, isNearNode: boolean): void {
    if (isNearNode) this.wantsSecondPass ||= this.#roadSeen;
    else if (element.type === 'way' && element.tags?.highway !== undefined)
      this.#visitRoad(element, element.tags);
  }

  #visitRoad({ geometry, center, nodes }: RawElement, tags: Tags): void {
    if (nodes !== undefined) this.#roadSeen = true;
    const inline = geometry ?? (center === undefined ? undefined : [center]);
    const byNodes = nodes?.map((id) => this.#places.get(id));
    for (const line of [inline, byNodes]) {
      if (line === undefined) continue;
      this.#cells.addLine(line);
      if (isDriven(tags)) this.#marks.markLine(line);
    }
  }

  cells(): Int32Array {
    return this.#cells.cells();
  }

  drawn(): DrawnRoads {
    return this.#marks.drawn();
  }
}
