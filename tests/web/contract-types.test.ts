import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const WEB = fileURLToPath(new URL('../../web/', import.meta.url));
const PARTS = fileURLToPath(new URL('../../server/words/parts/', import.meta.url));

/** How sentences are put together from their parts: the one rule of the server that the page shares. */
const SHARED = /from '(?:\.\.\/)+server\/words\/parts\/[\w-]+\.ts';$/;

it('the page takes nothing but types from the server: a value would bring the schemas along', async () => {
  const names = await readdir(WEB, { recursive: true });
  const sources = names.filter((name) => /\.tsx?$/.test(name) && !name.startsWith('dist'));
  const takers: string[] = [];
  for (const name of sources) {
    const text = await readFile(`${WEB}${name}`, 'utf8');
    for (const [line] of text.matchAll(/^import (?!type )[^;]*from '[^']*\/server\/[^']*';/gm)) {
      if (!SHARED.test(line)) takers.push(`${name}: ${line}`);
    }
  }
  expect(sources.length).toBeGreaterThan(50);
  expect(takers).toEqual([]);
});

it('what the page shares with the server takes nothing but types from elsewhere', async () => {
  const takers: string[] = [];
  for (const name of await readdir(PARTS)) {
    const text = await readFile(`${PARTS}${name}`, 'utf8');
    for (const [line] of text.matchAll(/^import (?!type )[^;]*from '(?!\.\/)[^']*';/gm)) {
      takers.push(`${name}: ${line}`);
    }
  }
  expect(takers).toEqual([]);
});
