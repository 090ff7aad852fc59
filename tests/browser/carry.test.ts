import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../server/contract/plan.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { saidIn } from '../../web/words/said.ts';
import {
  demoFile,
  openPage,
  openTab,
  plain,
  plannedFor,
  type Site,
  startSite,
  textOf,
  type WatchedPage,
  WIDE,
} from './site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
/** The trips that plans were asked for with. */
const trips: TripFile[] = [];
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
  page.on('request', (each) => {
    if (each.url().endsWith('/plan')) trips.push((each.postDataJSON() as { trip: TripFile }).trip);
  });
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
const stops = () => page.locator('.plan .data-table').filter({ hasText: 'Stops of the plan' });
function firstUsed({ stops: all }: Plan) {
  const used = all.flatMap(({ passings }) => passings).find((passing) => passing.used);
  if (used === undefined) throw new Error('the plan uses no stop');
  return used;
}
/** The trip that a plan was asked for with last: what was asked before may still come after an edit. */
const lastTrip = () => trips.at(-1);
const figures = (litres: number) => (Math.abs(litres) < 9.95 ? 1 : 0);
const asShown = (litres: number) =>
  new Intl.NumberFormat('en-GB', { maximumFractionDigits: figures(litres) })
    .format(litres)
    .replace('-', '\u2212');

