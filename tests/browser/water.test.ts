import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  openPage,
  openPart,
  openTab,
  plain,
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
  await openTab(page, 'Rig');
  // The demo's wagon tells of crew and line already: start from a bare one, as somebody new would.
  const { name, fuel, pace } = site.demo.analysis.rig;
  const bare = {
    name,
    fuel: { kind: fuel.kind, litresPer100Km: fuel.litresPer100Km, tanks: fuel.tanks },
    water: { litresPerDay: { low: 11, typical: 14, high: 18 }, tanks: [{ name: 'floor', litres: 70 }] },
    pace: { hoursPerDay: pace.hoursPerDay, kmPerHour: pace.kmPerHour },
  };
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open a rig file' }).click(),
  ]);
  await chooser.setFiles({
    name: 'bare.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(bare)),
  });
  const crewed = page.locator('details.rig-section > summary', {
    hasText: /^Crew and heat.*(person|people)/,
  });
  await crewed.waitFor({ state: 'detached' });
  await settled(page);
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const section = (title: string) =>
  page.locator('details.rig-section', { has: page.locator('h4', { hasText: new RegExp(`^${title}$`) }) });
const openSection = (title: string) => openPart(section(title));
const waterAnswer = () => textOf(page.locator('.answer').nth(1));
/** The high end of a row of the table of uses, litres a day. */
const highOf = async (row: string): Promise<number> => {
  const cells = section('Crew and heat')
    .getByRole('row', { name: new RegExp(`^${row}`) })
    .getByRole('cell');
  return Number(plain((await cells.last().textContent()) ?? ''));
};

describe('crew and heat', () => {
  it('take the figure for all aboard as observed at first, so that nothing changes unasked', async () => {
    const before = await waterAnswer();
    await openSection('Crew and heat');
    await page.getByRole('button', { name: 'Add a crew' }).click();
    await page.getByRole('button', { name: 'Reckon from the crew instead' }).waitFor();
    await settled(page);
    expect(await waterAnswer()).toBe(before);
    await expect.poll(() => highOf('All together')).toBe(18);
  });

  it('are summed from the people then, and hotter is never less', async () => {
    await page.getByRole('button', { name: 'Reckon from the crew instead' }).click();
    await settled(page);
    await expect.poll(() => highOf('drinking')).toBeGreaterThan(0);
    const mild = await highOf('All together');
    await page.getByRole('button', { name: 'Add the heat expected' }).click();
    await settled(page);
    const hot = await highOf('All together');
    expect(hot).toBeGreaterThan(mild);
    await page.getByRole('textbox', { name: 'Hottest by day, in the shade' }).fill('42');
    await settled(page);
    await expect.poll(() => highOf('All together')).toBeGreaterThan(hot);
  });

  it('say where each figure comes from', async () => {
    const row = section('Crew and heat').getByRole('row', { name: /^cooking/ });
    await row.locator('summary').click();
    await expect.poll(() => textOf(row.locator('.why-words'))).toMatch(/no source|ours|Sphere|WHO|FEMA/);
  });

  it('go again for one figure', async () => {
    await page.getByRole('button', { name: 'Remove the crew: one figure for all aboard' }).click();
    await page.getByRole('button', { name: 'Add a crew' }).waitFor();
    await settled(page);
    expect(await page.locator('.error').count()).toBe(0);
  });
});

describe('the treatment line', () => {
  const line = () => section('Treatment').locator('.line-chain');

  it('is drawn as soon as it is added, and says what it does not reach', async () => {
    await openSection('Treatment');
    await page.getByRole('button', { name: 'Add a treatment line' }).click();
    await line().waitFor();
    await expect.poll(() => line().locator('.step-stage').count()).toBe(3);
    await expect.poll(() => textOf(section('Treatment').locator('.log-bars'))).toContain('short by');
  });

  /** Of the supplies listed, those whose row says that a spring counts. */
  const springsCounting = async (): Promise<number> => {
    const rows = await page.getByRole('row').filter({ hasText: 'spring' }).allInnerTexts();
    return rows.filter((row) => !row.includes('not relied on')).length;
  };

  it('makes a spring fit once a stage is added that reaches the target, and the supplies know it', async () => {
    await openTab(page, 'Supplies');
    const before = await springsCounting();
    await openTab(page, 'Rig');
    await openSection('Treatment');
    await page.getByRole('combobox', { name: 'Add a stage at the end' }).selectOption('boiling');
    await settled(page);
    await expect
      .poll(() => textOf(section('Treatment').locator('.log-bars')))
      .toContain('met in clear water');
    const spring = section('Treatment').getByRole('row', { name: /spring/ });
    await expect.poll(() => textOf(spring)).toContain('yes');
    await openTab(page, 'Supplies');
    await expect.poll(springsCounting).toBeGreaterThan(before);
    await openTab(page, 'Rig');
    await openSection('Treatment');
  });

  it('shows the flow at the tap as measured, and not known before', async () => {
    await line().waitFor();
    await expect.poll(() => textOf(line())).toContain('flow not known');
    const tap = section('Treatment').getByRole('textbox', { name: 'Flow as measured' });
    await tap.fill('2.4');
    await settled(page);
    await expect.poll(() => textOf(line())).toContain('2.4 L/min measured');
  });

  it('keeps the tap behind its stage when another is removed', async () => {
    await section('Treatment').locator('.stage-entry > summary').first().click();
    await page.getByRole('button', { name: 'Remove stage 1' }).click();
    await settled(page);
    await expect.poll(() => line().locator('.step-stage').count()).toBe(3);
    expect(await page.locator('.field.wrong').count()).toBe(0);
    await expect.poll(() => textOf(line().locator('li').last())).toContain('drinking tap');
  });
});

describe('a log of fill-ups', () => {
  const FILLS = [
    'odometer_km,litres,full',
    ...[60, 61, 62, 63, 64, 95].map((litres, place) => `${1000 + 500 * place},${litres},full`),
  ].join('\n');
  const choose = async (name: string, text: string) => {
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      section('Learn from a log')
        .getByRole('button', { name: /^Open a/ })
        .click(),
    ]);
    await chooser.setFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  };

  it('is refused with its line when it is wrong', async () => {
    await openSection('Learn from a log');
    await choose('wrong.csv', `${FILLS}\n1200,40,full`);
    const problem = section('Learn from a log').locator('.problem');
    await problem.waitFor();
    await expect.poll(() => textOf(problem)).toMatch(/line 8/);
  });

  it('shows its outlier, and gives its rates to the rig by a button', async () => {
    await choose('fills.csv', FILLS);
    await page.getByRole('button', { name: 'Take it into the rig' }).waitFor();
    await expect.poll(() => textOf(section('Learn from a log'))).toContain('outlier');
    await page.getByRole('button', { name: 'Take it into the rig' }).click();
    await settled(page);
    // Five intervals of 500 km: 61 L the least, the 10th percentile above it.
    const typical = page.getByRole('textbox', { name: 'Uses typically' });
    expect(Number(await typical.inputValue())).toBeCloseTo(12.6, 6);
  });
});

describe('all of it', () => {
  it('met no error but the refusal that was meant', () => {
    const meant = /the server responded with a status of 422/;
    expect(opened.faults.filter((fault) => !meant.test(fault))).toEqual([]);
  });
});
