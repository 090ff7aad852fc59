/** Many numbers at 8 bytes each, with a look-up; fastest when they come in rising order, as in most extracts. */
export class IdList {
  #ids = new Float64Array(1024);
  #length = 0;
  #sorted = true;

  add(id: number): void {
    if (this.#length === this.#ids.length) {
      const longer = new Float64Array(this.#length * 2);
      longer.set(this.#ids);
      this.#ids = longer;
    }
    if (this.#length > 0 && this.#ids[this.#length - 1]! > id) this.#sorted = false;
    this.#ids[this.#length] = id;
    this.#length += 1;
  }

  has(id: number): boolean {
    if (!this.#sorted) {
      this.#ids.subarray(0, this.#length).sort();
      this.#sorted = true;
    }
    let low = 0;
    let high = this.#length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#ids[middle]! < id) low = middle + 1;
      else high = middle;
    }
    return low < this.#length && this.#ids[low] === id;
  }
}