describe('the carry plan on the page', () => {
  it('is made in the background, in full once it is looked at, and has the numbers of the API', async () => {
    await plannedFor(page);
    expect(await page.locator('.plan').count()).toBe(0);
    await openTab(page, 'Carry');
    await whole();
    const { plan } = await planned();
    expect(plan.status).toBe('found');
    const text = await textOf(page.locator('.plan'));
    expect(text).toContain(`${plan.cans.fuel} fuel cans and ${plan.cans.water} water cans`);
    for (const { from, to, cans, litres } of plan.carries) {
      expect(text).toMatch(
        new RegExp(
          `${cans} cans? of \\w+ \\(${asShown(litres)} L\\) full from ${from.name} .* to ${to.name} `,
        ),
      );
    }
    const rows = page.getByRole('region', { name: 'Leg by leg' }).locator('tbody tr');
    const legs = [...plan.legs.fuel, ...plan.legs.water];
    await expect.poll(() => rows.count()).toBe(legs.length);
    for (const [place, leg] of legs.entries()) {
      const row = await textOf(rows.nth(place));
      expect(row).toContain(asShown(leg.departL));
      expect(row).toContain(asShown(leg.needL));
      expect(row).toContain(`reserve ${asShown(leg.reserveL)}`);
    }
  });

  it('has the plan halt by halt, both commodities on one sheet', async () => {
    const { plan } = await planned();
    const halts = page.getByRole('region', { name: 'Halt by halt', exact: true }).locator('tbody');
    await expect.poll(() => halts.count()).toBe(plan.sheet.length);
    for (const [place, { fuel, water }] of plan.sheet.entries()) {
      const text = await textOf(halts.nth(place));
      for (const supply of [fuel, water]) {
        if (supply === null) continue;
        expect(text).toContain(supply.at.name);
        if (supply.arriveL !== null) expect(text).toContain(asShown(supply.arriveL));
        if (supply.fillL > 0) expect(text).toContain(asShown(supply.fillL));
        if (supply.leaveL !== null) expect(text).toContain(asShown(supply.leaveL));
        if (supply.next !== null) expect(text).toContain(supply.next.at.name);
      }
    }
  });

  it('fills at a supply of one’s own once it is told, and no longer when it is taken away', async () => {
    const own = page.getByRole('group', { name: /Your own supplies/ });
    await own.getByRole('button', { name: 'Add a supply' }).click();
    await own.getByLabel('Supply').fill('North depot');
    await own.getByLabel('at', { exact: true }).fill('480');
    await own.getByLabel('so much').fill('60');
    const sheet = page.getByRole('region', { name: 'Halt by halt', exact: true });
    await sheet.getByText('North depot').first().waitFor();
    await whole();
    expect(await textOf(sheet)).toContain('no more than 60 L to be had');
    await own.getByRole('button', { name: /^Remove/ }).click();
    await sheet.getByText('North depot').first().waitFor({ state: 'detached' });
  });

  it('follows a change of what it is held to: without cans there is none, and ways out instead', async () => {
    await page.getByLabel('Most fuel cans').fill('0');
    await page.getByText('There is no plan that keeps the reserve.').waitFor();
    await whole();
    const { plan } = await planned({ ...site.demo.said.trip, plan: { mostCans: { fuel: 0 } } });
    expect(plan.status).toBe('none');
    expect(plan.waysOut.length).toBeGreaterThan(0);
    const text = await textOf(page.locator('.plan'));
    for (const way of plan.waysOut) expect(text).toContain(plain(saidIn('metric', way)));
    await page.getByLabel('Most fuel cans').fill('');
    await page.getByText('The reserve is kept all the way').waitFor();
  });

  it('lists its stops, used and passed by', async () => {
    const { plan } = await planned();
    const passings = plan.stops.flatMap((stop) => stop.passings);
    const rows = stops().locator('tbody tr');
    await expect.poll(() => rows.count()).toBe(passings.length);
    for (const [place, { used, arriveL, fillL }] of passings.entries()) {
      const text = await textOf(rows.nth(place));
      expect(text).toContain(used ? 'used' : 'passed by');
      for (const litres of [arriveL, fillL]) if (litres !== null) expect(text).toContain(asShown(litres));
    }
  });

  it('passes a stop by that is to be passed by, and no longer when it is not', async () => {
    const { plan } = await planned();
    const used = firstUsed(plan);
    await stops()
      .getByRole('button', { name: new RegExp(`${used.name}.*used`) })
      .first()
      .click();
    const passing: TripFile = { ...site.demo.said.trip, plan: { passBy: [used.id] } };
    await page.getByLabel('Pass by').check();
    await expect.poll(lastTrip).toEqual(passing);
    await expect.poll(() => textOf(stops().locator('tr.open'))).toContain('passed by as told');
    const without = await planned(passing);
    expect(without.plan).not.toEqual(plan);
    await page.getByLabel('Pass by').uncheck();
    await expect.poll(lastTrip).toEqual(site.demo.said.trip);
  });

  it('is told what a stop gives and how long one waits there, and forgets it again', async () => {
    const { trip } = site.demo.said;
    const { commodity, id } = firstUsed((await planned()).plan);
    const most = page.getByLabel(/^Most \w+ to be had/);
    const settings = () => lastTrip()?.plan?.stops;
    await most.fill('30');
    await expect.poll(settings).toEqual([{ id, mostLitres: { [commodity]: 30 } }]);
    await page.getByLabel('Waiting there').fill('2');
    await expect.poll(settings).toEqual([{ id, mostLitres: { [commodity]: 30 }, waitHours: 2 }]);
    await most.fill('');
    await expect.poll(settings).toEqual([{ id, waitHours: 2 }]);
    await page.getByLabel('Waiting there').fill('');
    await expect.poll(lastTrip).toEqual(trip);
    await whole();
    await stops().locator('tr.open .row-button').click();
  });

  it('can be stopped while it takes long, and goes on', async () => {
    // The answers wait until they are let through.
    let release = () => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/plan', async (route) => {
      await held;
      await route.continue().catch(() => {});
    });
    const before = await textOf(page.locator('.plan .lead'));
    await page.getByLabel('No cans where people sit or sleep').check();
    await page.getByRole('status').getByText('Plan…').waitFor();
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByText('Stopped: what is shown is the plan of earlier figures.').waitFor();
    expect(await textOf(page.locator('.plan .lead'))).toBe(before);
    const goOn = page.getByRole('button', { name: 'Go on' });
    await expect.poll(() => goOn.evaluate((button) => button === document.activeElement)).toBe(true);
    release();
    await goOn.click();
    await whole();
    await page.unroute('**/plan');
    await page.getByLabel('No cans where people sit or sleep').uncheck();
  });

  it('goes on in the what-ifs, a row each, and in the gauge, rounded to the safe side', async () => {
    await openTab(page, 'What if');
    await whole();
    const { whatIf, gauge } = await planned();
    const tables = page.locator('.plan .data-table');
    const rows = tables.nth(0).locator('tbody tr');
    await expect.poll(() => rows.count()).toBe(whatIf.rows.length);
    for (const [place, row] of whatIf.rows.entries()) {
      const text = await textOf(rows.nth(place));
      expect(text).toContain(plain(saidIn('metric', row)));
      expect(text).toContain(asShown(row.arriveL));
    }
    const lines = tables.nth(1).locator('tbody tr');
    await expect.poll(() => lines.count()).toBe(gauge.rows.length);
    for (const [place, { fuel, water }] of gauge.rows.entries()) {
      const text = await textOf(lines.nth(place));
      for (const litres of [fuel.onL, water.onL]) expect(text).toContain(String(Math.ceil(litres - 1e-6)));
    }
  });

  it('tries what is chosen to be tried', async () => {
    await page.getByLabel('Waiting').fill('4');
    await page.getByText('Waiting 4 days').waitFor();
    expect(lastTrip()?.whatIf).toEqual({ waitDays: 4 });
    await page.getByLabel('Waiting').fill('');
    await page.getByText('Waiting 2 days').waitFor();
    expect(lastTrip()).not.toHaveProperty('whatIf');
  });

  it('speaks the units of the reader in whole sentences too', async () => {
    const units = page.getByLabel('Units');
    await units.selectOption('us');
    for (const tab of ['What if', 'Carry'] as const) {
      await openTab(page, tab);
      await whole();
      await expect.poll(() => textOf(page.locator('.plan'))).not.toMatch(/\d (km|l|kg)\b|\bkm \d/);
    }
    await units.selectOption('metric');
    await openTab(page, 'What if');
  });

  it('sorts its gauge, and saves it as CSV', async () => {
    const gauge = page.locator('.plan .data-table').nth(1);
    await gauge.getByRole('button', { name: 'fuel on' }).click();
    await expect.poll(() => gauge.locator('th[aria-sort="ascending"]').count()).toBe(1);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      gauge.getByRole('button', { name: /^Save as CSV/ }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/-gauge\.csv$/);
  });

  it('keeps its cans on the map on other tabs, until the reader wants them away', async () => {
    const key = page.locator('.map-legend').getByText('full cans carried');
    await key.waitFor({ state: 'attached' });
    await openTab(page, 'Gaps');
    expect(await key.count()).toBe(1);
    await page.getByLabel('With the carry plan').uncheck();
    await key.waitFor({ state: 'detached' });
    await page.getByLabel('With the carry plan').check();
    await key.waitFor({ state: 'attached' });
    await openTab(page, 'Carry');
  });

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});

