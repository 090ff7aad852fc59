import { fileURLToPath } from 'node:url';
import axe, { type RunOnly } from 'axe-core';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { inject } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { startBrowser } from '../helpers/browser.ts';
import { STATE_MS } from '../helpers/patience.ts';

export const demoFile = (name: string): string =>
  fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));

/** The app that all browser tests ask, and a browser of the file's own to look at it. */
export interface Site {
  origin: string;
  browser: Browser;
  demo: AnalysisReply;
  close: () => Promise<void>;
}

export async function startSite(): Promise<Site> {
  const origin = inject('origin');
  const browser = await startBrowser(inject('browser'));
  const answer = await fetch(`${origin}/api/demo`);
  if (!answer.ok) throw new Error(`The demo does not come: ${await answer.text()}`);
  const demo = (await answer.json()) as AnalysisReply;
  return { origin, browser, demo, close: () => browser.close() };
}

/** A page with what must not happen on it written down. */
export interface WatchedPage {
  page: Page;
  /** Errors on the console, uncaught ones, and requests that left the site's origin. */
  faults: string[];
  close: () => Promise<void>;
}

export const WIDE = { viewport: { width: 1440, height: 900 } };
/** Half as many pixels either way: software draws each of them, and not all tests look at them. */
export const COARSE = { deviceScaleFactor: 0.5 };
export const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** `withMap: false`: as in a browser without WebGL, which draws no map; it takes most of the processor's time. */
export async function openPage(
  site: Site,
  options: BrowserContextOptions = WIDE,
  { withMap = true } = {},
): Promise<WatchedPage> {
  // Each page asks the server, whatever another kept: offline.test.ts has its own.
  const context = await site.browser.newContext({ serviceWorkers: 'block', ...options });
  if (!withMap) await context.addInitScript(withoutWebGl);
  context.setDefaultTimeout(STATE_MS);
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol !== 'data:' && protocol !== 'blob:' && origin !== site.origin) {
      faults.push(`left the origin: ${request.url()}`);
    }
  });
  await page.goto(site.origin);
  await page.locator('.strip-place svg').first().waitFor();
  return { page, faults, close: () => context.close() };
}

/** As in a browser that draws no map. Runs in the page. */
export function withoutWebGl(): void {
  const { getContext } = HTMLCanvasElement.prototype;
  Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
    value: function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind.startsWith('webgl') ? null : Reflect.apply(getContext, this, [kind, ...rest]);
    },
  });
}

/** Waits until answer, strip and map go by a plan of what was reckoned. */
export const plannedFor = (page: Page): Promise<void> => page.locator('.page[data-plan="there"]').waitFor();

/** Waits until the page has reckoned what was typed. */
export const settled = (page: Page): Promise<void> => page.locator('.page[data-phase="settled"]').waitFor();

/** Panels by the words that lead to them. */
const PANELS = {
  Gaps: ['Answer', null],
  Supplies: ['Supplies', 'Points'],
  Notes: ['Supplies', 'Notes'],
  Rig: ['Vehicle', 'Rig'],
  Compare: ['Vehicle', 'Compare'],
  Days: ['Trip', 'Days'],
  Settings: ['Trip', 'Settings'],
  Carry: ['Plan', 'Carry'],
  'What if': ['Plan', 'What if'],
} as const;
export type PanelName = keyof typeof PANELS;
export const PANEL_NAMES = Object.keys(PANELS) as PanelName[];

/** The panel's own button within its group; of a group of one its tab. */
export function panelButton(page: Page, name: PanelName): Locator {
  const [group, within] = PANELS[name];
  return within === null
    ? page.getByRole('tab', { name: group, selected: true })
    : page.locator('.within-group button[aria-current]', { hasText: within });
}

/** Brings a panel to the front and waits until what it shows has been fetched. */
export async function openTab(page: Page, name: PanelName): Promise<void> {
  const [group, within] = PANELS[name];
  await page.getByRole('tab', { name: group }).click();
  if (within !== null) await page.locator('.within-group').getByRole('button', { name: within }).click();
  await panelButton(page, name).waitFor();
  await page.locator('.tab-panel > .soft', { hasText: /^Opening/ }).waitFor({ state: 'detached' });
  await page.locator('.tab-panel [aria-busy="true"]').waitFor({ state: 'detached' });
}

/** Opens a part of the rig's form; one that is told is open from the start. */
export async function openPart(part: Locator): Promise<void> {
  if ((await part.getAttribute('open')) === null) await part.locator('summary').first().click();
}

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What a change of colours alone can break: the rest was looked at in other colours of the same page. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * What axe finds against WCAG 2.2 A and AA, serious or worse, as readable lines; once nothing moves any more.
 * `colours`: by what hangs on colours only.
 */
export async function seriousIn(page: Page, part = 'html', { colours = false } = {}): Promise<string[]> {
  await settled(page);
  return seriousAsItIs(page, part, { colours });
}

/** The same of a page that reckons nothing on a server. */
export async function seriousAsItIs(page: Page, part = 'html', { colours = false } = {}): Promise<string[]> {
  await page.evaluate(() => document.fonts.ready.then(() => {}));
  await page.waitForFunction(() =>
    document.getAnimations().every(({ playState }) => playState !== 'running'),
  );
  // Read once a page: it is half a megabyte of script.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const runOnly: RunOnly = colours ? { type: 'rule', values: COLOUR_RULES } : { type: 'tag', values: WCAG };
  return page.evaluate(
    async ([within, only]) => {
      const loaded = (window as unknown as { axe: typeof axe }).axe;
      const { violations } = await loaded.run(within, { runOnly: only, resultTypes: ['violations'] });
      return violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .flatMap(({ id, nodes }) =>
          nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.failureSummary}`),
        );
    },
    [part, runOnly] as const,
  );
}

/** Which of these colours (CSS hex) a picture of the element shows, and how many pixels of each; near ones count. */
export async function pixelsOf(
  page: Page,
  selector: string,
  colours: readonly string[],
): Promise<{ of: number[]; distinct: number }> {
  const png = (await page.locator(selector).screenshot()).toString('base64');
  return page.evaluate(
    async ([data, wanted]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      canvas.width = image.width;
      canvas.height = image.height;
      const context = canvas.getContext('2d');
      if (context === null) throw new Error('no 2d canvas in the test browser');
      context.drawImage(image, 0, 0);
      const { data: pixels } = context.getImageData(0, 0, image.width, image.height);
      const targets = wanted.map((hex) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16)));
      const of = targets.map(() => 0);
      const seen = new Set<number>();
      for (let at = 0; at < pixels.length; at += 4) {
        const pixel = [pixels[at]!, pixels[at + 1]!, pixels[at + 2]!];
        seen.add(pixel[0]! * 65536 + pixel[1]! * 256 + pixel[2]!);
        for (const [index, target] of targets.entries()) {
          if (target.every((channel, place) => Math.abs(channel - pixel[place]!) <= 12)) of[index]! += 1;
        }
      }
      return { of, distinct: seen.size };
    },
    [png, [...colours]] as const,
  );
}

/** What a reader sees of these elements now, as one text. */
export const textOf = async (elements: Locator): Promise<string> =>
  plain((await elements.allInnerTexts()).join(' '));

/** Text as a reader sees it, with plain spaces. */
export const plain = (text: string): string => text.replace(/[\s\u00a0]+/g, ' ').trim();
