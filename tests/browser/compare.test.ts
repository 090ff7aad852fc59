import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Comparison } from '../../server/contract/answers/compare.ts';
import { openPage, openTab, type Site, settled, startSite, textOf, type WatchedPage, WIDE } from './site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
  await openTab(page, 'Compare');
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const heads = () => page.locator('.compare-scroll thead th').allInnerTexts();
const row = (name: string) =>
  page.locator('.compare-scroll').getByRole('row', { name: new RegExp(`^${name}`) });

describe('rigs compared on the page', () => {
  it('start with the one on the page', async () => {
    await page.locator('.compare-scroll').waitFor();
    await expect.poll(() => heads()).toEqual(['At its worst', site.demo.analysis.rig.name]);
  });

  it('hold a kept rig against a change of the one on the page, in the words of the API', async () => {
    await page.getByRole('button', { name: 'Keep this rig to compare' }).click();
    await expect.poll(heads).toHaveLength(3);
    await openTab(page, 'Rig');
    await page.getByRole('textbox', { name: 'Holds', exact: true }).first().fill('400');
    await settled(page);
    await openTab(page, 'Compare');

    const { rig, trip } = site.demo.analysis;
    const [tank] = rig.fuel.tanks;
    const larger = { ...rig, fuel: { ...rig.fuel, tanks: [{ ...tank!, litres: 400 }] } };
    const response = await fetch(`${site.origin}/api/analyses/demo/compare`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ rigs: [larger, rig], trip }),
    });
    const { rigs } = (await response.json()) as Comparison;
    expect(rigs.map((each) => each.fuel.worst.verdict)).toEqual(['enough', 'short']);

    await expect.poll(() => textOf(row('Fuel, worst stretch'))).toMatch(/enough .*\(best\).* runs dry/);
    await expect.poll(() => textOf(row('Extra fuel cans'))).toContain(`${rigs[1]!.fuel.extraCans} of 20 L`);
  });

  it('say which file could not be read, and take the others', async () => {
    const files = [
      { name: 'broken.yaml', text: 'fuel: {' },
      { name: 'third.json', text: JSON.stringify({ ...site.demo.analysis.rig, name: 'Third rig' }) },
    ];
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open rig files' }).click(),
    ]);
    await chooser.setFiles(
      files.map(({ name, text }) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) })),
    );
    await page.locator('.compare [role=alert]').waitFor();
    await expect.poll(() => textOf(page.locator('.compare [role=alert]'))).toContain('broken.yaml');
    await expect.poll(async () => (await heads()).at(-1)).toBe('Third rig');
  });

  it('go when they are removed', async () => {
    await page.getByRole('button', { name: 'Remove Third rig' }).click();
    await expect.poll(heads).toHaveLength(3);
  });

  it('met no error but the refusal that was meant', () => {
    const meant = /the server responded with a status of 422/;
    expect(opened.faults.filter((fault) => !meant.test(fault))).toEqual([]);
  });
});
