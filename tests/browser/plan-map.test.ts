import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanReply } from '../../server/contract/whatif.ts';
import {
  openPage,
  openTab,
  PHONE,
  pixelsOf,
  plain,
  plannedFor,
  type Site,
  startSite,
  textOf,
  type WatchedPage,
} from './site.ts';

const INK = '#211c15';

let site: Site;
let opened: WatchedPage;
let page: Page;
let reply: PlanReply;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site);
  page = opened.page;
  const { rig, trip } = site.demo.said;
  const answer = await fetch(`${site.origin}/api/analyses/demo/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip }),
  });
  reply = (await answer.json()) as PlanReply;
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const planned = (on: Page = page) => on.locator('.plan[data-plan="whole"]').waitFor();
const strip = () => page.locator('.strip');
/** Words of a drawing have no inner text. */
const drawnText = async (selector: string) =>
  plain((await page.locator(`.strip ${selector}`).allTextContents()).join(' '));
const count = (selector: string) => page.locator(`.strip ${selector}`).count();
const byPlan = () => page.getByLabel('With the carry plan');

describe('the carry plan on strip and map', () => {
  it('is made at once, and away where the reader wants it away', async () => {
    await plannedFor(page);
    await expect.poll(() => count('.strip-can')).toBeGreaterThan(0);
    await byPlan().uncheck();
    await expect.poll(() => count('.strip-can')).toBe(0);
    expect(await count('.strip-dry')).toBeGreaterThan(0);
    await byPlan().check();
  });

  it('has its levels on the strip: nothing short or dry, a bar as long as cans are full, a dot for each pour', async () => {
    const { plan } = reply;
    expect(plan.status).toBe('found');
    await openTab(page, 'Carry');
    await planned();
    await expect.poll(() => count('.strip-dry')).toBe(0);
    const cans = plan.carries.reduce((sum, carry) => sum + carry.cans, 0);
    await expect.poll(() => count('.strip-can')).toBe(cans);
    const pours = plan.carries.reduce((sum, { pourAtKm }) => sum + pourAtKm.length, 0);
    await expect.poll(() => count('.strip-can-bar circle')).toBe(pours);
    const used = plan.stops.flatMap(({ passings }) => passings).filter((passing) => passing.used);
    await expect.poll(() => count('.strip-used')).toBe(used.length);
    // The word is left out where a bar is too short for it, the number never.
    const most = Math.max(...plan.carries.map((carry) => carry.cans));
    const labels = await page.locator('.strip-can-bar text').allTextContents();
    expect(labels.map(plain).filter((label) => label === `${most}` || label === `${most} cans`)).not.toEqual(
      [],
    );
    expect(labels.map(plain).filter((label) => label.endsWith(' cans'))).not.toEqual([]);
  });

  it('has each turn-back point on the strip, the first ones strong and all with their km', async () => {
    const { turnBacks } = reply.whatIf;
    expect(turnBacks.length).toBeGreaterThan(1);
    await expect.poll(() => count('.strip-turn-back polygon')).toBe(turnBacks.length);
    await expect
      .poll(() => count('.strip-turn-back .strip-later'))
      .toBe(turnBacks.filter(({ first }) => !first).length);
    const words = await drawnText('.strip-labels');
    for (const { atKm } of turnBacks) {
      expect(words).toContain(`before km ${Math.floor(atKm).toLocaleString('en-GB')}`);
    }
  });

  it('is read out where the reader is: tanks and full cans', async () => {
    const carry = reply.plan.carries.find(({ commodity }) => commodity === 'fuel')!;
    await strip().focus();
    await page.keyboard.press('Home');
    const at = async () => Number(await strip().getAttribute('aria-valuenow'));
    while ((await at()) <= carry.fromKm) await page.keyboard.press('ArrowUp');
    expect(await at()).toBeLessThan(carry.pourAtKm[0]!);
    const words = (await strip().getAttribute('aria-valuetext'))!.replaceAll('\u00a0', ' ');
    expect(words).toMatch(
      new RegExp(`by the plan: diesel \\d+ L left, tanks \\d+ L, ${carry.cans} cans? full; drinking water `),
    );
  });

  it('has its lines, labels and marks on the map, and no stretch that runs dry', async () => {
    const key = page.locator('.map-legend');
    for (const words of ['full cans carried', 'turn back', 'the plan fills here']) {
      await key.getByText(words).waitFor({ state: 'attached' });
    }
    // The legend shows every colour; the map draws in its own time.
    await key.locator('summary').click();
    await expect.poll(async () => (await pixelsOf(page, '.map-place canvas', ['#8e1b4b'])).of[0]).toBe(0);
    const shown = await pixelsOf(page, '.map-place canvas', [INK]);
    expect(shown.of[0]).toBeGreaterThan(300);
  });

  it('stays on other tabs, until the reader wants it away', async () => {
    await openTab(page, 'Gaps');
    expect(await count('.strip-can')).toBeGreaterThan(0);
    await byPlan().uncheck();
    await expect.poll(() => count('.strip-can')).toBe(0);
    await expect.poll(() => count('.strip-dry')).toBeGreaterThan(0);
    await expect.poll(() => page.locator('.map-legend').getByText('turn back').count()).toBe(0);
    await expect
      .poll(async () => (await pixelsOf(page, '.map-place canvas', ['#8e1b4b'])).of[0])
      .toBeGreaterThan(100);
    await byPlan().check();
    await expect.poll(() => count('.strip-can')).toBeGreaterThan(0);
  });

  it('is made anew for another trip, and says so where there is none', async () => {
    await openTab(page, 'Carry');
    await page.getByLabel('Most fuel cans').fill('0');
    await page.getByLabel('With the carry plan: there is none').waitFor();
    await expect.poll(() => count('.strip-can')).toBe(0);
    await page.getByLabel('Most fuel cans').fill('');
    await planned();
    await expect.poll(() => count('.strip-can')).toBeGreaterThan(0);
  });

  it('is on the printed sheet', async () => {
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.strip').isVisible()).toBe(true);
    await expect.poll(() => textOf(strip())).toContain('by the plan');
    await expect.poll(() => page.locator('.plan-switch').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
  });

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});

it('on a phone the switch stands beside that of strip and map', async () => {
  const phone = await openPage(site, PHONE, { withMap: false });
  try {
    await openTab(phone.page, 'Carry');
    await planned(phone.page);
    const box = await phone.page.locator('.plan-switch').boundingBox();
    const views = await phone.page.locator('.view-switch').boundingBox();
    expect(box!.y).toBeGreaterThanOrEqual(views!.y);
    expect(box!.y + box!.height).toBeLessThanOrEqual(views!.y + views!.height + 1);
    const wide = await phone.page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wide).toBe(0);
  } finally {
    await phone.close();
  }
});
