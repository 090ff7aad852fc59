import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { blobEnds } from '../helpers/blob-ends.ts';
import { describeReal, realPath } from '../helpers/real.ts';
import {
  demoFile,
  openPage,
  openTab,
  PHONE,
  plannedFor,
  type Site,
  settled,
  startSite,
  textOf,
  type WatchedPage,
  WIDE,
} from './site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());
beforeEach(async () => {
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
});
afterEach(() => opened?.close());

const dialog = () => page.getByRole('dialog', { name: 'Open a route' });
const choose = async (...paths: string[]) => {
  await dialog().locator('input[type=file]').setInputFiles(paths);
  await dialog().getByRole('list', { name: 'Chosen files' }).waitFor();
};
const workItOut = () => dialog().getByRole('button', { name: 'Work it out' }).click();

/** Drops files on the page as a file manager would. */
async function drop(files: readonly { name: string; bytes: Buffer }[]): Promise<void> {
  const transfer = await page.evaluateHandle(
    (list) => {
      const data = new DataTransfer();
      for (const { name, base64 } of list) {
        const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
        data.items.add(new File([bytes], name));
      }
      return data;
    },
    files.map(({ name, bytes }) => ({ name, base64: bytes.toString('base64') })),
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
}

describe('own files', () => {
  it('of which nobody knows how old they are are asked about, and the day goes into the trip', async () => {
    interface Reply {
      osm3s?: unknown;
      elements: { timestamp?: string }[];
    }
    const { osm3s: _, ...map } = JSON.parse(readFileSync(demoFile('orrimar.overpass.json'), 'utf8')) as Reply;
    for (const element of map.elements) delete element.timestamp;
    await drop([
      ...['route.gpx', 'rig.yaml', 'trip.yaml'].map((name) => ({
        name,
        bytes: readFileSync(demoFile(name)),
      })),
      { name: 'undated.json', bytes: Buffer.from(JSON.stringify(map)) },
    ]);
    await dialog().locator('.chosen .name', { hasText: 'undated.json' }).waitFor();
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
    const question = page.getByRole('heading', { name: 'Of which day is the map undated.json?' });
    await question.waitFor();
    await page.getByLabel('Made or downloaded on').fill('2026-04-01');
    const [request] = await Promise.all([
      page.waitForRequest((each) => each.method() === 'POST' && /\/api\/analyses\/[^/]+$/.test(each.url())),
      page.locator('.questions').getByRole('button', { name: 'Use this' }).first().click(),
    ]);
    const { trip } = request.postDataJSON() as { trip: { extracts?: unknown } };
    expect(trip.extracts).toEqual([{ file: 'undated.json', asOf: '2026-04-01' }]);
    await question.waitFor({ state: 'detached' });
  });

  it('that look cut off tell nothing of what they do not show, until the reader says that they are whole', async () => {
    const whole = readFileSync(demoFile('orrimar.osm.pbf'));
    const bytes = whole.subarray(0, blobEnds(whole).at(-2));
    await drop([
      ...['route.gpx', 'rig.yaml', 'trip.yaml'].map((name) => ({
        name,
        bytes: readFileSync(demoFile(name)),
      })),
      { name: 'cut.osm.pbf', bytes },
    ]);
    await dialog().locator('.chosen .name', { hasText: 'cut.osm.pbf' }).waitFor();
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
    const question = page.getByRole('heading', { name: 'Is the map cut.osm.pbf whole?' });
    await question.waitFor();
    await settled(page);
    // On a phone its parts stand one below the other, none on another.
    await page.setViewportSize(PHONE.viewport);
    const overlaps = await page.locator('.questions form').evaluateAll((forms) =>
      forms.flatMap((form) => {
        const boxes = [...form.children].map((child) => child.getBoundingClientRect());
        return boxes.slice(1).filter(({ top, left }, index) => {
          const before = boxes[index];
          return before !== undefined && top < before.bottom && left < before.right;
        });
      }),
    );
    expect(overlaps).toEqual([]);
    await page.setViewportSize(WIDE.viewport);
    const before = await textOf(page.locator('.answer').first());
    const [response] = await Promise.all([
      page.waitForResponse(
        (each) => each.request().method() === 'POST' && /\/api\/analyses\/[^/]+$/.test(each.url()),
      ),
      page.getByRole('button', { name: 'It is whole' }).click(),
    ]);
    const { analysis } = (await response.json()) as AnalysisReply;
    expect(analysis.trip.extracts).toEqual([{ file: 'cut.osm.pbf', whole: true }]);
    expect(analysis.water.cover).not.toEqual([]);
    await question.waitFor({ state: 'detached' });
    await expect.poll(() => textOf(page.locator('.answer').first())).not.toBe(before);
  });

  it("dropped on the page are read and give the demo's own figures", async () => {
    await drop(
      ['route.gpx', 'orrimar.overpass.json', 'rig.yaml', 'trip.yaml'].map((name) => ({
        name,
        bytes: readFileSync(demoFile(name)),
      })),
    );
    await dialog().locator('.chosen .name', { hasText: 'orrimar.overpass.json' }).waitFor();
    await plannedFor(page);
    const shown = await textOf(page.locator('.answer').first());
    const [response] = await Promise.all([
      page.waitForResponse((each) => each.url().endsWith('/api/trips')),
      workItOut(),
    ]);
    expect(response.status()).toBe(201);
    await dialog().waitFor({ state: 'detached' });
    await plannedFor(page);
    expect(await textOf(page.locator('.answer').first())).toBe(shown);
    expect(opened.faults).toEqual([]);
  });

  it("ask what the files do not tell, and do not take the demo's answers for the reader's", async () => {
    await page.getByRole('button', { name: 'Open a route' }).click();
    await choose(demoFile('route.gpx'), demoFile('orrimar.osm.pbf'));
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: 'What is aboard at the start?' }).waitFor();
    const onward = page.getByRole('heading', { name: /How far is it from the end/ });
    await onward.waitFor();
    await page.getByRole('button', { name: 'It is right there' }).click();
    await onward.waitFor({ state: 'detached' });
    await settled(page);
    await openTab(page, 'Settings');
    await expect
      .poll(() => page.getByRole('textbox', { name: 'From the end to the next supply' }).inputValue())
      .toBe('0');
  });

  it('that are broken are refused in words, and nothing chosen or shown is lost', async () => {
    await plannedFor(page);
    const before = await textOf(page.locator('.answer').first());
    const whole = readFileSync(demoFile('route.gpx'));
    await drop([
      { name: 'cut-off.gpx', bytes: whole.subarray(0, whole.length / 2) },
      { name: 'orrimar.osm.pbf', bytes: readFileSync(demoFile('orrimar.osm.pbf')) },
    ]);
    await dialog().locator('.chosen .name', { hasText: 'cut-off.gpx' }).waitFor();
    await workItOut();
    const alert = dialog().getByRole('alert');
    await alert.waitFor();
    await expect.poll(() => textOf(alert)).toContain('cut-off.gpx');
    expect(await dialog().getByRole('listitem').count()).toBe(2);
    expect(await textOf(page.locator('.answer').first())).toBe(before);

    // Put right in place: the broken one out, the whole one in.
    await dialog().getByRole('button', { name: 'Remove cut-off.gpx' }).click();
    await choose(demoFile('route.gpx'));
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
  });

  it('without an extract or a route are not sent, and what is missing is said', async () => {
    await page.getByRole('button', { name: 'Open a route' }).click();
    await choose(demoFile('route.gpx'));
    await workItOut();
    await expect.poll(() => textOf(dialog().getByRole('alert'))).toContain('No map extract');
    await page.keyboard.press('Escape');
    await dialog().waitFor({ state: 'detached' });
    expect(opened.faults).toEqual([]);
  });
});

