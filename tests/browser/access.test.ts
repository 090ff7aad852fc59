import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  COARSE,
  openPage,
  openTab,
  PANEL_NAMES,
  type PanelName,
  PHONE,
  type Site,
  seriousIn,
  startSite,
  textOf,
  WIDE,
} from './site.ts';

let site: Site;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());

/** Wider than the window, or than their own place, by so many pixels. */
const tooWide = (page: Page) =>
  page.evaluate(() => {
    const plan = document.querySelector('.plan');
    return {
      page: Math.max(0, document.documentElement.scrollWidth - window.innerWidth),
      plan: plan === null ? 0 : plan.scrollWidth - plan.clientWidth,
    };
  });

/** What is pressed on a phone: nothing of it is less than a thumb wide and high, px. */
const TARGET_PX = 44;

const tooSmall = (page: Page) =>
  page.evaluate((leastPx) => {
    const pressed = 'button, select, input, textarea, summary, a[href]:not(p a, dd a, li a), [role=tab]';
    return [...document.querySelectorAll<HTMLElement>(pressed)]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }))
      .flatMap((each) => {
        const label = each.matches('[type=checkbox], [type=radio]') ? each.closest('label') : null;
        const { width, height } = (label ?? each).getBoundingClientRect();
        // Half a pixel is lost where lengths are rounded.
        const isSmall = width > 0 && Math.min(width, height) < leastPx - 0.5;
        return isSmall ? [`${width} x ${height}: ${(label ?? each).outerHTML.slice(0, 120)}`] : [];
      });
  }, TARGET_PX);

/** Brings up all that a panel shows at first, and one row of it unfolded. */
async function openWhole(page: Page, name: PanelName): Promise<void> {
  await openTab(page, name);
  if (name === 'Gaps' || name === 'Supplies') await page.locator('.row-button').nth(1).click();
  if (name === 'Carry' || name === 'What if') await page.locator('.plan[data-plan="whole"]').waitFor();
  if (name === 'What if') await page.locator('.plan .row-button').first().click();
}

/** What axe finds in light colours, and in dark ones what hangs on colours. */
async function seriousInBoth(page: Page, part: string): Promise<{ light: string[]; dark: string[] }> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await seriousIn(page, part);
  await page.emulateMedia({ colorScheme: 'dark' });
  return { light, dark: await seriousIn(page, part, { colours: true }) };
}

describe.each([
  ['on a wide screen', { ...WIDE, ...COARSE }],
  ['on a phone', { ...PHONE, ...COARSE }],
])('%s', (_name, options) => {
  it('axe finds nothing serious on any panel or in the dialog, light or dark, and nothing is too wide', async () => {
    // What stands on the map is looked at where the map is: by keyboard, below.
    const { page, faults, close } = await openPage(site, options, { withMap: false });
    try {
      for (const name of PANEL_NAMES) {
        await openWhole(page, name);
        // What stands around the panels changes once a plan is looked at.
        const part = name === 'Gaps' || name === 'Carry' ? 'html' : '.panels';
        expect(await seriousInBoth(page, part), name).toEqual({ light: [], dark: [] });
        expect(await tooWide(page), name).toEqual({ page: 0, plan: 0 });
      }
      await page.getByRole('button', { name: 'Open a route' }).click();
      await page.getByRole('dialog', { name: 'Open a route' }).waitFor();
      expect(await seriousInBoth(page, 'html'), 'dialog').toEqual({ light: [], dark: [] });
      expect(faults).toEqual([]);
    } finally {
      await close();
    }
  });
});

describe('on a narrow phone', () => {
  it('nothing is too wide or too small on any panel, all are reached from the foot of the screen, and the map comes up', async () => {
    const { page, faults, close } = await openPage(site, {
      viewport: { width: 320, height: 640 },
      ...COARSE,
    });
    try {
      for (const name of PANEL_NAMES) {
        await openWhole(page, name);
        expect(await tooWide(page), name).toEqual({ page: 0, plan: 0 });
        expect(await tooSmall(page), name).toEqual([]);
      }
      // From the foot of the screen one gets to each panel and back to the strip.
      const isOnScreen = (place: string) =>
        page.locator(place).evaluate((element) => {
          const { top, bottom } = element.getBoundingClientRect();
          return top < window.innerHeight && bottom > 0;
        });
      const beyond = await page.locator('.tab-bar button:visible').evaluateAll((all) =>
        all.flatMap((each) => {
          const { right, bottom } = each.getBoundingClientRect();
          return right > window.innerWidth || bottom > window.innerHeight ? [each.textContent] : [];
        }),
      );
      expect(beyond).toEqual([]);
      await page.getByRole('tab', { name: 'Answer' }).click();
      await expect.poll(() => isOnScreen('.tab-panel')).toBe(true);
      expect(await isOnScreen('.strip')).toBe(false);
      await page.getByRole('button', { name: /^Route/ }).click();
      await expect.poll(() => isOnScreen('.strip')).toBe(true);
      await page.getByRole('radio', { name: 'Map' }).check();
      await page.locator('.maplibregl-canvas').waitFor();
      expect(await seriousIn(page, '.map-place')).toEqual([]);
      expect(faults).toEqual([]);
    } finally {
      await close();
    }
  });
});

describe('by keyboard alone', () => {
  it('one gets through controls, strip, tabs and tables, and out at the other end', async () => {
    const { page, close } = await openPage(site, { ...WIDE, ...COARSE });
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

      const panelsPx = () =>
        page.locator('.panels-place').evaluate((panels) => panels.getBoundingClientRect().width);
      const firstPx = await panelsPx();
      const divider = page.getByRole('separator', { name: 'Width of the panels' });
      await divider.focus();
      await page.keyboard.press('ArrowLeft');
      await expect.poll(panelsPx).toBeGreaterThan(firstPx);
      expect(await divider.getAttribute('aria-valuenow')).toBe('31');
      await page.keyboard.press('ArrowRight');
      await expect.poll(panelsPx).toBe(firstPx);
      await page.getByRole('button', { name: 'Wide panels' }).click();
      await expect.poll(panelsPx).toBeGreaterThan(2 * firstPx);
      expect(await page.locator('.map-place').isVisible()).toBe(false);
      await page.getByRole('button', { name: 'Normal panels' }).click();
      await page.locator('.map-place').waitFor();

      await page.getByRole('tab', { name: 'Answer' }).focus();
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => textOf(page.getByRole('tab', { selected: true }))).toBe('Supplies');
      await page.keyboard.press('End');
      await expect.poll(() => textOf(page.getByRole('tab', { selected: true }))).toBe('Plan');
      await tabTo(/^button: All cautions/);

      // With the map, on which the others do not look.
      await page.locator('.maplibregl-canvas').waitFor();
      expect(await seriousInBoth(page, '.map-place')).toEqual({ light: [], dark: [] });
    } finally {
      await close();
    }
  });
});
