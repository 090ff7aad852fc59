/**
 * Pictures of the page into .shots/: each panel, wide, dark, tablet, phone and printed, of the demo and, where the real
 * files are there, of the Swiss route. Words after the command choose among them by name: "npm run screenshots -- swiss phone rig".
 */
import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { KeptTripReply } from '../../server/contract/kept.ts';
import { buildApp } from '../../server/http/app.ts';
import { TABS, type Tab } from '../../web/state/tabs.ts';
import { removeBrowser, startBrowser, unpackBrowser } from '../helpers/browser.ts';
import { realFolderThere, realPath } from '../helpers/real.ts';

const FOLDER = fileURLToPath(new URL('../../.shots/', import.meta.url));
const RIG = fileURLToPath(new URL('../../fixtures/orrimar/rig.yaml', import.meta.url));

interface Look extends BrowserContextOptions {
  /** As on paper, or all of a page that scrolls. */
  as?: 'print' | 'whole';
  /** With the panels in the map's place. */
  isRoomy?: true;
}

const LOOKS: Record<string, Look> = {
  wide: { viewport: { width: 1440, height: 900 } },
  roomy: { viewport: { width: 1440, height: 900 }, isRoomy: true },
  dark: { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true, as: 'whole' },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, as: 'whole' },
  narrow: { viewport: { width: 320, height: 640 }, hasTouch: true },
  print: { viewport: { width: 720, height: 1000 }, as: 'print' },
};

/** A map that the processor draws is there after so long, ms (as seen). */
const DRAWN_MS = 1_500;
/** A panel whose code is there already, ms. */
const PANEL_MS = 400;

const words = process.argv.slice(2).map((word) => word.toLowerCase());
const isWanted = (name: string): boolean => words.every((word) => name.split('-').includes(word));

/** Opens the page on a route, and waits for its plan and its map. */
async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.locator('.page[data-phase="settled"][data-plan="there"]').waitFor();
  await page.locator('.maplibregl-canvas').waitFor({ state: 'attached' });
  await page.evaluate(() => document.fonts.ready.then(() => {}));
  // A map tells nobody on the page that it is drawn.
  await page.waitForTimeout(DRAWN_MS);
}

/** Brings a panel up, as Back would, and waits until it has what it shows. */
async function bringUp(page: Page, tab: Tab): Promise<void> {
  await page.evaluate((panel) => {
    const address = new URL(location.href);
    address.searchParams.set('panel', panel);
    history.pushState(null, '', address);
    dispatchEvent(new PopStateEvent('popstate'));
  }, tab);
  await page.locator('.tab-panel [aria-busy="true"]').waitFor({ state: 'detached' });
  const opening = page.locator('.tab-panel > .soft', { hasText: /^Opening/ });
  await opening.waitFor({ state: 'detached' });
  await page.waitForTimeout(PANEL_MS);
}

async function takeAll(browser: Browser, route: string, address: string): Promise<void> {
  for (const [look, { as, isRoomy, ...options }] of Object.entries(LOOKS)) {
    const wanted = TABS.filter((tab) => isWanted(`${route}-${look}-${tab.replace('-', '')}`));
    if (wanted.length === 0) continue;
    const context = await browser.newContext(options);
    context.setDefaultTimeout(180_000);
    if (isRoomy) await context.addInitScript(() => localStorage.setItem('drystage-panels', 'wide'));
    const page = await context.newPage();
    await open(page, address);
    for (const tab of wanted) {
      await page.emulateMedia({ media: null });
      await bringUp(page, tab);
      if (as === 'print') await page.emulateMedia({ media: 'print' });
      const path = join(FOLDER, `${route}-${look}-${tab}.png`);
      await page.screenshot({ path, fullPage: as !== undefined });
      process.stdout.write(`${path}\n`);
    }
    await context.close();
  }
}

/** The Swiss route as a kept trip; gives its id. */
async function addSwiss(origin: string): Promise<string> {
  const form = new FormData();
  const add = async (name: string, path: string) =>
    form.append(name, new Blob([await readFile(path)]), path.split('/').at(-1));
  form.append('rig', await readFile(RIG, 'utf8'));
  await add('route', realPath('routes/swiss-grand-tour.gpx'));
  await add('extract', realPath('extracts/switzerland-fuel-2026.overpass.json'));
  const answer = await fetch(`${origin}/api/trips`, { method: 'POST', body: form });
  if (!answer.ok) throw new Error(`The Swiss route does not open: ${await answer.text()}`);
  return ((await answer.json()) as KeptTripReply).id;
}

await mkdir(FOLDER, { recursive: true });
const app = await buildApp();
const unpacked = await unpackBrowser();
const browser = await startBrowser(unpacked);
try {
  const origin = await app.listen({ port: 0, host: '127.0.0.1' });
  await takeAll(browser, 'demo', origin);
  if (realFolderThere && !words.includes('demo'))
    await takeAll(browser, 'swiss', `${origin}/?trip=${await addSwiss(origin)}`);
} finally {
  await browser.close();
  await removeBrowser(unpacked);
  await app.close();
}
