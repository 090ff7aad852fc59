import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { InputProblem, type Problem } from '../../../server/core/input/problem.ts';
import type { RouteDocument } from '../../../server/core/input/sources.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';

/** Does something with a file that holds this, under the name "trip.gpx", and removes it. */
export async function withFile<T>(
  content: string | Uint8Array,
  body: (path: string) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'drystage-gpx-'));
  try {
    const path = join(folder, 'trip.gpx');
    await writeFile(path, content);
    return await body(path);
  } finally {
    await rm(folder, { recursive: true });
  }
}

export const readText = (content: string | Uint8Array): Promise<RouteDocument> =>
  withFile(content, (path) => readGpx(path, 'trip.gpx'));

/** What a file is refused with; it is an error when it is not. */
export async function problemOf(reading: Promise<unknown>): Promise<Problem> {
  try {
    await reading;
  } catch (error) {
    if (error instanceof InputProblem) return error.problem;
    throw error;
  }
  throw new Error('was not refused');
}

export const refusalOf = (content: string | Uint8Array): Promise<Problem> => problemOf(readText(content));

export const gpx = (
  body: string,
  attributes = 'version="1.1" xmlns="http://www.topografix.com/GPX/1/1"',
): string => `<?xml version="1.0" encoding="UTF-8"?>\n<gpx creator="test" ${attributes}>\n${body}\n</gpx>\n`;

export const track = (...points: string[]): string => gpx(`<trk><trkseg>${points.join('')}</trkseg></trk>`);
