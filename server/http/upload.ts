import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Multipart, MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import type { NamedFile } from '../app/ports.ts';
import { plain, shortened } from '../app/text/plain.ts';
import { InputProblem } from '../core/input/problem.ts';
import { MAX_YAML_BYTES } from '../io/yaml-text.ts';
import type { Limits } from './limits.ts';

/** The files and texts of an analysis request; the files lie in a folder of their own until `discard`. */
export interface Upload {
  route: NamedFile;
  extracts: NamedFile[];
  rig: string;
  trip: string | null;
  discard: () => Promise<void>;
}

const FIELDS =
  'route (one file), extract (one file or more), rig and trip (text or file, trip may be left out)';

const invalid = (place: string | null, came: string, expected: string, remedy: string) =>
  new InputProblem({ code: 'request-invalid', source: null, place, came, expected, remedy });

const tooLarge = (place: string, limitBytes: number) =>
  new InputProblem({
    code: 'too-large',
    source: null,
    place,
    came: `more than ${limitBytes} bytes`,
    expected: `at most ${limitBytes} bytes`,
    remedy: 'Cut the extract to the area of the route',
  });

/** Takes a multipart request to disk, part by part as it comes in. Throws InputProblem; leaves nothing behind then. */
export async function takeUpload(request: FastifyRequest, limits: Limits): Promise<Upload> {
  if (!request.isMultipart()) {
    const came = request.headers['content-type'] ?? 'no content type';
    throw invalid('content-type', shortened(plain(came), 60), 'multipart/form-data', `Send ${FIELDS}`);
  }
  const length = Number(request.headers['content-length'] ?? 0);
  if (length > limits.requestBytes) throw tooLarge('the request', limits.requestBytes);
  const folder = await mkdtemp(join(tmpdir(), `drystage-${process.pid}-`));
  const discard = () => rm(folder, { recursive: true, force: true });
  try {
    return { ...(await takeParts(request, folder, limits)), discard };
  } catch (error) {
    await discard();
    throw isCutShort(error)
      ? invalid('the form', 'a form that ends too early', 'a whole multipart form', 'Send it again')
      : error;
  }
}

async function takeParts(
  request: FastifyRequest,
  folder: string,
  limits: Limits,
): Promise<Omit<Upload, 'discard'>> {
  const extracts: NamedFile[] = [];
  const texts: { rig: string | null; trip: string | null } = { rig: null, trip: null };
  let route: NamedFile | null = null;
  let restBytes = limits.requestBytes;
  const countBytes = () =>
    new Transform({
      transform(chunk: Buffer, _encoding, done) {
        restBytes -= chunk.length;
        done(restBytes < 0 ? tooLarge('the request', limits.requestBytes) : null, chunk);
      },
    });
  const parts = request.parts({
    limits: { fileSize: limits.fileBytes, files: limits.extracts + 3, fields: 8, fieldSize: MAX_YAML_BYTES },
  });
  for await (const part of parts) {
    const name = part.fieldname;
    if (name === 'rig' || name === 'trip') {
      if (texts[name] !== null) throw invalid(name, `a second ${name}`, 'one', `Send one ${name}`);
      texts[name] = await textOf(part);
      continue;
    }
    if (name !== 'route' && name !== 'extract') {
      throw invalid(
        shortened(plain(name), 40),
        'an unknown field',
        FIELDS,
        'Leave it out or correct its name',
      );
    }
    if (part.type !== 'file') throw invalid(name, 'text', 'a file', `Send ${name} as a file`);
    if (name === 'route' && route !== null) throw invalid(name, 'a second route', 'one', 'Send one route');
    if (name === 'extract' && extracts.length === limits.extracts) {
      throw invalid(
        name,
        `more than ${limits.extracts} extracts`,
        'fewer',
        'Merge some of them into one file',
      );
    }
    const path = join(folder, name === 'route' ? 'route' : `extract-${extracts.length}`);
    const file = { path, source: sourceOf(part) };
    await pipeline(part.file, countBytes(), createWriteStream(path));
    if (part.file.truncated) throw tooLarge(file.source, limits.fileBytes);
    if (name === 'route') route = file;
    else extracts.push(file);
  }
  if (route === null) throw invalid('route', 'no route', 'a GPX file', `Send ${FIELDS}`);
  if (extracts.length === 0) {
    throw invalid('extract', 'no extract', 'at least one file of OpenStreetMap data', `Send ${FIELDS}`);
  }
  if (texts.rig === null) throw invalid('rig', 'no rig', 'the vehicle as YAML or JSON', `Send ${FIELDS}`);
  return { route, extracts, rig: texts.rig, trip: texts.trip };
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

/** The form's parser and streams have no code for a body that ends inside a part. */
function isCutShort(error: unknown): boolean {
  return error instanceof Error && /unexpected end of|premature close|multipart: /i.test(error.message);
}

/** The name that the client gave the file, safe to show; never used as a path. */
function sourceOf(part: MultipartFile): string {
  const name = plain((part.filename ?? '').split(/[/\\]/).at(-1) ?? '');
  return name === '' ? part.fieldname : shortened(name, 120);
}
