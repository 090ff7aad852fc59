import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { copyFile, open, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Bbox } from '../../contract/common.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import { sweepChunks } from '../../io/overpass/chunk-folder.ts';
import { FolderLock } from '../libsql/folder-lock.ts';
import type { BoxedRow, ExtractTable, StoredExtract } from '../port/port.ts';
import { answersFolder } from './answers-folder.ts';
import { asDiskProblem } from './disk-problem.ts';
import type { Ingested } from './ingest.ts';

/** Rows in one write: another process waits no longer than that takes (some 20 ms). Ours. */
const BATCH = 200;

/** A file to be taken in. */
export interface ExtractFile {
  path: string;
  fileName: string;
  /** Unlike all others; the file's name where it is left out. */
  name?: string | undefined;
  /** Whether the file itself may be taken, else it is copied. */
  isOurs: boolean;
}

/** Told how many of the rows of an extract are written down. */
export type OnRows = (done: number, total: number) => void;

interface ShelfOptions {
  table: ExtractTable;
  folder: string;
  /** Whether other processes may use the folder too. */
  isShared: boolean;
}

/** Extracts that are kept: their files in a folder, what is found in them in the store. */
export class ExtractShelf {
  readonly #table: ExtractTable;
  readonly #folder: string;
  readonly #isShared: boolean;
  /** The last of those at work: one after the other. */
  #last: Promise<unknown> = Promise.resolve();

  constructor({ table, folder, isShared }: ShelfOptions) {
    this.#table = table;
    this.#folder = folder;
    this.#isShared = isShared;
  }

  /** By name. */
  all(): StoredExtract[] {
    return this.#table.all().sort((a, b) => (a.name < b.name ? -1 : Number(a.name > b.name)));
  }

  get(id: string): StoredExtract | null {
    return this.#table.all().find((extract) => extract.id === id) ?? null;
  }

  named(name: string): StoredExtract | null {
    return this.#table.all().find((extract) => extract.name === name) ?? null;
  }

