import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

export const ASSETS = fileURLToPath(new URL('../../web/dist/assets/', import.meta.url));
/** All code of the page, gzipped: the map's library is some 430 kB of it (ours). */
export const CODE_BUDGET_KB = 750;

interface PageSizes {
  scripts: number;
  styles: number;
  data: number;
}

/** Kilobytes as sent compressed: code as scripts and styles, and fonts and the world's outline as data. */
export async function pageSizesKb(): Promise<PageSizes> {
  const sizes: PageSizes = { scripts: 0, styles: 0, data: 0 };
  for (const name of await readdir(ASSETS)) {
    const bytes = await readFile(`${ASSETS}${name}`);
    // Fonts (woff2) are compressed as they are.
    const kb = (name.endsWith('.woff2') ? bytes : gzipSync(bytes, { level: 9 })).length / 1000;
    if (/\.m?js$/.test(name)) sizes.scripts += kb;
    else if (name.endsWith('.css')) sizes.styles += kb;
    else sizes.data += kb;
  }
  return sizes;
}
