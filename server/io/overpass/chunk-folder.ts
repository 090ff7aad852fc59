import { createHash, randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isObject } from '../osm/json/json-object.ts';
import type { WholeReply } from './judge-reply.ts';

/** A chunk that was fetched lately is not asked for again; ours. Map data changes by the minute, a plan by the week. */
export const FRESH_MS = 7 * 24 * 3_600_000;

/** What is known of one question: its answer, or that it has to be asked in halves. */
export type Chunk = { reply: WholeReply } | { halved: true };

const isReply = (value: unknown): value is WholeReply => isObject(value) && Array.isArray(value.elements);

/** Answers as they came, one file for each question asked of one server, so that a fetch goes on where it was stopped. */
export class ChunkFolder {
  readonly #folder: string;
  readonly #address: string;
  readonly #now: () => number;

  constructor(folder: string, address: URL, now: () => number = Date.now) {
    this.#folder = folder;
    this.#address = address.href;
    this.#now = now;
  }

  /** Where the answer to a question lies. */
  pathOf(query: string): string {
    const hash = createHash('sha256').update(`${this.#address}\n${query}`).digest('hex');
    return join(this.#folder, `${hash}.json`);
  }

  /** What is known of a question since not long ago; null for nothing. */
  async find(query: string): Promise<Chunk | null> {
    if (await this.#isFresh(halvedMark(this.pathOf(query)))) return { halved: true };
    if (!(await this.isAnswered(query))) return null;
    try {
      const { reply } = JSON.parse(await readFile(this.pathOf(query), 'utf8')) as { reply?: unknown };
      return isReply(reply) ? { reply } : null;
    } catch {
      // Cut short by the end of a process.
      return null;
    }
  }

  /** Whether the answer to a question is here, by its file alone. */
  isAnswered(query: string): Promise<boolean> {
    return this.#isFresh(this.pathOf(query));
  }

  async keep(query: string, chunk: Chunk): Promise<void> {
    mkdirSync(this.#folder, { recursive: true });
    const path = this.pathOf(query);
    const fetchedAt = new Date(this.#now()).toISOString();
    await writeWhole('halved' in chunk ? halvedMark(path) : path, JSON.stringify({ fetchedAt, ...chunk }));
  }

  async #isFresh(path: string): Promise<boolean> {
    const file = await stat(path).catch(() => null);
    return file !== null && this.#now() - file.mtimeMs <= FRESH_MS;
  }
}

const halvedMark = (path: string): string => `${path}.halved`;

/** Writes a file that is there whole or not at all. */
async function writeWhole(path: string, text: string): Promise<void> {
  const part = `${path}.${randomUUID()}`;
  try {
    await writeFile(part, text);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Takes away answers that are not fresh any more; does nothing where there is no such folder. */
export async function sweepChunks(folder: string, now: number = Date.now()): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const path = join(folder, name);
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: now }));
    if (now - mtimeMs > FRESH_MS) await rm(path, { force: true });
  }
}
