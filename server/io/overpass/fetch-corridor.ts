import type { Bbox } from '../../contract/common.ts';
import type { Interpreter } from './ask.ts';
import { askPatiently, letPass, type Patience, refusedBy, type Waiting } from './ask-patiently.ts';
import type { ChunkFolder } from './chunk-folder.ts';
import { halvesOf } from './corridor.ts';
import { overpassQuery } from './query.ts';

/** Between two questions, so that others come in between. Ours; the operators ask for one at a time. */
const PAUSE_MS = 1_000;

/** How a fetch stands. */
export interface FetchState {
  /** Chunks that are here, and in all: more where some had to be halved. */
  done: number;
  chunks: number;
  waiting: Waiting | null;
}

export interface FetchOptions extends Pick<Patience, 'signal' | 'wait'> {
  onState?: (state: FetchState) => void;
}

/** A box whose answer is here. */
export interface FetchedBox {
  box: Bbox;
  path: string;
}

/**
 * Fetches what an interpreter has of some boxes, one after the other, and keeps each answer in a folder: what is there
 * and fresh is not asked for again. A box that is too much at once is asked for in halves. Gives the boxes in order.
 * Throws InputProblem (`overpass-refused`, `overpass-busy`), and what `signal` was called off with.
 */
export async function fetchCorridor(
  interpreter: Interpreter,
  boxes: readonly Bbox[],
  folder: ChunkFolder,
  options: FetchOptions,
): Promise<FetchedBox[]> {
  const { signal, onState } = options;
  const fetched: FetchedBox[] = [];
  const left = [...boxes].reverse();
  let waiting: Waiting | null = null;
  const tell = () => onState?.({ done: fetched.length, chunks: fetched.length + left.length, waiting });
  const asker = new Asker(interpreter, folder, {
    ...options,
    onWaiting: (now) => {
      waiting = now;
      tell();
    },
  });
  tell();
  for (let box = left.at(-1); box !== undefined; box = left.at(-1)) {
    signal.throwIfAborted();
    const halves = await asker.halvesToAsk(box);
    left.pop();
    if (halves === null) fetched.push({ box, path: folder.pathOf(overpassQuery(box)) });
    else left.push(...halves.reverse());
    tell();
  }
  return fetched;
}

/** Puts questions that nobody has answered yet. */
class Asker {
  readonly #interpreter: Interpreter;
  readonly #folder: ChunkFolder;
  readonly #patience: Patience;
  #isFirst = true;

  constructor(interpreter: Interpreter, folder: ChunkFolder, patience: Patience) {
    this.#interpreter = interpreter;
    this.#folder = folder;
    this.#patience = patience;
  }

  /** Sees to it that the answer for a box is in the folder; the halves to ask for where it is too much at once. */
  async halvesToAsk(box: Bbox): Promise<Bbox[] | null> {
    const query = overpassQuery(box);
    const known = await this.#folder.find(query);
    if (known !== null) return 'halved' in known ? halvesOf(box) : null;
    const { signal, wait = letPass } = this.#patience;
    if (!this.#isFirst) await wait(this.#interpreter.pauseMs ?? PAUSE_MS, signal);
    this.#isFirst = false;
    const given = await askPatiently(this.#interpreter, query, this.#patience);
    if (given.outcome === 'whole') {
      await this.#folder.keep(query, { reply: given.reply });
      return null;
    }
    const halves = halvesOf(box);
    if (halves === null) throw refusedBy(this.#interpreter, `of a stretch of 2 km: ${given.text}`);
    await this.#folder.keep(query, { halved: true });
    return halves;
  }
}
