/** Directions in which the hull is supported: every 5.625 degrees. Ours: at most 0.5 % of the width is cut off a circle. */
const DIRECTIONS = 64;

const COSINES = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.cos((2 * Math.PI * k) / DIRECTIONS));
const SINES = Float64Array.from({ length: DIRECTIONS }, (_, k) => Math.sin((2 * Math.PI * k) / DIRECTIONS));

/** The farthest points found so far in each direction: reach, x and y of each in turn. */
export type Supports = Float64Array;

/**
 * The points farthest out in 64 directions on the plane of degrees. A point already inside is recognised by four
 * comparisons, so that millions of them cost little.
 */
export class HullSupports {
  readonly values: Supports = new Float64Array(DIRECTIONS * 3).fill(Number.NEGATIVE_INFINITY);
  /** Set when a point went beyond those before; the owner resets it. */
  changed = false;
  #west = Number.POSITIVE_INFINITY;
  #east = Number.NEGATIVE_INFINITY;
  #south = Number.POSITIVE_INFINITY;
  #north = Number.NEGATIVE_INFINITY;

  add(x: number, y: number): void {
    if (x >= this.#west && x <= this.#east && y >= this.#south && y <= this.#north) return;
    for (let k = 0; k < DIRECTIONS; k += 1) {
      const reach = x * COSINES[k]! + y * SINES[k]!;
      if (reach > this.values[k * 3]!) {
        this.values[k * 3] = reach;
        this.values[k * 3 + 1] = x;
        this.values[k * 3 + 2] = y;
        this.changed = true;
      }
    }
  }

  /** Takes in the supports found elsewhere. */
  merge(other: Supports): void {
    for (let k = 0; k < DIRECTIONS; k += 1)
      if (other[k * 3]! > this.values[k * 3]!) this.values.set(other.subarray(k * 3, k * 3 + 3), k * 3);
  }

  /** Finds anew the box in which no point can add anything; worth a call per block. */
  settle(): void {
    if (!Number.isFinite(this.values[0]!)) return;
    const east = this.values[1]!;
    const west = this.values[(DIRECTIONS / 2) * 3 + 1]!;
    const north = this.values[(DIRECTIONS / 4) * 3 + 2]!;
    const south = this.values[((DIRECTIONS * 3) / 4) * 3 + 2]!;
    const x = (west + east) / 2;
    const y = (south + north) / 2;
    let scale = 1;
    for (let k = 0; k < DIRECTIONS; k += 1) {
      const room = this.values[k * 3]! - (x * COSINES[k]! + y * SINES[k]!);
      const extent =
        (Math.abs(COSINES[k]!) * (east - west)) / 2 + (Math.abs(SINES[k]!) * (north - south)) / 2;
      if (extent > 0) scale = Math.min(scale, room / extent);
    }
    // A hair inside, so that rounding cannot hide a point on the edge.
    const half = Math.max(0, scale - 1e-9) / 2;
    this.#west = x - half * (east - west);
    this.#east = x + half * (east - west);
    this.#south = y - half * (north - south);
    this.#north = y + half * (north - south);
  }

  /** Degrees from west to east; negative infinity when there are no points. */
  get width(): number {
    return this.values[1]! - this.values[(DIRECTIONS / 2) * 3 + 1]!;
  }

  /** Closed ring of the supports, anticlockwise; null when they do not span an area. */
  ring(): [number, number][] | null {
    const ring: [number, number][] = [];
    for (let k = 0; k < DIRECTIONS; k += 1) {
      if (!Number.isFinite(this.values[k * 3]!)) return null;
      const point: [number, number] = [this.values[k * 3 + 1]!, this.values[k * 3 + 2]!];
      const last = ring.at(-1);
      if (last === undefined || last[0] !== point[0] || last[1] !== point[1]) ring.push(point);
    }
    const first = ring[0]!;
    const last = ring.at(-1)!;
    if (ring.length > 1 && first[0] === last[0] && first[1] === last[1]) ring.pop();
    if (ring.length < 3) return null;
    return [...ring, [first[0], first[1]]];
  }
}
