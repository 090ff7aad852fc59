import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { FULL_RIG, FULL_TRIP } from '../helpers/full-plan.ts';
import {
  openPage,
  openTab,
  PANEL_NAMES,
  type PanelName,
  type Site,
  settled,
  startSite,
  type WatchedPage,
  WIDE,
} from './site.ts';

/** A tank whose name has a quantity in it: a name stays, whatever the units. */
const NAME = '20 l drum, 12 km Camp';
/** A hint that has both units beside each other. */
const BOTH = 'empty: 5 °C, or 9 °F';
/** Rows of each tab that are opened. */
const ROWS = 3;

let site: Site;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());

/** What the server says of the demo's route with a rig and trip that tell everything they can. */
async function fullReply(): Promise<AnalysisReply> {
  const [main, ...others] = FULL_RIG.fuel.tanks;
  const rig: RigFile = {
    ...FULL_RIG,
    fuel: { ...FULL_RIG.fuel, tanks: [{ ...main, litres: 90, name: NAME }, ...others] },
  };
  const response = await fetch(`${site.origin}/api/analyses/demo`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip: FULL_TRIP }),
  });
  if (!response.ok) throw new Error(await response.text());
  return (await response.json()) as AnalysisReply;
}

/** A state of its panel that shows all that a tab has; the others are there once fetched. */
const FULL: Readonly<Record<string, string>> = {
  Carry: '.plan[data-plan="whole"]',
  'What if': '.plan[data-plan="whole"]',
  Compare: '.compare-scroll',
};

async function openWhole(page: Page, tab: PanelName): Promise<void> {
  await openTab(page, tab);
  await page.locator('.tab-panel > .soft', { hasText: 'Opening' }).waitFor({ state: 'detached' });
  await page
    .locator(FULL[tab] ?? '.tab-panel h3, .tab-panel table')
    .first()
    .waitFor();
}

/** Opens all that folds, and the first rows of each table. */
async function unfold(page: Page): Promise<void> {
  const panel = page.locator('.tab-panel');
  const open = () =>
    panel.locator('details:not([open])').evaluateAll((all) => {
      for (const one of all) (one as HTMLDetailsElement).open = true;
      return all.length;
    });
  // What folds may hold more that folds, drawn once it is open.
  while ((await open()) > 0) await page.evaluate(() => new Promise((drawn) => setTimeout(drawn, 50)));
}

/** Texts of the page, names left out, that have a metric unit: each with where it stands. */
const metricTexts = (page: Page, names: readonly string[], within = 'body'): Promise<string[]> =>
  page.evaluate(
    ([kept, part]) => {
      const unit = /(?<![\p{L}\p{N}/])(?:km\/h|km|kg|[lL]\/100 km|[lL]|m|°C)(?![\p{L}\p{N}²³])/u;
      // Names of a file's columns, tags as mapped, and the choice of units itself.
      const skipped = 'script, style, option, code, .supply-tags dd';
      const own = (element: Element): string =>
        [...element.childNodes].map((node) => (node.nodeType === 3 ? node.textContent : '\u0000')).join('');
      return [...document.querySelectorAll(`${part} *`)].flatMap((element) => {
        if (element.closest(skipped) !== null) return [];
        const texts = [
          own(element),
          ...['aria-label', 'title', 'placeholder'].map((name) => element.getAttribute(name) ?? ''),
        ];
        return texts
          .map((text) => kept.reduce((rest, name) => rest.replaceAll(name, '…'), text))
          .filter((text) => unit.test(text))
          .map(
            (text) =>
              `${element.closest('[class]')?.className ?? ''} <${element.tagName.toLowerCase()}>: ${text}`,
          );
      });
    },
    [names, within] as const,
  );

/** What stands in metric on each panel before the units are changed: the check must see all of them. */
async function metricOn(page: Page): Promise<string[]> {
  const seen: string[] = [];
  for (const tab of PANEL_NAMES) {
    await openWhole(page, tab);
    await unfold(page);
    if ((await metricTexts(page, [], '.tab-panel')).length > 0) seen.push(tab);
  }
  return seen;
}

async function offendersOn(page: Page, names: readonly string[]): Promise<string[]> {
  await page.getByRole('combobox', { name: 'Units' }).selectOption('us');
  await settled(page);
  // What is read out follows a moment later, so that typing is not talked over.
  await page
    .locator('[role=status]', { hasText: /\bmile\b/ })
    .first()
    .waitFor({ state: 'attached' });
  const offenders = new Set<string>();
  const note = async (tab: string, within?: string) => {
    await unfold(page);
    for (const text of await metricTexts(page, names, within)) offenders.add(`${tab}: ${text}`);
  };
  for (const tab of PANEL_NAMES) {
    await openWhole(page, tab);
    await note(tab);
    const rows = page.locator('.tab-panel button.row-button');
    const count = Math.min(await rows.count(), ROWS);
    for (let row = 0; row < count; row += 1) {
      await rows.nth(row).click();
      // Beside the panel an opened row changes the card of a supply on the map.
      await note(tab, '.tab-panel');
    }
  }
  return [...offenders];
}

describe('a page in US units', () => {
  it('has no metric unit on any panel for the demo', async () => {
    // What stands on the map is looked at where the map is: see demo.test.ts.
    const opened: WatchedPage = await openPage(site, WIDE, { withMap: false });
    try {
      expect(await metricOn(opened.page)).toEqual(PANEL_NAMES);
      expect(await offendersOn(opened.page, [BOTH])).toEqual([]);
    } finally {
      await opened.close();
    }
  });

  it('has none either for a rig and trip that tell everything, but for a name', async () => {
    const reply = await fullReply();
    const { page, close } = await openPage(site, WIDE, { withMap: false });
    try {
      await page.route('**/api/demo', (route) => route.fulfill({ json: reply }));
      await page.reload();
      await page.locator('.strip-place svg').first().waitFor();
      expect(await offendersOn(page, [BOTH, NAME])).toEqual([]);
      await openTab(page, 'Rig');
      expect(await page.locator('.tab-panel').textContent()).toContain(NAME);
    } finally {
      await close();
    }
  });
});