describe('own files', () => {
  it('are sent again when the server no longer has them, and planned then', async () => {
    const { page: other, close } = await openPage(site, WIDE, { withMap: false });
    try {
      await other.getByRole('button', { name: 'Open a route' }).click();
      const dialog = other.getByRole('dialog', { name: 'Open a route' });
      const names = ['route.gpx', 'orrimar.osm.pbf', 'rig.yaml', 'trip.yaml'];
      await dialog.locator('input[type=file]').setInputFiles(names.map(demoFile));
      const uploads: string[] = [];
      other.on('request', (each) => {
        if (each.url().endsWith('/api/trips')) uploads.push(each.url());
      });
      const [response] = await Promise.all([
        other.waitForResponse((each) => each.url().endsWith('/api/trips')),
        dialog.getByRole('button', { name: 'Work it out' }).click(),
      ]);
      const { id } = (await response.json()) as { id: string };
      await dialog.waitFor({ state: 'detached' });
      // As after a restart of the server.
      await other.route(`**/api/analyses/${id}**`, (route) =>
        route.fulfill({
          status: 404,
          json: { code: 'not-found', title: 'Not found', detail: 'It is gone.' },
        }),
      );
      await openTab(other, 'Carry');
      await other.locator('.plan[data-plan="whole"]').waitFor();
      expect(uploads.length).toBe(2);
      await expect
        .poll(() => textOf(other.locator('.plan .lead')))
        .toContain('The reserve is kept all the way');
      expect(await other.locator('.problem').count()).toBe(0);
    } finally {
      await close();
    }
  });
});