describe('a slow or forgetful server', () => {
  it('can be left waiting: the upload is called off and nothing chosen is lost', async () => {
    await page.route('**/api/trips', () => {
      // Never answered.
    });
    await page.getByRole('button', { name: 'Open a route' }).click();
    await choose(demoFile('route.gpx'), demoFile('orrimar.osm.pbf'));
    await workItOut();
    await dialog().getByRole('progressbar').waitFor();
    await dialog().getByRole('button', { name: 'Call it off' }).click();
    await dialog().getByRole('progressbar').waitFor({ state: 'detached' });
    expect(await dialog().getByRole('listitem').count()).toBe(2);
    expect(await dialog().getByRole('alert').count()).toBe(0);

    await page.unroute('**/api/trips');
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
  });

  it('that no longer has the route gets the files once more, with the edit', async () => {
    await page.getByRole('button', { name: 'Open a route' }).click();
    await choose(...['route.gpx', 'orrimar.osm.pbf', 'rig.yaml', 'trip.yaml'].map(demoFile));
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
    const id = new URL(page.url()).searchParams.get('trip');
    await page.route(`**/api/analyses/${id}`, (route) =>
      route.fulfill({
        status: 404,
        contentType: 'application/problem+json',
        body: JSON.stringify({ code: 'not-found', title: 'Not found', detail: 'gone', status: 404 }),
      }),
    );
    await openTab(page, 'Rig');
    await page.getByRole('textbox', { name: 'Holds', exact: true }).first().fill('400');
    await expect.poll(() => textOf(page.locator('.answer').first())).toContain('Enough all the way');
    await settled(page);
    expect(await page.getByRole('alert').count()).toBe(0);
  });
});

describeReal('a real route with many supplies', () => {
  it('opens, and its long tables are leafed', async () => {
    await page.getByRole('button', { name: 'Open a route' }).click();
    await choose(
      realPath('routes/swiss-grand-tour.gpx'),
      realPath('extracts/switzerland-fuel-2026.overpass.json'),
    );
    await workItOut();
    await dialog().waitFor({ state: 'detached' });
    const table = page.getByRole('table', { name: 'Fuel: diesel' });
    // Opened on what matters, with a way to all of it.
    await expect
      .poll(() => textOf(page.locator('.data-table .rest').first()))
      .toMatch(/^and [\d,]+ more, all enough$/);
    expect(await table.locator('tbody tr').count()).toBeLessThan(30);
    // What is saved is all of it, whatever is shown.
    const all = page.getByRole('button', { name: /^All [\d,]+$/ }).first();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV: Fuel: diesel' }).click(),
    ]);
    const lines = (await readFile(await download.path(), 'utf8')).trim().split('\r\n');
    expect(lines.length - 1).toBe(Number((await textOf(all)).replace(/\D/g, '')));
    await all.click();
    await expect.poll(() => table.locator('tbody tr').count()).toBe(60);
    expect(Number(await table.getAttribute('aria-rowcount'))).toBeGreaterThan(400);
    await page.getByRole('button', { name: 'Next' }).first().click();
    await expect.poll(() => textOf(page.locator('.pages').first())).toContain('61 to 120');
    expect(opened.faults).toEqual([]);
  });
});
