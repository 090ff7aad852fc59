import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPage, openTab, PHONE, type Site, seriousIn, startSite, textOf, WIDE } from './site.ts';

let site: Site;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());

describe.each([
  ['light', { ...WIDE, colorScheme: 'light' as const }],
  ['dark', { ...WIDE, colorScheme: 'dark' as const }],
  ['a phone', { ...PHONE, colorScheme: 'light' as const }],
])('in %s', (_name, options) => {
  it('axe finds nothing serious on any panel or in the dialog', async () => {
    const { page, close } = await openPage(site, options);
    try {
      for (const tab of ['Gaps', 'Supplies', 'Rig', 'Days', 'Settings', 'Compare', 'Notes'] as const) {
        await openTab(page, tab);
        if (tab === 'Gaps' || tab === 'Supplies') await page.locator('.row-button').nth(1).click();
        expect(await seriousIn(page), tab).toEqual([]);
      }
      await page.getByRole('button', { name: 'Open a route' }).click();
      await page.getByRole('dialog', { name: 'Open a route' }).waitFor();
      expect(await seriousIn(page), 'dialog').toEqual([]);
    } finally {
      await close();
    }
  });
});

describe('by keyboard alone', () => {
  it('one gets through controls, strip, tabs and tables, and out at the other end', async () => {
    const { page, close } = await openPage(site);
    const focused = () =>
      page.evaluate(() => {
        const element = document.activeElement;
        return element === null || element === document.body
          ? 'the page'
          : `${element.getAttribute('role') ?? element.tagName.toLowerCase()}: ${element.textContent?.trim() || element.getAttribute('aria-label')}`;
      });
    /** Presses Tab until something that matches has the focus; gives what it was. */
    const tabTo = async (wanted: RegExp): Promise<string> => {
      for (let press = 0; press < 120; press += 1) {
        await page.keyboard.press('Tab');
        const now = await focused();
        if (wanted.test(now)) return now;
      }
      throw new Error(`Tab never came to ${wanted}; it ended on ${await focused()}`);
    };
    try {
      await tabTo(/^button: Open a route/);
      await page.keyboard.press('Enter');
      const dialog = page.getByRole('dialog', { name: 'Open a route' });
      await dialog.waitFor();
      await page.keyboard.press('Escape');
      await dialog.waitFor({ state: 'detached' });

      await tabTo(/^slider/);
      await page.keyboard.press('ArrowUp');
      await page.locator('.strip-readout').waitFor();

      await tabTo(/^tab: Answer/);
      await tabTo(/^button: needs/);
      await page.keyboard.press('Enter');
      await expect.poll(() => page.locator('th[aria-sort="ascending"]').count()).toBe(1);
      await tabTo(/^button: .* to /);
      await page.keyboard.press('Enter');
      await page.locator('.gap-details').waitFor();
      await page.keyboard.press('Enter');
      await page.locator('.gap-details').waitFor({ state: 'detached' });

      await page.getByRole('tab', { name: 'Answer' }).focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => textOf(page.getByRole('tab', { selected: true }))).toBe('Supplies');
      await page.keyboard.press('End');
      await expect.poll(() => textOf(page.getByRole('tab', { selected: true }))).toBe('Plan');
      await tabTo(/^button: All cautions/);
    } finally {
      await close();
    }
  });
});
