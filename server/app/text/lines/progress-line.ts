import { PRINTED } from '../../../words/printed.ts';
import { plain, shortened } from './plain.ts';

const WORDS = PRINTED.progress;

/** Work shorter than this shows no progress. */
const QUIET_MS = 700;
const BETWEEN_MS = 200;
const NAME_WIDTH = 40;
const MB = 1_000_000;

/** One line that is written over itself, for long work before a terminal. */
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
    const megabytes = (bytes: number) => WORDS.megabytes((bytes / MB).toFixed(0));
    const done = megabytes(doneBytes);
    const share =
      totalBytes === null || totalBytes === 0
        ? ''
        : WORDS.share(megabytes(totalBytes), Math.floor((100 * doneBytes) / totalBytes));
    this.#say(WORDS.reading(shortened(plain(source), NAME_WIDTH), `${done}${share}`));
  }

  /** Work of which nobody knows how much is left: what it is, and for how long it has been at it. */
  showWork(what: string): void {
    this.#say(WORDS.work(what, Math.floor((this.#now() - this.#startMs) / 1000)));
  }

  #say(text: string): void {
    const nowMs = this.#now();
    if (nowMs - this.#startMs < QUIET_MS || nowMs - this.#lastMs < BETWEEN_MS) return;
    this.#lastMs = nowMs;
    this.#write(`\r\x1b[K${text}`);
  }

  /** Takes the line away, if one was shown. */
  clear(): void {
    if (this.#lastMs > 0) this.#write('\r\x1b[K');
  }
}
