import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../imports/modules.ts';

/** Exceptions to rules of the house: by rule, by file, how many. */
export type Exceptions = Record<string, Record<string, number>>;

export const LIST = join(ROOT, 'tests/house/ratchet/ratchet.json');
const CONFIG = 'tests/house/ratchet/ratchet.biome.json';
/** Wide of the mark: one finding has some 300 bytes. */
const MOST_BYTES = 50_000_000;

export const listedExceptions = (): Exceptions => JSON.parse(readFileSync(LIST, 'utf8')) as Exceptions;

/** Counts the exceptions in server and web by one run of Biome with the rules of the ratchet. */
export function countExceptions(): Exceptions {
  const biome = join(ROOT, 'node_modules/@biomejs/biome/bin/biome');
  const options = ['--reporter=json', '--max-diagnostics=none', `--config-path=${CONFIG}`];
  const { stdout, stderr } = spawnSync(process.execPath, [biome, 'lint', ...options, 'server', 'web'], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: MOST_BYTES,
  });
  if (!stdout.startsWith('{')) throw new Error(`Biome gave no report: ${stderr}`);
  return exceptionsIn(JSON.parse(stdout) as BiomeReport);
}

interface BiomeReport {
  diagnostics: { category: string; location: { path: string } }[];
}

/** The findings of a report by rule ("style/noNonNullAssertion") and file, both in order. */
export function exceptionsIn({ diagnostics }: BiomeReport): Exceptions {
  const counts: Exceptions = {};
  const ordered = diagnostics
    .filter(({ category }) => category.startsWith('lint/'))
    .map(({ category, location }) => ({ rule: category.slice('lint/'.length), file: location.path }))
    .sort((a, b) => compare(a.rule, b.rule) || compare(a.file, b.file));
  for (const { rule, file } of ordered) {
    const byFile = counts[rule] ?? {};
    counts[rule] = byFile;
    byFile[file] = (byFile[file] ?? 0) + 1;
  }
  return counts;
}

const compare = (a: string, b: string) => (a < b ? -1 : Number(a > b));

/** What the list says otherwise than the count: more is to be mended, fewer to be written down. */
export function deviations(list: Exceptions, counts: Exceptions): string[] {
  return pairsOf(list, counts).flatMap(({ rule, file, allowed, found }) => {
    if (found > allowed)
      return [`${file}: ${found} exceptions to ${rule}, ${allowed} listed: mend what is new`];
    if (found < allowed)
      return [`${file}: ${found} exceptions to ${rule}, ${allowed} listed: npm run ratchet`];
    return [];
  });
}

/**
 * The files that have more exceptions than they may. What other files have got rid of goes to files that were not listed,
 * so that code can move; a file that is listed never gets more, and the sum of a rule never rises.
 */
export function raised(list: Exceptions, counts: Exceptions): string[] {
  const pairs = pairsOf(list, counts);
  const spare = new Map<string, number>();
  for (const { rule, allowed, found } of pairs) {
    spare.set(rule, (spare.get(rule) ?? 0) + Math.max(0, allowed - found));
  }
  return pairs.flatMap(({ rule, file, allowed, found }) => {
    if (found <= allowed) return [];
    const left = (spare.get(rule) ?? 0) - found;
    if (allowed > 0 || left < 0) return [`${file}: ${found} exceptions to ${rule}, ${allowed} listed`];
    spare.set(rule, left);
    return [];
  });
}

function pairsOf(list: Exceptions, counts: Exceptions) {
  const rules = new Set([...Object.keys(list), ...Object.keys(counts)]);
  return [...rules].flatMap((rule) => {
    const [allowed, found] = [list[rule] ?? {}, counts[rule] ?? {}];
    const files = new Set([...Object.keys(allowed), ...Object.keys(found)]);
    return [...files].map((file) => ({ rule, file, allowed: allowed[file] ?? 0, found: found[file] ?? 0 }));
  });
}
