import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TripFile } from '../../server/contract/trip.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { openPage, PHONE, type Site, startSite, textOf, type WatchedPage, WIDE } from './site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site);
  page = opened.page;
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

/** The same plan from the API. */
async function planned(trip: TripFile = site.demo.said.trip): Promise<PlanReply> {
  const response = await fetch(`${site.origin}/api/analyses/demo/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig: site.demo.said.rig, trip }),
  });
  return (await response.json()) as PlanReply;
}
const whole = () => page.locator('.plan[data-plan="whole"]').waitFor();
const figures = (litres: number) => (Math.abs(litres) < 9.95 ? 1 : 0);
const asShown = (litres: number) =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: figures(litres) })
    .format(litres)
    .replace('-', '\u2212');

describe('the carry plan on the page', () => {
  it('is asked for only once it is looked at, and has the numbers of the API', async () => {
    expect(await page.locator('.plan').count()).toBe(0);
    await page.getByRole('tab', { name: 'Carry' }).click();
    await whole();
    const { plan } = await planned();
    expect(plan.status).toBe('found');
    const text = await textOf(page.locator('.plan'));
    expect(text).toContain(`${plan.cans.fuel} fuel cans and ${plan.cans.water} water cans`);
    for (const { from, to, cans, litres } of plan.carries) {
      expect(text).toMatch(
        new RegExp(
          `${cans} cans? of \\w+ \\(${asShown(litres)} l\\) full from ${from.name} .* to ${to.name} `,
        ),
      );
    }
    const rows = page.locator('.plan table.plain-table tbody tr');
    const legs = [...plan.legs.fuel, ...plan.legs.water];
    expect(await rows.count()).toBe(legs.length);
    for (const [place, leg] of legs.entries()) {
      const row = await textOf(rows.nth(place));
      expect(row).toContain(asShown(leg.departL));
      expect(row).toContain(asShown(leg.needL));
      expect(row).toContain(`reserve ${asShown(leg.reserveL)}`);
    }
  });

  it('follows a change of what it is held to: without cans there is none, and ways out instead', async () => {
    await page.getByLabel('Most fuel cans').fill('0');
    await page.getByText('There is no plan that keeps the reserve.').waitFor();
    await whole();
    const { plan } = await planned({ ...site.demo.said.trip, plan: { mostCans: { fuel: 0 } } });
    expect(plan.status).toBe('none');
    expect(plan.waysOut.length).toBeGreaterThan(0);
    const text = await textOf(page.locator('.plan'));
    for (const { text: way } of plan.waysOut) expect(text).toContain(way);
    await page.getByLabel('Most fuel cans').fill('');
    await page.getByText('The reserve is kept all the way').waitFor();
    await whole();
  });

  it('goes on in the what-ifs, a row each, and in the gauge, rounded to the safe side', async () => {
    await page.getByRole('tab', { name: 'What if' }).click();
    await whole();
    const { whatIf, gauge } = await planned();
    const tables = page.locator('.plan .data-table');
    const rows = tables.nth(0).locator('tbody tr');
    expect(await rows.count()).toBe(whatIf.rows.length);
    for (const [place, row] of whatIf.rows.entries()) {
      const text = await textOf(rows.nth(place));
      expect(text).toContain(row.text);
      expect(text).toContain(asShown(row.arriveL));
    }
    const lines = tables.nth(1).locator('tbody tr');
    expect(await lines.count()).toBe(gauge.rows.length);
    for (const [place, { fuel, water }] of gauge.rows.entries()) {
      const text = await textOf(lines.nth(place));
      for (const litres of [fuel.onL, water.onL]) expect(text).toContain(String(Math.ceil(litres - 1e-6)));
    }
  });

  it('sorts its gauge, and saves it as CSV', async () => {
    const gauge = page.locator('.plan .data-table').nth(1);
    await gauge.getByRole('button', { name: 'fuel on' }).click();
    expect(await gauge.locator('th[aria-sort="ascending"]').count()).toBe(1);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      gauge.getByRole('button', { name: /^Save as CSV/ }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/-gauge\.csv$/);
  });

  it('has its cans on the map while it is looked at, and no longer', async () => {
    const key = page.locator('.map-legend').getByText('full cans carried');
    await key.waitFor({ state: 'attached' });
    await page.getByRole('tab', { name: 'Gaps' }).click();
    await key.waitFor({ state: 'detached' });
    await page.getByRole('tab', { name: 'Carry' }).click();
    await key.waitFor({ state: 'attached' });
  });

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});

describe.each([
  ['light', { ...WIDE, colorScheme: 'light' as const }],
  ['dark', { ...WIDE, colorScheme: 'dark' as const }],
  ['a phone', { ...PHONE, colorScheme: 'light' as const }],
])('in %s', (_name, options) => {
  it('axe finds nothing serious, and nothing is wider than the page', async () => {
    const { page: other, close } = await openPage(site, options);
    try {
      for (const tab of ['Carry', 'What if']) {
        await other.getByRole('tab', { name: tab }).click();
        await other.locator('.plan[data-plan="whole"]').waitFor();
        if (tab === 'What if') await other.locator('.plan .row-button').first().click();
        const { violations } = await new AxeBuilder({ page: other })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
          .analyze();
        const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
        expect(
          serious.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`)),
          tab,
        ).toEqual([]);
        const tooWide = await other.locator('.plan').evaluate((plan) => plan.scrollWidth - plan.clientWidth);
        expect(tooWide, tab).toBe(0);
      }
    } finally {
      await close();
    }
  });
});
