import { numberAt } from '../../../../core/lists/at.ts';

/** Directions in which the hull is supported: every 5.625 degrees. Ours: at most 0.5 % of the width is cut off a circle. */
const DIRECTIONS = 64;

/** Each direction: its place in `Supports`, and its unit vector. */
const RAYS = Array.from({ length: DIRECTIONS }, (_, k) => ({
  place: k * 3,
  cosine: Math.cos((2 * Math.PI * k) / DIRECTIONS),
  sine: Math.sin((2 * Math.PI * k) / DIRECTIONS),
}));
const EAST = 0;
const NORTH = (DIRECTIONS / 4) * 3;
const WEST = (DIRECTIONS / 2) * 3;
const SOUTH = ((DIRECTIONS * 3) / 4) * 3;

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
    for (const { place, cosine, sine } of RAYS) {
      const reach = x * cosine + y * sine;
      if (reach > (this.values[place] ?? Number.POSITIVE_INFINITY)) {
        this.values[place] = reach;
        this.values[place + 1] = x;
        this.values[place + 2] = y;
        this.changed = true;
      }
    }
  }

  /** Takes in the supports found elsewhere. */
  merge(other: Supports): void {
    for (const { place } of RAYS)
      if (numberAt(other, place) > numberAt(this.values, place))
        this.values.set(other.subarray(place, place + 3), place);
  }

  #support(place: number) {
    return {
      reach: numberAt(this.values, place),
      x: numberAt(this.values, place + 1),
      y: numberAt(this.values, place + 2),
    };
  }

  /** Finds anew the box in which no point can add anything; worth a call per block. */
  settle(): void {
    const { reach, x: east } = this.#support(EAST);
    if (!Number.isFinite(reach)) return;
    const west = this.#support(WEST).x;
    const north = this.#support(NORTH).y;
    const south = this.#support(SOUTH).y;
    const x = (west + east) / 2;
    const y = (south + north) / 2;
    let scale = 1;
    for (const { place, cosine, sine } of RAYS) {
      const room = numberAt(this.values, place) - (x * cosine + y * sine);
      const extent = (Math.abs(cosine) * (east - west)) / 2 + (Math.abs(sine) * (north - south)) / 2;
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
    return this.#support(EAST).x - this.#support(WEST).x;
  }

  /** Closed ring of the supports, anticlockwise; null when they do not span an area. */
  ring(): [number, number][] | null {
    const ring: [number, number][] = [];
    for (const { place } of RAYS) {
      const { reach, x, y } = this.#support(place);
      if (!Number.isFinite(reach)) return null;
      const last = ring.at(-1);
      if (last === undefined || last[0] !== x || last[1] !== y) ring.push([x, y]);
    }
    const [first] = ring;
    const last = ring.at(-1);
    if (first === undefined || last === undefined) return null;
    if (ring.length > 1 && first[0] === last[0] && first[1] === last[1]) ring.pop();
    if (ring.length < 3) return null;
    return [...ring, [first[0], first[1]]];
  }
}
