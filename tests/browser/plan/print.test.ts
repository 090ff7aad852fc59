import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { UNIT_PRESETS, unitsText } from '../../../server/words/parts/reader-units.ts';
import { readPdf } from '../../app/sheet/pdf/read-pdf.ts';
import {
  openPage,
  openTab,
  PANEL_NAMES,
  plannedFor,
  type Site,
  startSite,
  type WatchedPage,
  WIDE,
} from '../site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
  await plannedFor(page);
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

/** What only a hand on a screen can use, and is not hidden; heads of tables that sort are words on paper. */
const USABLE = 'input, select, textarea, button:not(table button), .tab-list, .within-group, dialog';

describe('the page on paper', () => {
  it.each(PANEL_NAMES)('%s has no form fields and no page that is half empty', async (name) => {
    await page.emulateMedia({ media: null });
    await openTab(page, name);
    await page.emulateMedia({ media: 'print' });
    const usable = await page
      .locator(USABLE)
      .evaluateAll((all) =>
        all.filter((each) => each.checkVisibility()).map((each) => each.outerHTML.slice(0, 80)),
      );
    expect(usable).toEqual([]);
    const pages = await readPdf(await page.pdf({ format: 'A4' }));
    expect(pages[0]?.text).toContain('Holds with the plan');
    for (const { lowestPt, heightPt } of pages.slice(0, -1)) expect(lowestPt).toBeLessThan(heightPt / 3);
  });
});

/** Runs in the page: a frame's printer is a mark on the page. */
function countPrints(): void {
  const count = ({ target }: Event) => {
    if (target instanceof HTMLIFrameElement && target.contentWindow !== null)
      target.contentWindow.print = () => {
        const { dataset } = document.documentElement;
        dataset.prints = String(Number(dataset.prints ?? 0) + 1);
      };
  };
  document.addEventListener('load', count, { capture: true });
}

describe('the sheet', () => {
  it('is made for the trip on the screen and handed to the printer', async () => {
    await page.emulateMedia({ media: null });
    await openTab(page, 'Carry');
    await page.evaluate(countPrints);
    const asked = page.waitForRequest((request) => request.url().includes('/sheet?'));
    await page.getByRole('button', { name: 'Print the sheet' }).click();
    const { rig, trip } = site.demo.analysis;
    const request = await asked;
    expect(request.postDataJSON()).toEqual({ rig, trip });
    const { searchParams } = new URL(request.url());
    expect(Object.fromEntries(searchParams)).toEqual({ paper: 'a4', units: unitsText(UNIT_PRESETS.metric) });
    await page.locator('iframe.printed-page').waitFor({ state: 'attached' });
    const sheet = page.frameLocator('iframe.printed-page');
    await sheet.locator('h1').waitFor({ state: 'attached' });
    expect(await sheet.locator('h1').textContent()).toBe('With this plan the reserve is kept all the way.');
    await page.waitForFunction(() => document.documentElement.dataset.prints === '1');
    // Its styles hold in the page as well, by the page's own policy.
    const weight = await sheet.locator('h1').evaluate((head) => getComputedStyle(head).fontWeight);
    expect(weight).toBe('800');
    expect(opened.faults).toEqual([]);
  });

  it('prints on four pages and one for somebody at home', async () => {
    const { rig, trip } = site.demo.said;
    const answer = await fetch(`${site.origin}/api/analyses/demo/sheet`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ rig, trip }),
    });
    const paper = await site.browser.newPage();
    await paper.setContent(await answer.text());
    const pages = await readPdf(await paper.pdf({ preferCSSPageSize: true }));
    await paper.close();
    expect(pages.length).toBeLessThanOrEqual(5);
    expect(pages.at(-1)?.text).toContain('For somebody at home');
    expect(pages[0]?.text).toContain('back before 566');
    for (const { reachesPt, widthPt } of pages) expect(reachesPt).toBeLessThan(widthPt - 30);
  });
});
