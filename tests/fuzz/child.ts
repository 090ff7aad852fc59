import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { problemLine } from '../../server/core/input/problem.ts';
import { randomFrom } from '../faults/random.ts';
import { anyChange, FORMATS, type Format } from './formats.ts';
import { cut } from './mutate.ts';

/** What a child tells of each input: before it is read, and what was wrong afterwards. */
export type Word =
  | { at: number; format: string; path: string }
  | { done: number; wrong: string | null; path: string; isNew: boolean };

/** Words of the engine, which no problem may show. */
const ENGINE =
  /Maximum call stack|Cannot (read|set|destructure|convert)|is not (a function|iterable|defined|a constructor)|\[object |Invalid (array|string) length|Unexpected (token|end)|undefined(?! entity)|at position \d/;

/** Of an input. */
const MOST_BYTES = 2_000_000;

/** Inputs that met a new outcome, kept as further seeds. */
const MOST_KEPT = 60;

const [first = '1', step = '1'] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), 'drystage-fuzz-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
const path = join(folder, 'input');
const met = new Set<string>();
const kept = new Map<string, Uint8Array[]>();
const tell = (word: Word): void => {
  if (process.connected) process.send?.(word);
};

process.on('disconnect', () => process.exit(0));
for (let number = Number(first); ; number += Number(step)) {
  const random = randomFrom(number);
  const names = Object.keys(FORMATS);
  const name = names[number % names.length] ?? '';
  const format = FORMATS[name];
  if (format === undefined) throw new Error(`no format ${name}`);
  const seed = random() < 0.15 ? seedOf(format, random, []) : null;
  const bytes = seed === null ? changed(format, name, random) : cut(seed, random);
  // The end of the last line is no part of a file that would be missed.
  const isCut = seed?.subarray(bytes.length).some((byte) => byte > 0x20) === true;
  writeFileSync(path, bytes);
  tell({ at: number, format: name, path });
  const { wrong, key } = await tried(format, bytes, isCut);
  const isNew = !met.has(`${name} ${key}`);
  if (isNew) {
    met.add(`${name} ${key}`);
    kept.set(name, [...(kept.get(name) ?? []), bytes].slice(-MOST_KEPT));
  }
  // The next input takes its place before whoever started this one can look.
  const found = wrong === null ? path : `${path}-${number}`;
  if (wrong !== null) copyFileSync(path, found);
  tell({ done: number, wrong, path: found, isNew });
  // Lets words out.
  await new Promise((resolve) => setImmediate(resolve));
}

function seedOf(format: Format, random: () => number, more: readonly Uint8Array[]): Uint8Array {
  const seeds = [...format.seeds, ...more];
  return seeds[Math.floor(random() * seeds.length)] ?? new Uint8Array(1);
}

function changed(format: Format, name: string, random: () => number): Uint8Array {
  let bytes = seedOf(format, random, kept.get(name) ?? []);
  for (let times = 1 + Math.floor(random() * 3); times > 0 && bytes.length > 0; times -= 1) {
    const next = anyChange(format, bytes, random);
    // What is merely large takes its time.
    if (next.length > MOST_BYTES) break;
    bytes = next;
  }
  return bytes;
}

async function tried(
  format: Format,
  bytes: Uint8Array,
  isCut: boolean,
): Promise<{ wrong: string | null; key: string }> {
  try {
    const { problem, codes } = await format.read(bytes, path);
    const key = [...new Set(codes)].sort().join(' ');
    const line = problem === null ? '' : problemLine(problem);
    // What stands in quotes is the file's own.
    if (ENGINE.test(line.replace(/"[^"]*"/g, '')))
      return { wrong: `words of the engine: ${line.slice(0, 300)}`, key };
    const isWhole = problem === null && !codes.includes('maybe-cut') && !codes.includes('extract-incomplete');
    if (isCut && format.hasEnd && isWhole) return { wrong: `the beginning of a file taken as whole`, key };
    return { wrong: null, key };
  } catch (error) {
    const said = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { wrong: `threw: ${said.slice(0, 600)}`, key: 'threw' };
  }
}
