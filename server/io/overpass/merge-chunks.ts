import { createWriteStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Bbox } from '../../contract/common.ts';
import { InputProblem, type Outcome } from '../../core/input/problem.ts';
import { isObject, type JsonObject } from '../osm/json/json-object.ts';
import type { FetchedBox } from './fetch-corridor.ts';

/** Bytes of all the answers together that are read as one file: JSON takes some ten times its size in memory. Ours. */
const MOST_BYTES = 160_000_000;

const tooDense = (bytes: number): Outcome<never> => ({
  ok: false,
  problem: new InputProblem({
    code: 'too-large',
    came: `answers of more than ${bytes} bytes together`,
    expected: `at most ${MOST_BYTES} bytes`,
    remedy: 'Ask for a narrower corridor, or take an extract (.osm.pbf) of so dense a land',
  }).problem,
});

/**
 * Writes fetched boxes as one file of Overpass JSON: each object once, the boxes as its bounds, and of the dates of the
 * data the oldest. The file says that it was asked for fuel and water, so that it speaks of their absence as well.
 */
export async function mergeChunks(fetched: readonly FetchedBox[], to: string): Promise<Outcome<void>> {
  const elements = new Map<string, JsonObject>();
  const bases: string[] = [];
  let copyright: unknown;
  let bytes = 0;
  for (const { path } of fetched) {
    const text = await readFile(path, 'utf8');
    bytes += text.length;
    if (bytes > MOST_BYTES) return tooDense(MOST_BYTES);
    const { reply } = JSON.parse(text) as { reply: JsonObject & { elements: unknown[] } };
    if (isObject(reply.osm3s)) {
      copyright ??= reply.osm3s.copyright;
      bases.push(String(reply.osm3s.timestamp_osm_base ?? ''));
    } else bases.push('');
    for (const element of reply.elements) if (isObject(element)) take(elements, element);
  }
  // Without a date of every piece there is none of the whole.
  const oldest = bases.includes('') ? undefined : bases.sort()[0];
  const head = {
    version: 0.6,
    osm3s: { timestamp_osm_base: oldest, copyright },
    asked: ['fuel', 'water'],
    bounds: fetched.map(({ box }) => boundsOf(box)),
  };
  await pipeline(Readable.from(written(head, elements.values())), createWriteStream(to, { flags: 'w' }));
  return { ok: true, value: undefined };
}

/** The newer version of an object, or the one of which more is told. */
function take(elements: Map<string, JsonObject>, element: JsonObject): void {
  const key = `${String(element.type)}/${String(element.id)}`;
  const known = elements.get(key);
  if (known === undefined || weightOf(element) > weightOf(known)) elements.set(key, element);
}

/** Bare nodes have neither tags nor version. */
const weightOf = ({ version, tags }: JsonObject): number =>
  2 * (typeof version === 'number' ? version : 0) + Number(tags !== undefined);

const boundsOf = ([minlon, minlat, maxlon, maxlat]: Bbox) => ({ minlat, minlon, maxlat, maxlon });

function* written(head: object, elements: Iterable<JsonObject>): Generator<string> {
  yield `${JSON.stringify(head).slice(0, -1)},"elements":[`;
  let before = '\n';
  for (const element of elements) {
    yield before + JSON.stringify(element);
    before = ',\n';
  }
  yield '\n]}\n';
}
