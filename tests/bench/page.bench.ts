import { readFile } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { buildApp } from '../../server/http/app.ts';
import { removeBrowser, startBrowser, unpackBrowser } from '../helpers/browser.ts';
import { CODE_BUDGET_KB, pageSizesKb } from '../helpers/page-sizes.ts';
import { type Bench, median, SETTLE_MS } from './measure.ts';

const LIBRARY = fileURLToPath(new URL('../../node_modules/maplibre-gl/dist/', import.meta.url));
const DRAWN_TARGET_MS = 2500;
const RUNS = 5;
/** The page's colours of fuel and water, and one of the peer's own. */
const FUEL = [0xc5, 0x6a, 0x10];
const WATER = [0x0f, 0x6b, 0xa8];
const PEER = [0xff, 0x00, 0x80];

/** A page with an empty cache on which what the map draws can be read back. */
async function freshPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, colorScheme: 'light' });
  await context.addInitScript(() => {
    const given = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      kind: string,
      options?: object,
    ) {
      return Reflect.apply(given, this, [kind, { ...options, preserveDrawingBuffer: true }]);
    } as typeof given;
  });
  return context.newPage();
}

/** Resolves once the map's canvas shows at least 200 pixels of each of the colours. */
async function untilDrawn(page: Page, colours: readonly number[][]): Promise<void> {
  await page.waitForFunction(
    (wanted) => {
      const map = document.querySelector<HTMLCanvasElement>('canvas');
      if (map === null || map.width === 0) return false;
      const copy = new OffscreenCanvas(map.width, map.height);
      const context = copy.getContext('2d');
      if (context === null) return false;
      context.drawImage(map, 0, 0);
      const { data } = context.getImageData(0, 0, map.width, map.height);
      const found = wanted.map(() => 0);
      for (let at = 0; at < data.length; at += 4) {
        for (const [index, colour] of wanted.entries()) {
          if (colour.every((channel, place) => Math.abs(channel - data[at + place]!) <= 8))
            found[index]! += 1;
        }
      }
      return found.every((count) => count >= 200);
    },
    [...colours.map((colour) => [...colour])],
    { polling: 100, timeout: 60_000 },
  );
}

const emptyMap = `<!doctype html><div id="map" style="position:fixed;inset:0"></div><script type="module">
import { MapLibreMap, setWorkerUrl } from '/peer/maplibre-gl.mjs';
setWorkerUrl('/peer/maplibre-gl-worker.mjs');
const paint = { 'background-color': 'rgb(${PEER.join(',')})' };
new MapLibreMap({ container: 'map', style: { version: 8, sources: {}, layers: [{ id: 'all', type: 'background', paint }] } });
</script>`;

async function msOf(page: Page, address: string, ready: () => Promise<void>): Promise<number> {
  const startMs = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await ready();
  return performance.now() - startMs;
}

/** The page's code by size, and the time from asking for the page to the drawn demo in the test browser. */
export const bench: Bench = async () => {
  const sizes = await pageSizesKb();
  const codeKb = sizes.scripts + sizes.styles;
  const app = await buildApp();
  const unpacked = await unpackBrowser();
  const browser = await startBrowser(unpacked);
  const drawnMs: number[] = [];
  const peerMs: number[] = [];
  try {
    const origin = await app.listen({ port: 0, host: '127.0.0.1' });
    await app.inject('/api/demo');
    await setTimeout(SETTLE_MS);
    for (let run = 0; run < RUNS; run += 1) {
      const page = await freshPage(browser);
      drawnMs.push(await msOf(page, origin, () => untilDrawn(page, [FUEL, WATER])));
      await page.context().close();

      const peer = await freshPage(browser);
      await peer.route('**/peer/*', async (route) => {
        const name = new URL(route.request().url()).pathname.slice('/peer/'.length);
        if (name === 'page') return route.fulfill({ contentType: 'text/html', body: emptyMap });
        return route.fulfill({ contentType: 'text/javascript', body: await readFile(`${LIBRARY}${name}`) });
      });
      peerMs.push(await msOf(peer, `${origin}/peer/page`, () => untilDrawn(peer, [PEER])));
      await peer.context().close();
    }
  } finally {
    await browser.close();
    await removeBrowser(unpacked);
    await app.close();
  }
  const drawn = median(drawnMs);
  const size =
    `${codeKb.toFixed(0)} kB of code gzipped (scripts ${sizes.scripts.toFixed(0)}, styles ${sizes.styles.toFixed(0)}), ` +
    `${sizes.data.toFixed(0)} kB of data (fonts, of which a page takes one or two; outline of the world)`;
  return {
    title: 'Page',
    target: `under ${CODE_BUDGET_KB} kB of gzipped code; demo drawn within ${DRAWN_TARGET_MS / 1000} s, WebGL in software`,
    met: codeKb < CODE_BUDGET_KB && drawn <= DRAWN_TARGET_MS,
    rows: [
      { what: 'from asking to route drawn', who: 'drystage', medianMs: drawn, runs: RUNS, note: size },
      {
        what: 'from asking to background drawn',
        who: 'empty page with maplibre-gl',
        medianMs: median(peerMs),
        runs: RUNS,
        note: 'the floor of the map library in this browser',
      },
    ],
  };
};
