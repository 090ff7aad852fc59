import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { InputProblem, type Problem } from '../../../../server/core/input/problem.ts';
import type { RawElement } from '../../../../server/io/osm/extract/raw-element.ts';
import type { RawExtract, ReadOptions } from '../../../../server/io/osm/extract/raw-extract.ts';
import { readPbf } from '../../../../server/io/osm/pbf/read/read-pbf.ts';

/** Writes the bytes to a file of this run, gives its path to `use`, and removes it. */
export async function withFile<T>(bytes: Uint8Array, use: (path: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-pbf-'));
  try {
    const path = join(folder, 'extract.osm.pbf');
    writeFileSync(path, bytes);
    return await use(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const readFile = (path: string, options: Partial<ReadOptions> = {}, threadsFromBytes?: number) =>
  readPbf({ path }, { source: 'extract.osm.pbf', ground: null, ...options }, threadsFromBytes);

export const readBytes = (bytes: Uint8Array, options: Partial<ReadOptions> = {}, threadsFromBytes?: number) =>
  withFile(bytes, (path) => readFile(path, options, threadsFromBytes));

/** The problem that reading ends with; fails when it ends well or in any other way. */
export async function problemOf(reading: Promise<unknown>): Promise<Problem> {
  try {
    await reading;
  } catch (error) {
    if (error instanceof InputProblem) return error.problem;
    throw error;
  }
  throw new Error('read without a problem');
}

export const problemOfBytes = (bytes: Uint8Array): Promise<Problem> => problemOf(readBytes(bytes));

/** Elements in an order that does not depend on the file's. */
export function inOrder(elements: readonly RawElement[]): RawElement[] {
  const rank = { node: 0, way: 1, relation: 2 };
  return [...elements].sort((a, b) => rank[a.type] - rank[b.type] || a.id - b.id);
}

/** What must be equal for two forms of the same content. */
export const contentOf = (extract: RawExtract) => ({
  elements: inOrder(extract.elements),
  wanted: [...extract.wanted].sort(),
  bounds: extract.bounds,
  shows: extract.shows,
  counts: extract.counts,
  skipped: [...extract.skipped].sort((a, b) => a.id.localeCompare(b.id)),
});
