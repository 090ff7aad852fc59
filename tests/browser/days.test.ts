import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  openPage,
  openTab,
  panelButton,
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
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
  await openTab(page, 'Days');
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const days = () => page.locator('.days');
const dayRows = () => days().locator('.data-table tbody tr');
const clickStrip = async (share: number) => {
  const strip = page.locator('.strip');
  const box = await strip.boundingBox();
  if (box === null) throw new Error('the strip is not drawn');
  await strip.click({ position: { x: box.width * 0.3, y: box.height * share } });
};

describe('the days on the page', () => {
  it('are those of the analysis', async () => {
    await expect.poll(() => dayRows().count()).toBe(site.demo.analysis.days.rows.length);
  });

  it('go by the time that passes, and have times of arrival once the hour of departure is told', async () => {
    await expect.poll(() => textOf(days())).toContain('Water goes by the time that passes');
    await expect.poll(() => textOf(days())).not.toContain('Its end is reached between');
    await page.getByLabel("Each day's driving begins at").fill('07:30');
    await settled(page);
    await dayRows().first().locator('.row-button').click();
    await expect
      .poll(() => textOf(days().locator('.day-details')))
      .toContain('Its end is reached between Mon 3 May');
  });

  it('take a camp where the strip is clicked, and stay on this tab', async () => {
    await clickStrip(0.62);
    const mark = await textOf(days().locator('.marked b').first());
    const km = /km ([\d,]+)/.exec(mark)?.[1] ?? '';
    await days().locator('.marked').getByRole('button', { name: 'Camp here' }).click();
    await settled(page);
    await expect.poll(() => textOf(dayRows())).toMatch(new RegExp(`(^|\\s)${km} from [\\d,]+ [\\d.]+ camp`));
    await panelButton(page, 'Days').waitFor();
  });

  it('take a rest day from a row of the table', async () => {
    const before = await dayRows().count();
    const open = days().locator('.day-details');
    if ((await open.count()) === 0) await dayRows().first().locator('.row-button').click();
    await open.getByRole('button', { name: 'A rest day more here' }).click();
    await settled(page);
    // A row more for the day that is not driven; the one that is open counts as two.
    await expect.poll(() => textOf(dayRows().nth(2))).toMatch(/^2 .* 0 /);
    expect(await dayRows().count()).toBeGreaterThanOrEqual(before);
  });

  it('mark a surface between two places chosen by keyboard, drawn along the road and reckoned with', async () => {
    const strip = page.getByRole('slider', { name: 'Along the route' });
    await strip.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    await page.keyboard.press('PageUp');
    await page.keyboard.press('Enter');
    await days().getByRole('combobox', { name: 'Surface of the marked stretch' }).selectOption('sand');
    await days().getByRole('button', { name: 'Mark the surface' }).click();
    await settled(page);
    await expect.poll(() => page.locator('.strip .surface-line').count()).toBeGreaterThan(0);
    await expect.poll(() => textOf(days().locator('.entry summary'))).toMatch(/km 0 to km \d+: sand/);
    await openTab(page, 'Rig');
    const range = page.locator('details.rig-section', { has: page.locator('h4', { hasText: /^Range$/ }) });
    await range.locator('summary').first().click();
    const row = range.getByRole('row', { name: /^sand/ });
    await row.waitFor();
    await expect.poll(() => textOf(row)).toMatch(/× 1\.\d+/);
  });

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});

describe('a browser without WebGL', () => {
  it('is told so, and is spared the code and the land of a map', async () => {
    await page.getByText('this browser gives the page no WebGL').waitFor();
    const fetched = await page.evaluate(() =>
      performance.getEntriesByType('resource').map(({ name }) => name),
    );
    expect(fetched.some((name) => name.includes('/assets/index-'))).toBe(true);
    expect(fetched.filter((name) => /map-handle.*js|countries/.test(name))).toEqual([]);
  });
});
