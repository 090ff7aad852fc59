import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Multipart, MultipartFile } from '@fastify/multipart';
import type { NamedFile } from '../../app/ports.ts';
import { InputProblem } from '../../core/input/problem.ts';
import { MAX_YAML_BYTES } from '../../io/yaml-text.ts';
import type { Limits } from '../service/limits.ts';
import { fieldOf, invalid, sourceOf } from './form.ts';

/** The files and texts of a request. */
export interface UploadValues {
  route: NamedFile;
  extracts: NamedFile[];
  rig: string;
  trip: string | null;
  /** Of a trip to be kept: its name, where it is told. */
  name: string | null;
  /** Of a trip to be kept: ids of extracts that are kept already. */
  kept: string[];
}

/** What a request is for: a trip to be kept has a name, takes kept extracts and needs none. */
export type UploadKind = 'analysis' | 'trip';

export const FIELDS: Record<UploadKind, string> = {
  analysis: 'route (one file), extract (one file or more), rig and trip (text or file, trip may be left out)',
  trip: 'route (one file), extract (files) and kept (ids of kept extracts), rig, trip and name (texts; trip and name may be left out)',
};

type TextField = 'rig' | 'trip' | 'name';
const TEXTS: Record<UploadKind, readonly string[]> = {
  analysis: ['rig', 'trip'] satisfies TextField[],
  trip: ['rig', 'trip', 'name'] satisfies TextField[],
};

export const tooLarge = (place: string, limitBytes: number): InputProblem =>
  new InputProblem({
    code: 'too-large',
    place,
    came: `more than ${limitBytes} bytes`,
    expected: `at most ${limitBytes} bytes`,
    remedy: 'Cut the extract to the area of the route',
  });

/** Gathers the parts of an analysis request as they come, files to disk. Its methods throw InputProblem. */
export class UploadParts {
  readonly #folder: string;
  readonly #limits: Limits;
  readonly #extracts: NamedFile[] = [];
  readonly #kind: UploadKind;
  readonly #texts: Record<TextField, string | null> = { rig: null, trip: null, name: null };
  readonly #kept: string[] = [];
  #route: NamedFile | null = null;
  #restBytes: number;

  constructor(folder: string, limits: Limits, kind: UploadKind = 'analysis') {
    this.#kind = kind;
    this.#folder = folder;
    this.#limits = limits;
    this.#restBytes = limits.requestBytes;
  }

  async take(part: Multipart): Promise<void> {
    const name = part.fieldname;
    if (this.#isText(name)) {
      if (this.#texts[name] !== null) throw invalid(name, `a second ${name}`, 'one', `Send one ${name}`);
      this.#texts[name] = await textOf(part);
    } else if (name === 'kept' && this.#kind === 'trip') {
      this.#takeKept(await textOf(part));
    } else if (name === 'route' || name === 'extract') {
      if (part.type !== 'file') throw invalid(name, 'text', 'a file', `Send ${name} as a file`);
      if (name === 'route') await this.#takeRoute(part);
      else await this.#takeExtract(part);
    } else {
      const expected = FIELDS[this.#kind];
      throw invalid(fieldOf(name), 'an unknown field', expected, 'Leave it out or correct its name');
    }
  }

  #isText(name: string): name is TextField {
    return TEXTS[this.#kind].includes(name);
  }

  /** All that came, once it is enough. */
  whole(): UploadValues {
    const { rig, trip, name } = this.#texts;
    const [route, extracts, kept] = [this.#route, this.#extracts, this.#kept];
    const remedy = `Send ${FIELDS[this.#kind]}`;
    if (route === null) throw invalid('route', 'no route', 'a GPX file', remedy);
    if (extracts.length === 0 && this.#kind === 'analysis') {
      throw invalid('extract', 'no extract', 'at least one file of OpenStreetMap data', remedy);
    }
    if (rig === null) throw invalid('rig', 'no rig', 'the vehicle as YAML or JSON', remedy);
    return { route, extracts, rig, trip, name, kept };
  }

  #takeKept(id: string): void {
    this.#refuseMore(this.#kept.length + this.#extracts.length);
    if (!this.#kept.includes(id)) this.#kept.push(id);
  }

  async #takeRoute(part: MultipartFile): Promise<void> {
    if (this.#route !== null) throw invalid('route', 'a second route', 'one', 'Send one route');
    this.#route = await this.#toDisk(part, 'route');
  }

  async #takeExtract(part: MultipartFile): Promise<void> {
    const { length } = this.#extracts;
    this.#refuseMore(length + this.#kept.length);
    this.#extracts.push(await this.#toDisk(part, `extract-${length}`));
  }

  #refuseMore(length: number): void {
    if (length < this.#limits.extracts) return;
    throw invalid('extract', `more than ${length} extracts`, 'fewer', 'Merge some of them into one file');
  }

  async #toDisk(part: MultipartFile, name: string): Promise<NamedFile> {
    const file = { path: join(this.#folder, name), source: sourceOf(part) };
    await pipeline(part.file, this.#countBytes(), createWriteStream(file.path));
    if (part.file.truncated) throw tooLarge(file.source, this.#limits.fileBytes);
    return file;
  }

  #countBytes(): Transform {
    return new Transform({
      transform: (chunk: Buffer, _encoding, done) => {
        this.#restBytes -= chunk.length;
        done(this.#restBytes < 0 ? tooLarge('the request', this.#limits.requestBytes) : null, chunk);
      },
    });
  }
}

async function textOf(part: Multipart): Promise<string> {
  if (part.type === 'field') {
    if (part.valueTruncated) throw tooLarge(part.fieldname, MAX_YAML_BYTES);
    return String(part.value);
  }
  const chunks: Buffer[] = [];
  let bytes = 0;
  for await (const chunk of part.file as AsyncIterable<Buffer>) {
    bytes += chunk.length;
    if (bytes > MAX_YAML_BYTES) throw tooLarge(part.fieldname, MAX_YAML_BYTES);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks).toString('utf8');
}
