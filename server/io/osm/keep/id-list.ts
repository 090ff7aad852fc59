import { lowerBound } from '../../lists/lower-bound.ts';

/** Many numbers at 8 bytes each, with a look-up; fastest when they come in rising order, as in most extracts. */
export class IdList {
  #ids = new Float64Array(1024);
  #length = 0;
  #sorted = true;
  #greatest = Number.NEGATIVE_INFINITY;

  add(id: number): void {
    if (this.#length === this.#ids.length) {
      const longer = new Float64Array(this.#length * 2);
      longer.set(this.#ids);
      this.#ids = longer;
    }
    if (id < this.#greatest) this.#sorted = false;
    else this.#greatest = id;
    this.#ids[this.#length] = id;
    this.#length += 1;
  }

  has(id: number): boolean {
    if (!this.#sorted) {
      this.#ids.subarray(0, this.#length).sort();
      this.#sorted = true;
    }
    const place = lowerBound(this.#ids, id, this.#length);
    return place < this.#length && this.#ids[place] === id;
  }
}
