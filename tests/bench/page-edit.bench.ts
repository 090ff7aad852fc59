import { readFile } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import type { KeptTripReply } from '../../server/contract/kept.ts';
import { buildApp } from '../../server/http/app.ts';
import { removeBrowser, startBrowser, unpackBrowser } from '../helpers/browser.ts';
import { realFolderThere, realPath } from '../helpers/real.ts';
import { type Bench, type BenchRow, median, SETTLE_MS } from './measure.ts';

const RIG = fileURLToPath(new URL('../../fixtures/orrimar/rig.yaml', import.meta.url));
const RUNS = 9;
const WARM_UP = 2;
const DEMO_MS = 150;
const SWISS_MS = 400;

/** Nothing is reckoned any more, no plan either; there may be none. */
const CALM = '.page[data-phase="settled"]:not([data-plan="coming"], [data-plan="behind"])';

/** Opens the page on a route, with the field for the litres of the tank in view. */
async function openRig(browser: Browser, address: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(180_000);
  await page.goto(address);
  await page.locator(CALM).waitFor();
  await page.getByRole('textbox', { name: 'Holds', exact: true }).first().waitFor();
  return page;
}

/** Types litres into the first tank; the time until a frame is painted with the answer to them. */
const editMs = (page: Page, litres: number): Promise<number> =>
  page
    .getByRole('textbox', { name: 'Holds', exact: true })
    .first()
    .evaluate(async (field, typed) => {
      const shown = document.querySelector('.page');
      if (!(field instanceof HTMLInputElement) || shown === null) throw new Error('no field or no page');
      const startMs = performance.now();
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, String(typed));
      field.dispatchEvent(new Event('input', { bubbles: true }));
      // No function with a name in here: what tsx makes of one is not known in the browser.
      for (const isSettled of [false, true])
        while ((shown.getAttribute('data-phase') === 'settled') !== isSettled)
          await new Promise((frame) => requestAnimationFrame(frame));
      await new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted)));
      return performance.now() - startMs;
    }, litres);

/** A text set on an empty page until it is painted: the floor of the browser. */
const bareMs = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const startMs = performance.now();
    document.body.textContent = String(startMs);
    await new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted)));
    return performance.now() - startMs;
  });

async function swissTrip(origin: string): Promise<string> {
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

/** The median of the edits of one route, and of the empty page in turn with them. */
async function rowsOf(browser: Browser, what: string, address: string): Promise<[BenchRow, BenchRow]> {
  const page = await openRig(browser, address);
  const bare = await browser.newPage();
  const ownMs: number[] = [];
  const peerMs: number[] = [];
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    const own = await editMs(page, 200 + run);
    const peer = await bareMs(bare);
    // A plan is searched for after each edit, and is no part of it.
    await page.locator(CALM).waitFor();
    if (run < WARM_UP) continue;
    ownMs.push(own);
    peerMs.push(peer);
  }
  await page.close();
  await bare.close();
  return [
    { what, who: 'drystage', medianMs: median(ownMs), runs: RUNS },
    { what: 'a text set and painted', who: 'empty page', medianMs: median(peerMs), runs: RUNS },
  ];
}

/** From a figure typed on the page to the painted answer, on the demo and, where it is there, on a real route. */
export const bench: Bench = async () => {
  const app = await buildApp();
  const unpacked = await unpackBrowser();
  const browser = await startBrowser(unpacked);
  try {
    const origin = await app.listen({ port: 0, host: '127.0.0.1' });
    await app.inject('/api/demo');
    await setTimeout(SETTLE_MS);
    const demo = await rowsOf(browser, 'edit of the demo', `${origin}/?panel=rig`);
    const swiss = realFolderThere
      ? await rowsOf(
          browser,
          'edit of the Swiss route',
          `${origin}/?panel=rig&trip=${await swissTrip(origin)}`,
        )
      : [];
    return {
      title: 'Edit on the page',
      target: `painted within ${DEMO_MS} ms (demo) and ${SWISS_MS} ms (Swiss route), WebGL in software`,
      met: demo[0].medianMs < DEMO_MS && (swiss[0]?.medianMs ?? 0) < SWISS_MS,
      rows: [...demo, ...swiss],
    };
  } finally {
    await browser.close();
    await removeBrowser(unpacked);
    await app.close();
  }
};
