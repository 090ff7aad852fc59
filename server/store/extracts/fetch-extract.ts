import { rm } from 'node:fs/promises';
import type { Bbox } from '../../contract/common.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import type { Interpreter } from '../../io/overpass/ask.ts';
import { ChunkFolder } from '../../io/overpass/chunk-folder.ts';
import { type FetchedBox, type FetchOptions, fetchCorridor } from '../../io/overpass/fetch-corridor.ts';
import type { StoredExtract } from '../port/port.ts';
import type { ExtractShelf, OnRows } from './extract-shelf.ts';
import type { Ingested } from './ingest.ts';

/** What is to be asked, and what the answer is to be called. */
export interface CorridorPlan {
  interpreter: Interpreter;
  boxes: readonly Bbox[];
  name: string;
  fileName: string;
}

/** How the heavy steps are done: here, or in a worker. */
export interface CorridorWork extends FetchOptions {
  merge: (fetched: readonly FetchedBox[], to: string) => Promise<Outcome<void>>;
  read: (path: string) => Promise<Outcome<Ingested>>;
  onRows?: OnRows;
}

/**
 * Asks for a corridor, and keeps what came as an extract. What came before a stop or a refusal stays for the next time.
 * Throws InputProblem: `name-taken` before anything is asked, what the interpreter and the reader refuse.
 */
export async function fetchExtract(
  shelf: ExtractShelf,
  { interpreter, boxes, name, fileName }: CorridorPlan,
  { merge, read, onRows, ...options }: CorridorWork,
): Promise<StoredExtract> {
  shelf.requireFree(name);
  const answers = new ChunkFolder(shelf.answersFolder, interpreter.address);
  const fetched = await fetchCorridor(interpreter, boxes, answers, options);
  const path = shelf.incoming();
  try {
    const merged = await merge(fetched, path);
    if (!merged.ok) throw new InputProblem(merged.problem);
    options.signal.throwIfAborted();
    return await shelf.add({ path, fileName, name, isOurs: true }, read, onRows);
  } finally {
    await rm(path, { force: true });
  }
}