  /** The file of an extract. */
  pathOf(id: string): string {
    return join(this.#filesFolder, id);
  }

  /** A place for a file that comes in, on the disk of the others. */
  incoming(): string {
    mkdirSync(this.#incomingFolder, { recursive: true });
    return join(this.#incomingFolder, randomUUID());
  }

  /** Where answers of an Overpass server wait until they are whole. */
  get answersFolder(): string {
    return answersFolder(this.#folder);
  }

  /** Throws InputProblem `name-taken` where an extract has the name. */
  requireFree(name: string): void {
    if (this.named(name.trim()) !== null) throw nameTaken(name.trim());
  }

  get #filesFolder(): string {
    return join(this.#folder, 'extracts');
  }

  get #incomingFolder(): string {
    return join(this.#folder, 'incoming');
  }

  /**
   * Takes a file in, hidden until it is whole; a file that is kept already gives what is kept of it. Throws InputProblem:
   * `name-taken`, what `read` refuses, and where the folder cannot be written.
   */
  add(
    file: ExtractFile,
    read: (path: string) => Promise<Outcome<Ingested>>,
    onRows: OnRows = () => {},
  ): Promise<StoredExtract> {
    return this.#alone(async () => {
      const { hash, bytes } = await digestOf(file.path);
      const same = this.#table.all().find((extract) => extract.hash === hash);
      if (same !== undefined) return same;
      const name = this.#freeName(file);
      const id = randomUUID();
      this.#table.begin(id);
      try {
        await this.#takeFile(file, id);
        const ingested = await read(this.pathOf(id));
        if (!ingested.ok) throw new InputProblem(ingested.problem);
        const { facts, points, ground } = ingested.value;
        const total = points.length + ground.length;
        await this.#addRows(points, (rows, done) => {
          this.#table.addPoints(id, rows);
          onRows(done, total);
        });
        await this.#addRows(ground, (rows, done) => {
          this.#table.addGround(id, rows);
          onRows(points.length + done, total);
        });
        const addedAt = new Date().toISOString();
        const extract = { id, name, fileName: file.fileName, hash, bytes, addedAt, ...facts };
        this.#table.show(extract);
        return extract;
      } catch (error) {
        await this.#drop(id);
        throw asDiskProblem(error);
      }
    });
  }

  /** Whether there was one. */
  remove(id: string): Promise<boolean> {
    return this.#alone(async () => {
      if (this.get(id) === null) return false;
      this.#table.hide(id);
      await this.#drop(id);
      return true;
    });
  }

  /**
   * Takes away what a process left behind that ended in the middle, of files that come in those so old (ms); does nothing
   * while another process is at it.
   */
  sweep(incomingAgeMs = 0): Promise<void> {
    const turn = this.#last.then(async () => {
      const lock = this.#isShared ? FolderLock.take(this.#folder, 'extracts') : null;
      if (this.#isShared && lock === null) return;
      try {
        await this.#sweepAlone(Date.now() - incomingAgeMs);
      } finally {
        lock?.release();
      }
    });
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #sweepAlone(incomingBeforeMs: number): Promise<void> {
    for (const id of this.#table.hidden()) await this.#drop(id);
    const whole = new Set(this.#table.all().map(({ id }) => id));
    for (const name of namesIn(this.#filesFolder))
      if (!whole.has(name)) rmSync(this.pathOf(name), { force: true });
    for (const name of namesIn(this.#incomingFolder)) {
      const path = join(this.#incomingFolder, name);
      const { mtimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { mtimeMs: 0 };
      if (mtimeMs <= incomingBeforeMs) rmSync(path, { force: true });
    }
    await sweepChunks(this.answersFolder);
  }

  /** The JSON of points that touch one of the boxes. */
  pointsIn(id: string, boxes: readonly Bbox[]): string[] {
    return this.#table.pointsIn(id, boxes);
  }

  #freeName({ name, fileName }: ExtractFile): string {
    const wanted = name?.trim() ?? '';
    if (wanted !== '') {
      this.requireFree(wanted);
      return wanted;
    }
    for (let number = 1; ; number += 1) {
      const free = number === 1 ? fileName : `${fileName} (${number})`;
      if (this.named(free) === null) return free;
    }
  }

  async #takeFile({ path, isOurs }: ExtractFile, id: string): Promise<void> {
    mkdirSync(this.#filesFolder, { recursive: true });
    const to = this.pathOf(id);
    if (isOurs) await rename(path, to);
    else await copyFile(path, to);
    const file = await open(to, 'r+');
    try {
      await file.sync();
    } finally {
      await file.close();
    }
  }

  async #addRows(
    rows: readonly BoxedRow[],
    add: (batch: readonly BoxedRow[], done: number) => void,
  ): Promise<void> {
    for (let from = 0; from < rows.length; from += BATCH) {
      add(rows.slice(from, from + BATCH), Math.min(rows.length, from + BATCH));
      // Whoever waits for this thread comes in between.
      await setImmediate();
    }
  }

  async #drop(id: string): Promise<void> {
    rmSync(this.pathOf(id), { force: true });
    while (this.#table.dropSome(id, BATCH)) await setImmediate();
  }

  /** Does work while no other of this process, and none of another, is at such work. */
  #alone<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(async () => {
      const lock = this.#isShared ? FolderLock.take(this.#folder, 'extracts') : null;
      if (this.#isShared && lock === null) throw atWork();
      try {
        return await work();
      } finally {
        lock?.release();
      }
    });
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}

const nameTaken = (name: string) =>
  new InputProblem({
    code: 'name-taken',
    place: 'name',
    came: `the name "${name}", which another kept extract has`,
    expected: 'a name of its own',
    remedy: 'Choose another name, or remove that extract first',
  });

const atWork = () =>
  new InputProblem({
    code: 'store-unusable',
    came: 'an extract while another process takes one in or away',
    expected: 'one at a time',
    remedy: 'Wait until that is done, then do it again',
  });

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** What tells one content from another, and how much it is. */
async function digestOf(path: string): Promise<{ hash: string; bytes: number }> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const chunk of createReadStream(path) as AsyncIterable<Buffer>) {
    hash.update(chunk);
    bytes += chunk.length;
  }
  return { hash: hash.digest('hex'), bytes };
}
