import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { positionAt } from '../../../server/core/route/passings/locate.ts';
import { demoPack } from '../../app/export/packs.ts';
import { STATE_MS } from '../../helpers/patience.ts';
import { PHONE, type Site, seriousAsItIs, startSite } from '../site.ts';

let site: Site;
let folder = '';
let address = '';
beforeAll(async () => {
  site = await startSite();
  const { rig, trip } = site.demo.analysis;
  const answer = await fetch(`${site.origin}/api/analyses/demo/files/html`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip }),
  });
  expect(answer.status).toBe(200);
  folder = await mkdtemp(join(tmpdir(), 'take-along-'));
  const file = join(folder, 'drystage.html');
  await writeFile(file, await answer.text());
  address = pathToFileURL(file).href;
});
afterAll(async () => {
  await site?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The file, opened from the disk of a telephone without a network; what must not happen is written down. */
async function openFile(options: BrowserContextOptions = {}) {
  const context = await site.browser.newContext({ ...PHONE, colorScheme: 'dark', offline: true, ...options });
  context.setDefaultTimeout(STATE_MS);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    if (request.url() !== address) faults.push(`request: ${request.url()}`);
  });
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { context, page, faults };
}

const head = (page: Page) => page.getByRole('heading', { level: 1 });
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

async function goTo(page: Page, km: number): Promise<void> {
  await button(page, /^I am at/).click();
  await page.getByRole('textbox', { name: 'Place along the route' }).fill(String(km));
  await button(page, 'Done').click();
}

/** Reads both as the plan has them there. */
async function readBoth(page: Page): Promise<void> {
  for (const what of ['diesel', 'water']) {
    await button(page, `${what}, aboard`).click();
    await button(page, `L of ${what} aboard`).click();
  }
}

/** Widths that are too much, and targets that are too small for a hand in a moving cab. */
const misfits = (page: Page) =>
  page.evaluate(() => ({
    tooWide: Math.max(0, document.documentElement.scrollWidth - window.innerWidth),
    tooLow: [...document.querySelectorAll('button, summary, input')]
      .map((one) => one.getBoundingClientRect())
      .filter(({ width, height }) => width > 0 && (height < 63.5 || width < 44)).length,
  }));

it('says from the seat whether to go on or back, offline, and keeps what was entered', async () => {
  const { context, page, faults } = await openFile();
  try {
    expect(await head(page).textContent()).toBe('Read the gauges');
    expect(await page.locator('.notice').textContent()).toContain('invented');
    await goTo(page, 437);
    await readBoth(page);
    await expect.poll(() => head(page).textContent()).toBe('Go on');
    expect(await page.locator('.way').allInnerTexts()).toEqual([
      expect.stringMatching(/^Go on: yes\n+Diesel to Mine camp bowser/),
      expect.stringMatching(/^Go back: yes, for 129.km more/),
    ]);

    // 30 litres of water gone: it does not last with the reserve, but back it does.
    await button(page, 'water, aboard').click();
    for (const _ of [1, 2, 3]) await button(page, /^Less: water, Tank .*, in L, 10/).click();
    await expect.poll(() => head(page).textContent()).toBe('Turn back');
    expect(await page.locator('.head').textContent()).toMatch(
      /Water is \d+.L short of the way on with the reserve/,
    );

    await page.reload();
    await expect.poll(() => head(page).textContent()).toBe('Turn back');
    expect(await button(page, /^I am at/).textContent()).toContain('437');

    // A gauge read 63 km ago tells nothing here.
    await goTo(page, 500);
    await expect.poll(() => head(page).textContent()).toBe('Read the gauges');
    expect(await page.locator('.head').textContent()).toContain('Read it again');
    expect(faults).toEqual([]);
  } finally {
    await context.close();
  }
});

it('reckons without a stop that gave nothing, and says where it no longer knows', async () => {
  const { context, page, faults } = await openFile();
  try {
    await goTo(page, 437);
    await readBoth(page);
    await page.getByText('A stop gave nothing?').click();
    await button(page, 'Mine camp tap gave no water').click();
    await expect.poll(() => page.locator('.way').first().textContent()).toContain('Water to Hask Gate tap');
    // No extract tells of water before Hask Gate, where it would run out.
    expect(await head(page).textContent()).toBe('Not known');
    expect(await page.locator('.way').first().textContent()).toContain('no map data tells of supplies');
    await button(page, 'Hask Gate tap gave no water').click();
    await expect
      .poll(() => page.locator('.way').first().textContent())
      .toContain('two supplies running gave nothing');
    expect(await head(page).textContent()).toBe('Not known');
    await button(page, /^Reckoned without water at Hask Gate tap/).click();
    await button(page, /^Reckoned without water at Mine camp tap/).click();
    await expect.poll(() => head(page).textContent()).toBe('Go on');
    expect(faults).toEqual([]);
  } finally {
    await context.close();
  }
});

it('finds its place by a position, and gives no answer off the route', async () => {
  const { route } = await demoPack();
  const there = positionAt(route, 300_000);
  const { context, page, faults } = await openFile({
    permissions: ['geolocation'],
    geolocation: { longitude: there.lon, latitude: there.lat, accuracy: 12 },
  });
  try {
    await button(page, 'Find my place').click();
    await expect.poll(() => button(page, /^I am at/).textContent()).toMatch(/km.(300|299\.9|300\.1)/);
    expect(await button(page, /^I am at/).textContent()).toContain('off the route');
    await context.setGeolocation({ longitude: there.lon, latitude: there.lat + 0.5, accuracy: 12 });
    await button(page, 'Find my place').click();
    await page.getByText('No answer for this place').waitFor();
    expect(await head(page).count()).toBe(0);
    await goTo(page, 310);
    expect(await head(page).textContent()).toBe('Read the gauges');
    expect(faults).toEqual([]);
  } finally {
    await context.close();
  }
});

it('says so where no position is to be had', async () => {
  const { context, page } = await openFile();
  try {
    await button(page, 'Find my place').click();
    await page.getByText(/Enter the place/).waitFor();
  } finally {
    await context.close();
  }
});

it.each([
  ['in the dark', { colorScheme: 'dark' as const }, { colours: false }],
  ['in daylight', { colorScheme: 'light' as const }, { colours: true }],
  ['in red', {}, { colours: true }],
  ['on a narrow telephone', { viewport: { width: 320, height: 640 } }, { colours: false }],
])('axe finds nothing serious %s, and every target is large', async (look, options, by) => {
  const { context, page, faults } = await openFile(options);
  try {
    if (look === 'in red') await button(page, 'Red on black').click();
    await goTo(page, 437);
    await readBoth(page);
    await button(page, 'water, aboard').click();
    await page.getByText('A stop gave nothing?').click();
    await page.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true;
    });
    expect(await misfits(page)).toEqual({ tooWide: 0, tooLow: 0 });
    expect(await seriousAsItIs(page, 'html', by)).toEqual([]);
    for (const _ of [1, 2, 3]) await button(page, /^Less: water, Tank .*, in L, 10/).click();
    await expect.poll(() => head(page).textContent()).toBe('Turn back');
    // The papers below do not change with the answer.
    expect(await seriousAsItIs(page, '.cab', by)).toEqual([]);
    expect(faults).toEqual([]);
  } finally {
    await context.close();
  }
});
