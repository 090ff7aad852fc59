import { at } from '../../lists/at.ts';

/** A binary heap: gives the first entry by a comparison. J. W. J. Williams, "Algorithm 232", Comm. ACM 7 (1964). */
export class Heap<T> {
  readonly #entries: T[] = [];
  readonly #compare: (a: T, b: T) => number;

  constructor(compare: (a: T, b: T) => number) {
    this.#compare = compare;
  }

  /** Left where it is; undefined where there is none. */
  get first(): T | undefined {
    return this.#entries[0];
  }

  push(entry: T): void {
    const entries = this.#entries;
    let place = entries.length;
    entries.push(entry);
    while (place > 0) {
      const above = (place - 1) >> 1;
      const other = at(entries, above);
      if (this.#compare(other, entry) <= 0) break;
      entries[place] = other;
      place = above;
    }
    entries[place] = entry;
  }

  /** Takes the first entry out. */
  pop(): void {
    const last = this.#entries.pop();
    if (last !== undefined && this.#entries.length > 0) this.#sink(last);
  }

  /** Puts the first entry, which has changed, to where it belongs now. */
  settleFirst(): void {
    const [first] = this.#entries;
    if (first !== undefined) this.#sink(first);
  }

  /** Puts an entry at the top, and down to where it belongs. */
  #sink(entry: T): void {
    const entries = this.#entries;
    let place = 0;
    for (let below = 1; below < entries.length; below = 2 * place + 1) {
      const right = entries[below + 1];
      const left = at(entries, below);
      const isRight = right !== undefined && this.#compare(right, left) < 0;
      const child = isRight ? right : left;
      if (this.#compare(entry, child) <= 0) break;
      entries[place] = child;
      place = isRight ? below + 1 : below;
    }
    entries[place] = entry;
  }
}
