import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const WEB = fileURLToPath(new URL('../../web/', import.meta.url));

it('the page takes nothing but types from the server: a value would bring the schemas along', async () => {
  const names = await readdir(WEB, { recursive: true });
  const sources = names.filter((name) => /\.tsx?$/.test(name) && !name.startsWith('dist'));
  const takers: string[] = [];
  for (const name of sources) {
    const text = await readFile(`${WEB}${name}`, 'utf8');
    for (const [line] of text.matchAll(/^import (?!type )[^;]*from '[^']*\/server\/[^']*';/gm)) {
      takers.push(`${name}: ${line}`);
    }
  }
  expect(sources.length).toBeGreaterThan(50);
  expect(takers).toEqual([]);
});
