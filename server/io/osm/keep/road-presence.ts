import { type CellSet, cellOf, placesAlong } from '../../../core/route/road-cells.ts';
import { type LatLon, liesOnEarth } from '../extract/position.ts';
import type { RawElement } from '../extract/raw-element.ts';

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
      for (const [lon, lat] of placesAlong(before ?? position, position)) {
        const cell = cellOf(lon, lat);
        if (this.#band.has(cell)) this.add(cell);
      }
      before = position;
    }
  }

  cells(): Int32Array {
    return Int32Array.from(this.#cells).sort();
  }
}

/** Finds where a file's roads run near a route, from elements that come one by one, in one pass or two. */
export class RoadPresence {
  readonly #band: CellSet;
  readonly #roads: RoadCells;
  readonly #nodes = new Map<number, LatLon>();
  #roadSeen = false;
  /** A road came before a node near the route: it may have been its. */
  wantsSecondPass = false;

  constructor(band: CellSet) {
    this.#band = band;
    this.#roads = new RoadCells(band);
  }

  visit(element: RawElement): void {
    if (element.type === 'node') this.#visitNode(element);
    else if (element.type === 'way' && element.tags?.highway !== undefined) this.visitRoad(element);
  }

  #visitNode(node: RawElement): void {
    if (!liesOnEarth(node) || !this.#band.has(cellOf(node.lon, node.lat))) return;
    this.#nodes.set(node.id, { lon: node.lon, lat: node.lat });
    this.wantsSecondPass ||= this.#roadSeen;
  }

  visitRoad({ geometry, center, nodes }: RawElement): void {
    if (geometry !== undefined) this.#roads.addLine(geometry);
    else if (center !== undefined) this.#roads.addLine([center]);
    if (nodes === undefined) return;
    this.#roadSeen = true;
    this.#roads.addLine(nodes.map((id) => this.#nodes.get(id)));
  }

  cells(): Int32Array {
    return this.#roads.cells();
  }
}
