import { readdir, readFile } from 'node:fs/promises';
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
  const allowed = /from '(?:\.\.\/)+server\/(?:core\/(?:[\w-]+\/)*[\w-]+|words\/cab)\.ts';$/;
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

it('what the page shares with the server takes nothing but types from elsewhere, and one leaf', async () => {
  // The one rule for signs that nobody sees, which imports nothing itself.
  const leaf = "'../../core/input/unseen.ts';";
  const unseen = await readFile(new URL('../../server/core/input/unseen.ts', import.meta.url), 'utf8');
  expect(unseen).not.toMatch(/^import /m);
  const takers: string[] = [];
  for (const name of await readdir(PARTS)) {
    const text = await readFile(`${PARTS}${name}`, 'utf8');
    for (const [line] of text.matchAll(/^import (?!type )[^;]*from '(?!\.\/)[^']*';/gm)) {
      if (!line.endsWith(leaf)) takers.push(`${name}: ${line}`);
    }
  }
  expect(takers).toEqual([]);
});
