import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { copyFile, type FileHandle, open, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Bbox } from '../../contract/common.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import { sweepChunks } from '../../io/overpass/chunk-folder.ts';
import type { BoxedRow, FileTable, StoreDriver, StoredExtract } from '../port/port.ts';
import { answersFolder } from './answers-folder.ts';
import { byPlace } from './by-place.ts';
import { asDiskProblem } from './disk-problem.ts';
import type { Ingested } from './ingest.ts';

/** Rows in one write, and rows that go in one: another process waits as long as that takes (some 100 ms on a busy machine). Ours. */
const BATCH = 2000;
const GOING = 200;

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

/** A part of a file in a shared store: some 10 ms of this thread. Ours. */
const PART_BYTES = 1 << 20;

/** Extracts that are kept: their files in a folder, what is found in them in the store. */
export class ExtractShelf {
  readonly #driver: StoreDriver;
  readonly #folder: string;
  /** The last of those at work: one after the other. */
  #last: Promise<unknown> = Promise.resolve();

  constructor(driver: StoreDriver, folder: string) {
    this.#driver = driver;
    this.#folder = folder;
  }

  /** By name. */
  all(): StoredExtract[] {
    return this.#driver.extracts.all().sort((a, b) => (a.name < b.name ? -1 : Number(a.name > b.name)));
  }

  get(id: string): StoredExtract | null {
    return this.#driver.extracts.all().find((extract) => extract.id === id) ?? null;
  }

  named(name: string): StoredExtract | null {
    return this.#driver.extracts.all().find((extract) => extract.name === name) ?? null;
  }

  /** The file of an extract, which is fetched first where another server took it in. */
  async fileOf({ id, bytes }: Pick<StoredExtract, 'id' | 'bytes'>): Promise<string> {
    const path = this.#pathOf(id);
    const { files } = this.#driver;
    if (files === undefined || existsSync(path)) return path;
    const incoming = this.incoming();
    try {
      const written = await fetchParts(files, id, incoming);
      if (written !== bytes) throw new Error(`of the extract ${id} ${written} of ${bytes} bytes are kept`);
      mkdirSync(this.#filesFolder, { recursive: true });
      await rename(incoming, path);
      return path;
    } catch (error) {
      throw asDiskProblem(error);
    } finally {
      rmSync(incoming, { force: true });
    }
  }

  #pathOf(id: string): string {
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
      const same = this.#driver.extracts.all().find((extract) => extract.hash === hash);
      if (same !== undefined) return same;
      const name = this.#freeName(file);
      const id = randomUUID();
      this.#driver.extracts.begin(id);
      try {
        await this.#takeFile(file, id);
        const ingested = await read(this.#pathOf(id));
        if (!ingested.ok) throw new InputProblem(ingested.problem);
        const { facts, points, ground } = ingested.value;
        const total = points.length + ground.length;
        await this.#addRows(byPlace(points), (rows, done) => {
          this.#driver.extracts.addPoints(id, rows);
          onRows(done, total);
        });
        await this.#addRows(byPlace(ground), (rows, done) => {
          this.#driver.extracts.addGround(id, rows);
          onRows(points.length + done, total);
        });
        const addedAt = new Date().toISOString();
        const extract = { id, name, fileName: file.fileName, hash, bytes, addedAt, ...facts };
        this.#driver.extracts.show(extract);
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
      this.#driver.extracts.hide(id);
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
      const claim = this.#driver.claim('extracts');
      if (claim === null) return;
      try {
        await this.#sweepAlone(Date.now() - incomingAgeMs);
      } finally {
        claim.release();
      }
    });
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  async #sweepAlone(incomingBeforeMs: number): Promise<void> {
    const { extracts } = this.#driver;
    for (const id of extracts.hidden()) await this.#drop(id);
    const whole = new Set(extracts.ids?.() ?? extracts.all().map(({ id }) => id));
    for (const name of namesIn(this.#filesFolder))
      if (!whole.has(name)) rmSync(this.#pathOf(name), { force: true });
    for (const name of namesIn(this.#incomingFolder)) {
      const path = join(this.#incomingFolder, name);
      const { mtimeMs } = statSync(path, { throwIfNoEntry: false }) ?? { mtimeMs: 0 };
      if (mtimeMs <= incomingBeforeMs) rmSync(path, { force: true });
    }
    await sweepChunks(this.answersFolder);
  }

  /** The JSON of points that touch one of the boxes. */
  pointsIn(id: string, boxes: readonly Bbox[]): string[] {
    return this.#driver.extracts.pointsIn(id, boxes);
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
    const to = this.#pathOf(id);
    if (isOurs) await rename(path, to);
    else await copyFile(path, to);
    const file = await open(to, 'r+');
    try {
      await file.sync();
      if (this.#driver.files !== undefined) await sendParts(this.#driver.files, id, file);
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
    rmSync(this.#pathOf(id), { force: true });
    while (this.#driver.extracts.dropSome(id, GOING)) await setImmediate();
  }

  /** Does work while no other of this process, and none of another, is at such work. */
  #alone<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(async () => {
      const claim = this.#driver.claim('extracts');
      if (claim === null) throw atWork();
      try {
        return await work();
      } finally {
        claim.release();
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

/** Writes a file's parts to a shared store. */
async function sendParts(files: FileTable, id: string, file: FileHandle): Promise<void> {
  for (let part = 0; ; part += 1) {
    const { buffer, bytesRead } = await file.read(
      new Uint8Array(PART_BYTES),
      0,
      PART_BYTES,
      part * PART_BYTES,
    );
    if (bytesRead === 0) return;
    files.putPart(id, part, buffer.slice(0, bytesRead));
    await setImmediate();
  }
}

/** Writes a file from its parts; how many bytes there were. */
async function fetchParts(files: FileTable, id: string, to: string): Promise<number> {
  const file = await open(to, 'w');
  try {
    let written = 0;
    for (let part = 0; ; part += 1) {
      const bytes = files.part(id, part);
      if (bytes === null) return written;
      await file.writeFile(bytes);
      written += bytes.byteLength;
    }
  } finally {
    await file.close();
  }
}

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
