import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import type { Bbox } from '../../../server/contract/common.ts';
import type { Problem } from '../../../server/core/input/problem.ts';
import type { RawExtract } from '../../../server/io/osm/extract/raw-extract.ts';
import { readExtract } from '../../../server/io/osm/read-extract.ts';

/** A folder of this test file's own, gone when it is done. */
export function scratchFolder(): (name: string, content: string | Uint8Array) => string {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-osm-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return (name, content) => {
    const path = join(folder, name);
    writeFileSync(path, content);
    return path;
  };
}

/** Reads a file that must be readable. */
export async function extractAt(
  path: string,
  source = 'file',
  ground: Bbox | null = null,
): Promise<RawExtract> {
  const outcome = await readExtract(path, { source, ground });
  if (!outcome.ok) throw new Error(`${outcome.problem.code}: ${outcome.problem.came}`);
  return outcome.value;
}

/** Reads a file that must be refused. */
export async function problemAt(path: string, source = 'file'): Promise<Problem> {
  const outcome = await readExtract(path, { source, ground: null });
  if (outcome.ok) throw new Error(`${source} was read`);
  return outcome.problem;
}

/** An OSM XML document with this inside. */
export const osmXml = (inside: string): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6" generator="test">\n${inside}\n</osm>\n`;

/** A fuel node. */
export const fuelNode = (id: number, lon: number, lat: number, more = ''): string =>
  `<node id="${id}" lon="${lon}" lat="${lat}" ${more}><tag k="amenity" v="fuel"/></node>`;
