import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanReply } from '../../../server/contract/whatif.ts';
import { openPage, openTab, type Site, startSite, textOf, type WatchedPage, WIDE } from '../site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

/** The demo's plan with a can more, as a first plan might have. */
async function withCanMore(): Promise<PlanReply> {
  const response = await fetch(`${site.origin}/api/analyses/demo/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ ...site.demo.said, extras: false }),
  });
  const reply = (await response.json()) as PlanReply;
  const { cans, aims } = reply.plan;
  const plan = {
    ...reply.plan,
    cans: { ...cans, fuel: cans.fuel + 1 },
    aims: aims.map((aim) => ({ ...aim, proven: false })),
  };
  return { ...reply, plan };
}

const state = (name: string) => page.locator(`.plan[data-plan="${name}"]`).waitFor();
const words = () => textOf(page.locator('.plan'));

describe('a plan that takes long, on the page', () => {
  it('is shown before it is proven, and the page says that it changed when the best is there', async () => {
    const first = await withCanMore();
    let release = (): void => {};
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route('**/api/analyses/demo/plan', async (route) => {
      await held;
      await route.continue();
    });
    const asked: string[] = [];
    await page.route('**/api/plans/*', async (route) => {
      asked.push(new URL(route.request().url()).pathname);
      await (asked.length < 2 ? route.fulfill({ status: 204 }) : route.fulfill({ json: first }));
    });
    // The plan is made as soon as the page is open.
    await page.reload();
    await openTab(page, 'Carry');
    await state('searching');
    expect(await textOf(page.locator('.todo'))).toContain('a better one is still searched for');
    expect(asked.length).toBe(2);
    expect(new Set(asked).size).toBe(1);
    expect(await textOf(page.locator('.plan-work'))).toContain('Not proven yet');
    expect(await words()).toContain(`with ${first.plan.cans.fuel} fuel cans`);
    release();
    await state('whole');
    expect(await textOf(page.locator('.plan-outcome'))).toContain('The plan has changed');
    expect(await textOf(page.locator('.todo'))).toContain('The plan has changed');
    expect(await textOf(page.locator('.plan-work'))).not.toContain('Not proven yet');
    expect(await words()).toContain(`with ${first.plan.cans.fuel - 1} fuel can`);
    // The server knows the name that the page chose no more.
    expect((await fetch(`${site.origin}${asked[0]}`)).status).toBe(204);
  });
});
