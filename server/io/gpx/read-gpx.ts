import { createReadStream, type Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { TextDecoder } from 'node:util';
import { InputProblem } from '../../core/input/problem.ts';
import type { RouteDocument } from '../../core/input/sources.ts';
import { ordinaryFile } from '../files/ordinary-file.ts';
import { decoderFor } from './decode.ts';
import { GpxParser } from './gpx-parser.ts';
import { MAX_GPX_BYTES } from './limits.ts';
import { refuseForeignText, refusePacked } from './refuse-format.ts';

const CHUNK_BYTES = 256 * 1024;

function tooLarge(source: string): InputProblem {
  const limit = `${MAX_GPX_BYTES / 1024 / 1024} MB`;
  return new InputProblem({
    code: 'too-large',
    source,
    came: `a file over ${limit}`,
    expected: `at most ${limit}`,
    remedy: 'Thin the route, or split it',
  });
}

/** The system's error on opening or reading, as a problem of the input. */
function unreadable(error: unknown, source: string): unknown {
  if (!(error instanceof Error) || !('code' in error)) return error;
  if (error.code === 'ENOENT') {
    return new InputProblem({
      code: 'file-missing',
      source,
      came: 'no such file',
      expected: 'a GPX file',
      remedy: 'Check the path and the name',
    });
  }
  return new InputProblem({
    code: 'file-unreadable',
    source,
    came: `a file that cannot be read (${String(error.code)})`,
    expected: 'a readable file',
    remedy: 'Check the path and its permissions',
  });
}

async function statOf(path: string, source: string): Promise<Stats> {
  try {
    return await stat(path);
  } catch (error) {
    throw unreadable(error, source);
  }
}

/** Refuses a folder, and a file that is too large. */
async function checkFile(path: string, source: string): Promise<void> {
  const stats = await statOf(path, source);
  if (stats.isDirectory()) {
    throw new InputProblem({
      code: 'file-unreadable',
      source,
      came: 'a folder',
      expected: 'a GPX file',
      remedy: 'Give the file itself',
    });
  }
  if (!stats.isFile()) await ordinaryFile(path, source);
  if (stats.size > MAX_GPX_BYTES) throw tooLarge(source);
}

/**
 * Reads a GPX file (1.0, 1.1, or without a namespace) as a stream: tracks with their segments, routes, waypoints;
 * `ele` is NaN where the file has none. `source` is the file's name for messages. What is passed over is
 * told in the document's cautions.
 * Throws InputProblem: `file-missing`, `file-unreadable`, `empty-file`, `too-large`, `unknown-format` (compressed),
 * `html-page`, `not-xml`, `xml-broken` (also a file cut off), `xml-entity`, `not-gpx`, `coordinate-out-of-range`
 * (also missing or not a number), `gpx-no-points` (neither points nor waypoints). Throws the signal's reason
 * when aborted.
 */
export async function readGpx(path: string, source: string, signal?: AbortSignal): Promise<RouteDocument> {
  signal?.throwIfAborted();
  await checkFile(path, source);
  try {
    const stream = createReadStream(path, { highWaterMark: CHUNK_BYTES });
    return await readChunks(stream as AsyncIterable<Buffer>, source, signal);
  } catch (error) {
    throw error instanceof InputProblem ? error : unreadable(error, source);
  }
}

/** As readGpx, from a file's bytes. */
export const readGpxBytes = (bytes: Uint8Array, source: string): Promise<RouteDocument> =>
  readChunks(bytes.byteLength === 0 ? [] : [bytes], source);

async function readChunks(
  chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>,
  source: string,
  signal?: AbortSignal,
): Promise<RouteDocument> {
  const parser = new GpxParser(source);
  let decoder: TextDecoder | undefined;
  let bytes = 0;
  for await (const chunk of chunks) {
    signal?.throwIfAborted();
    bytes += chunk.length;
    if (bytes > MAX_GPX_BYTES) throw tooLarge(source);
    if (decoder === undefined) {
      refusePacked(chunk, source);
      decoder = decoderFor(chunk, source);
      const text = decoder.decode(chunk, { stream: true });
      refuseForeignText(text.slice(0, 4096), source);
      parser.write(text);
    } else {
      parser.write(decoder.decode(chunk, { stream: true }));
    }
  }
  if (decoder === undefined) {
    throw new InputProblem({
      code: 'empty-file',
      source,
      came: 'an empty file',
      expected: 'a GPX file',
      remedy: 'Export the route again',
    });
  }
  parser.write(decoder.decode());
  return parser.finish();
}
