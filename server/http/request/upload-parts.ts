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

/** The files and texts of an analysis request. */
export interface UploadValues {
  route: NamedFile;
  extracts: NamedFile[];
  rig: string;
  trip: string | null;
}

export const FIELDS =
  'route (one file), extract (one file or more), rig and trip (text or file, trip may be left out)';

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
  readonly #texts: { rig: string | null; trip: string | null } = { rig: null, trip: null };
  #route: NamedFile | null = null;
  #restBytes: number;

  constructor(folder: string, limits: Limits) {
    this.#folder = folder;
    this.#limits = limits;
    this.#restBytes = limits.requestBytes;
  }

  async take(part: Multipart): Promise<void> {
    const name = part.fieldname;
    if (name === 'rig' || name === 'trip') {
      if (this.#texts[name] !== null) throw invalid(name, `a second ${name}`, 'one', `Send one ${name}`);
      this.#texts[name] = await textOf(part);
    } else if (name === 'route' || name === 'extract') {
      if (part.type !== 'file') throw invalid(name, 'text', 'a file', `Send ${name} as a file`);
      if (name === 'route') await this.#takeRoute(part);
      else await this.#takeExtract(part);
    } else {
      throw invalid(fieldOf(name), 'an unknown field', FIELDS, 'Leave it out or correct its name');
    }
  }

  /** All that came, once it is enough. */
  whole(): UploadValues {
    const { rig, trip } = this.#texts;
    const [route, extracts] = [this.#route, this.#extracts];
    if (route === null) throw invalid('route', 'no route', 'a GPX file', `Send ${FIELDS}`);
    if (extracts.length === 0) {
      throw invalid('extract', 'no extract', 'at least one file of OpenStreetMap data', `Send ${FIELDS}`);
    }
    if (rig === null) throw invalid('rig', 'no rig', 'the vehicle as YAML or JSON', `Send ${FIELDS}`);
    return { route, extracts, rig, trip };
  }

  async #takeRoute(part: MultipartFile): Promise<void> {
    if (this.#route !== null) throw invalid('route', 'a second route', 'one', 'Send one route');
    this.#route = await this.#toDisk(part, 'route');
  }

  async #takeExtract(part: MultipartFile): Promise<void> {
    const { length } = this.#extracts;
    if (length === this.#limits.extracts) {
      throw invalid('extract', `more than ${length} extracts`, 'fewer', 'Merge some of them into one file');
    }
    this.#extracts.push(await this.#toDisk(part, `extract-${length}`));
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
