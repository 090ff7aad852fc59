import { InputProblem } from '../../../core/input/problem.ts';
import { EXPANDED_BYTES_MAX, EXPANSION_JUDGED_FROM_BYTES, EXPANSION_RATIO_MAX } from './limits.ts';

/** Counts what went in and what came out of the packing, and refuses what expands too far. */
export class ExpansionGuard {
  readonly #source: string;
  #packedBytes = 0;
  #expandedBytes = 0;

  constructor(source: string) {
    this.#source = source;
  }

  takeIn(bytes: number): void {
    this.#packedBytes += bytes;
  }

  giveOut(bytes: number): void {
    this.#expandedBytes += bytes;
    const tooMuch = this.#expandedBytes > EXPANDED_BYTES_MAX;
    const tooSteep =
      this.#expandedBytes > EXPANSION_JUDGED_FROM_BYTES &&
      this.#expandedBytes > this.#packedBytes * EXPANSION_RATIO_MAX;
    if (!tooMuch && !tooSteep) return;
    throw new InputProblem({
      code: 'expands-too-far',
      source: this.#source,
      place: `byte ${this.#packedBytes}`,
      came: `${this.#packedBytes} packed bytes expand to more than ${this.#expandedBytes}`,
      expected: `at most ${EXPANSION_RATIO_MAX} times the packed size and ${EXPANDED_BYTES_MAX} bytes in all`,
      remedy: 'Take a smaller extract, or give it as .osm.pbf',
    });
  }
}
