type Position = [number, number];

/** Positions gathered before they are reduced to their hull. Ours: keeps memory small and reductions rare. */
const BATCH = 4_096;

const turn = (o: Position, a: Position, b: Position): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Convex hull in the plane of degrees by monotone chains (Andrew 1979), anticlockwise, not closed. */
function hullOf(positions: Position[]): Position[] {
  const sorted = [...positions].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (order: Position[]): Position[] => {
    const kept: Position[] = [];
    for (const position of order) {
      for (;;) {
        const before = kept.at(-2);
        const last = kept.at(-1);
        if (before === undefined || last === undefined || turn(before, last, position) > 0) break;
        kept.pop();
      }
      kept.push(position);
    }
    kept.pop();
    return kept;
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

/** A hull that grows; `shiftDegrees` is added to western longitudes. */
class GrowingHull {
  readonly #shiftDegrees: number;
  #positions: Position[] = [];
  #reduceAt = BATCH;

  constructor(shiftDegrees: number) {
    this.#shiftDegrees = shiftDegrees;
  }

  add(lon: number, lat: number): void {
    this.#positions.push([lon < 0 ? lon + this.#shiftDegrees : lon, lat]);
    if (this.#positions.length < this.#reduceAt) return;
    this.#positions = hullOf(this.#positions);
    this.#reduceAt = this.#positions.length * 2 + BATCH;
  }

  hull(): Position[] {
    return hullOf(this.#positions);
  }
}

const widthOf = (ring: Position[]): number => {
  const lons = ring.map((position) => position[0]);
  return Math.max(...lons) - Math.min(...lons);
};

/** Takes positions in any number and keeps only what their hull needs. */
export class HullOfObjects {
  readonly #plain = new GrowingHull(0);
  readonly #overDateLine = new GrowingHull(360);

  /** Degrees, in range. */
  add(lon: number, lat: number): void {
    this.#plain.add(lon, lat);
    this.#overDateLine.add(lon, lat);
  }

  /**
   * Closed ring of [lon, lat], anticlockwise; null while the positions span no area. Longitudes run on past 180 when
   * that makes the hull narrower: the objects then lie on both sides of the 180th meridian.
   */
  ring(): Position[] | null {
    const plain = this.#plain.hull();
    if (plain.length < 3) return null;
    const over = this.#overDateLine.hull();
    const ring = over.length >= 3 && widthOf(over) < widthOf(plain) ? over : plain;
    const [first] = ring;
    return first === undefined ? null : [...ring, first];
  }
}
