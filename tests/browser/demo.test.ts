import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { figureKm, formatKm, formatLitres } from '../../web/units/units.ts';
import { inUnits, saidIn } from '../../web/words/said.ts';
import { edgeName, VERDICT_WORDS } from '../../web/words/words.ts';
import {
  openPage,
  openTab,
  pixelsOf,
  plain,
  plannedFor,
  type Site,
  startSite,
  textOf,
  type WatchedPage,
} from './site.ts';

let site: Site;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());

describe('the demo', () => {
  let opened: WatchedPage;
  beforeAll(async () => {
    opened = await openPage(site);
  });
  afterAll(() => opened?.close());

  it("opens at once and shows the API's longest stretches", async () => {
    for (const commodity of ['fuel', 'water'] as const) {
      const report = site.demo.analysis[commodity];
      const shown = await textOf(opened.page.getByTestId(`longest-${commodity}`));
      expect(shown).toContain(plain(formatKm(report.gaps[report.longest]!.lengthKm, 'metric')));
    }
  });

  it('says the verdict by the plan in a head that leaves the room to the work', async () => {
    await plannedFor(opened.page);
    for (const commodity of ['fuel', 'water'])
      expect(await textOf(opened.page.getByTestId(`headline-${commodity}`))).toBe('Holds with the plan');
    expect(await textOf(opened.page.locator('.todo'))).toContain('Do this, by the plan');
    const head = await opened.page.locator('header.top').boundingBox();
    expect(head!.height).toBeLessThanOrEqual(161);
    // Nothing of it is cut off.
    const hidden = await opened.page
      .locator('header.top > *')
      .evaluateAll((all) => all.filter((one) => one.scrollHeight > one.clientHeight + 1).length);
    expect(hidden).toBe(0);
  });

  it("has a row for each of the API's gaps, with its figures and verdict", async () => {
    const { fuel, water } = site.demo.analysis;
    const rows = await opened.page.locator('.data-table tbody tr').allInnerTexts();
    const gaps = [...fuel.gaps, ...water.gaps];
    expect(rows).toHaveLength(gaps.length);
    for (const [index, gap] of gaps.entries()) {
      const row = plain(rows[index]!);
      expect(row).toContain(`${edgeName(gap.from)} to ${edgeName(gap.to)}`);
      expect(row).toContain(plain(figureKm(gap.lengthKm, 'metric')));
      expect(row).toContain(plain(formatLitres(gap.arriveL, 'metric')).replace(/ L$/, ''));
      expect(row).toContain(VERDICT_WORDS[gap.verdict]);
    }
  });

  it('says that the land is invented', async () => {
    await expect.poll(() => textOf(opened.page.locator('.map-place'))).toContain(site.demo.map.notice!);
  });

  it('draws the route on the map, fuel and water both', async () => {
    const palette = ['#c56a10', '#0f6ba8', '#efe4cd'];
    await expect
      .poll(async () =>
        Math.min(...(await pixelsOf(opened.page, '.map-place .maplibregl-canvas', palette)).of),
      )
      .toBeGreaterThan(200);
  });

  it('marks on the strip and the map what the pointer is on in a table', async () => {
    const { page } = opened;
    const gap = site.demo.analysis.fuel.gaps[0]!;
    expect(await page.locator('.strip-readout').count()).toBe(0);
    await page.getByRole('button', { name: `${edgeName(gap.from)} to ${edgeName(gap.to)}` }).hover();
    await page.locator('.strip-readout').waitFor();
    await expect.poll(() => page.locator('.map-here').textContent()).toMatch(/^km/);
    await page.locator('h1').hover();
    await expect.poll(() => page.locator('.strip-readout').count()).toBe(0);
  });

  it('opens the details and the working of a gap', async () => {
    const { page } = opened;
    const { fuel } = site.demo.analysis;
    const worst = fuel.gaps[fuel.tightest]!;
    await page.getByRole('button', { name: `${edgeName(worst.from)} to ${edgeName(worst.to)}` }).click();
    const details = page.locator('.gap-details');
    await expect.poll(() => textOf(details)).toContain(plain(formatLitres(worst.reserveL, 'metric')));
    await details.getByText('How it was reckoned').click();
    for (const term of worst.working.needL)
      await expect
        .poll(() => textOf(details))
        .toContain(plain(inUnits('metric', term.label, term.labelParts)));
  });

  it('shows on the map the supply chosen in the table, and closes it with Escape', async () => {
    const { page } = opened;
    const passing = site.demo.analysis.passings.find((each) => !each.counts && each.name !== null)!;
    await openTab(page, 'Supplies');
    // A stop is unfolded, and the supply in it; looked for by its name it is a row of its own.
    await page.getByRole('button', { name: /^All \d+$/ }).click();
    const stop = page.locator('.row-button', { hasText: '1 station, 1 other fuel, 1 tap' }).first();
    await stop.click();
    await page.locator('.stop-supplies .row-button', { hasText: passing.name! }).waitFor();
    await stop.click();
    await page.getByRole('searchbox', { name: /^Find in Supplies/ }).fill(passing.name!);
    await page.getByRole('button', { name: passing.name! }).first().click();
    const card = page.locator('.map-place [role=dialog]');
    await card.waitFor();
    await expect.poll(() => textOf(card)).toContain(passing.name!);
    await expect.poll(() => textOf(card)).toContain(plain(saidIn('metric', passing.reasons[0]!)));
    await card.getByRole('button').first().focus();
    await page.keyboard.press('Escape');
    await card.waitFor({ state: 'detached' });
    await openTab(page, 'Gaps');
  });

  it('sorts a table and saves it as CSV', async () => {
    const { page } = opened;
    const table = page.getByRole('table', { name: 'Fuel: diesel' });
    await table.getByRole('button', { name: 'needs L' }).click();
    await table.getByRole('button', { name: 'needs L' }).click();
    await expect.poll(() => textOf(table.locator('th[aria-sort="descending"]'))).toContain('needs');
    const most = [...site.demo.analysis.fuel.gaps].sort((a, b) => b.needL - a.needL)[0]!;
    await expect.poll(() => textOf(table.locator('tbody tr').first())).toContain(edgeName(most.to));

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as CSV: Fuel: diesel' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/fuel-gaps\.csv$/);
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
    const lines = Buffer.concat(chunks).toString('utf8').trim().split('\r\n');
    expect(lines).toHaveLength(site.demo.analysis.fuel.gaps.length + 1);
    expect(lines[0]).toContain('needs (L)');
  });

  it('speaks miles and gallons when asked', async () => {
    const { page } = opened;
    const onMap = () => textOf(page.locator('.map-place'));
    const metric = /\d\s*(km|m|l|kg)\b/i;
    await expect.poll(onMap).toMatch(metric);
    await page.getByRole('combobox', { name: 'Units' }).selectOption('us');
    await expect.poll(onMap).toMatch(/\d\s*mi\b/);
    await openTab(page, 'Supplies');
    // A stop, and its first supply.
    await page.locator('.tab-panel .row-button').first().click();
    await page.locator('.stop-supplies .row-button').first().click();
    await expect.poll(() => textOf(page.locator('.map-place [role=dialog]'))).toMatch(/mile/);
    expect(await onMap()).not.toMatch(metric);
    await openTab(page, 'Gaps');
    const { fuel } = site.demo.analysis;
    const shown = await textOf(page.getByTestId('longest-fuel'));
    expect(shown).toContain(plain(formatKm(fuel.gaps[fuel.longest]!.lengthKm, 'us')));
    await page.getByRole('combobox', { name: 'Units' }).selectOption('metric');
  });

  it('did all that without an error and without a request to anywhere else', () => {
    expect(opened.faults).toEqual([]);
  });
});
