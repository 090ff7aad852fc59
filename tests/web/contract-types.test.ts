import { readdir, readFile } from 'node:fs/promises';
import { dirname, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const WEB = fileURLToPath(new URL('../../web/', import.meta.url));
const PARTS = fileURLToPath(new URL('../../server/words/parts/', import.meta.url));

/** How sentences are put together from their parts: the one rule of the server that the page shares. */
const SHARED = /from '(?:\.\.\/)+server\/words\/parts\/[\w-]+\.ts';$/;

it('the page takes nothing but types from the server: a value would bring the schemas along', async () => {
  const names = await readdir(WEB, { recursive: true });
  const sources = names.filter((name) => /\.tsx?$/.test(name) && !/^(dist|cab)\//.test(name));
  expect(sources.length).toBeGreaterThan(50);
  expect(await takersOf(sources, SHARED)).toEqual([]);
});

it('the cab view reckons with core, and takes nothing else of the server but its words', async () => {
  const sources = (await readdir(`${WEB}cab`)).filter((name) => /\.tsx?$/.test(name));
  expect(sources.length).toBeGreaterThan(5);
  const allowed =
    /from '(?:\.\.\/)+server\/(?:core\/(?:[\w-]+\/)*[\w-]+|words\/cab|words\/parts\/[\w-]+)\.ts';$/;
  const ofCab = sources.map((name) => `cab/${name}`);
  expect(await takersOf(ofCab, allowed)).toEqual([]);
});

/** Imports of values from the server that are not allowed, with the file that has them. */
async function takersOf(sources: readonly string[], allowed: RegExp): Promise<string[]> {
  const takers: string[] = [];
  for (const name of sources) {
    const text = await readFile(`${WEB}${name}`, 'utf8');
    for (const [line] of text.matchAll(/^import (?!type )[^;]*from '[^']*\/server\/[^']*';/gm)) {
      if (!allowed.test(line)) takers.push(`${name}: ${line}`);
    }
  }
  return takers;
}

/** Of one rule or one table each, with imports of types only: signs that nobody sees, the safe side, words of units. */
const LEAVES = [
  'core/input/unseen.ts',
  'core/quantity/rounding.ts',
  'words/de/units/unit-words.ts',
  'words/en/units/unit-words.ts',
];

it('what the page shares with the server takes nothing but types from elsewhere, and leaves', async () => {
  const server = fileURLToPath(new URL('../../server/', import.meta.url));
  const valuesIn = async (path: string) => {
    const text = await readFile(path, 'utf8');
    return [...text.matchAll(/^import (?!type )[^;]*from '((?!\.\/)[^']*)';/gm)].map(([, from]) =>
      relative(server, resolve(dirname(path), from ?? '')),
    );
  };
  for (const leaf of LEAVES) expect(await valuesIn(`${server}${leaf}`), leaf).toEqual([]);
  const shared = await Promise.all((await readdir(PARTS)).map((name) => valuesIn(`${PARTS}${name}`)));
  expect([...new Set(shared.flat())].sort()).toEqual(LEAVES);
});
