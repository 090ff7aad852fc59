import { plain, shortened } from './plain.ts';

/** Work shorter than this shows no progress. */
const QUIET_MS = 700;
const BETWEEN_MS = 200;
const NAME_WIDTH = 40;
const MB = 1_000_000;

/** One line that is written over itself, for long reading before a terminal. */
export class ProgressLine {
  readonly #write: (text: string) => void;
  readonly #now: () => number;
  readonly #startMs: number;
  #lastMs = 0;

  constructor(write: (text: string) => void, now: () => number) {
    this.#write = write;
    this.#now = now;
    this.#startMs = now();
  }

  show(source: string, doneBytes: number, totalBytes: number | null): void {
    const nowMs = this.#now();
    if (nowMs - this.#startMs < QUIET_MS || nowMs - this.#lastMs < BETWEEN_MS) return;
    this.#lastMs = nowMs;
    const done = `${(doneBytes / MB).toFixed(0)} MB`;
    const share =
      totalBytes === null || totalBytes === 0
        ? ''
        : ` of ${(totalBytes / MB).toFixed(0)} MB (${Math.floor((100 * doneBytes) / totalBytes)} %)`;
    this.#write(`\r\x1b[Kreading ${shortened(plain(source), NAME_WIDTH)}: ${done}${share}`);
  }

  /** Takes the line away, if one was shown. */
  clear(): void {
    if (this.#lastMs > 0) this.#write('\r\x1b[K');
  }
}
