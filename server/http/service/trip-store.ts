/** Keeps packed trips for re-analysis, the longest unused going first when there are too many or they weigh too much. */
export class TripStore {
  readonly #maxCount: number;
  readonly #maxBytes: number;
  readonly #trips = new Map<string, SharedArrayBuffer>();
  #bytes = 0;

  constructor(maxCount: number, maxBytes: number) {
    this.#maxCount = maxCount;
    this.#maxBytes = maxBytes;
  }

  /** Keeps a trip under a new id. One that alone is over the limit is kept until the next comes. */
  put(id: string, packed: SharedArrayBuffer): void {
    this.#trips.set(id, packed);
    this.#bytes += packed.byteLength;
    for (const [oldest, bytes] of this.#trips) {
      if (this.#trips.size === 1) break;
      if (this.#trips.size <= this.#maxCount && this.#bytes <= this.#maxBytes) break;
      this.#trips.delete(oldest);
      this.#bytes -= bytes.byteLength;
    }
  }

  /** The trip, which counts as used now; null when it is gone or never was. */
  get(id: string): SharedArrayBuffer | null {
    const packed = this.#trips.get(id);
    if (packed === undefined) return null;
    this.#trips.delete(id);
    this.#trips.set(id, packed);
    return packed;
  }

  get count(): number {
    return this.#trips.size;
  }

  get bytes(): number {
    return this.#bytes;
  }
}
