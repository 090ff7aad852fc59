import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { sentenceText } from '../../web/words/sentence.ts';
import {
  openPage,
  openPart,
  openTab,
  plain,
  plannedFor,
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
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const holds = () => page.getByRole('textbox', { name: 'Holds', exact: true }).first();
const fuelAnswer = () => textOf(page.locator('.answer').first());

describe('the rig on the page', () => {
  it("turns the verdict as the tank is enlarged, to the API's own words", async () => {
    const { rig, trip, fuel } = site.demo.analysis;
    expect(fuel.gaps.some(({ verdict }) => verdict === 'short')).toBe(true);
    await expect.poll(() => fuelAnswer()).toContain('runs dry');

    const [tank] = rig.fuel.tanks;
    const larger = { ...rig, fuel: { ...rig.fuel, tanks: [{ ...tank!, litres: 400 }] } };
    const response = await fetch(`${site.origin}/api/analyses/demo`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ rig: larger, trip }),
    });
    const { analysis } = (await response.json()) as AnalysisReply;
    expect(analysis.fuel.gaps.every(({ verdict }) => verdict === 'enough')).toBe(true);

    await holds().fill('400');
    await expect.poll(fuelAnswer).not.toContain('dry');
    await settled(page);
    expect(await textOf(page.getByTestId('headline-fuel'))).toBe('Enough all the way');
    await openTab(page, 'Gaps');
    for (const sentence of analysis.answer.fuel) {
      await expect
        .poll(() => textOf(page.locator('.in-words')))
        .toContain(plain(sentenceText(sentence, 'metric')));
    }
    await openTab(page, 'Rig');
  });

  it('tells people who do not see the page what the new answer is', async () => {
    await expect
      .poll(async () => plain((await page.locator('.only-read[role=status]').first().textContent()) ?? ''))
      .toContain('Diesel: Enough all the way');
  });

  it('says what is wrong beside the field, keeps the old answer and what was typed', async () => {
    await plannedFor(page);
    const before = await fuelAnswer();
    await holds().fill('-5');
    await page.locator('.page[data-phase="refused"]').waitFor();
    await expect.poll(() => holds().getAttribute('aria-invalid')).toBe('true');
    const remark = page.locator('.field.wrong .error').first();
    await expect.poll(() => textOf(remark)).toContain('-5');
    expect(await fuelAnswer()).toBe(before);
    expect(await holds().inputValue()).toBe('-5');

    await holds().fill('4oo');
    await expect.poll(() => textOf(remark)).toContain('“4oo”');
    expect(await fuelAnswer()).toBe(before);

    await holds().fill('130');
    await settled(page);
    await expect.poll(() => fuelAnswer()).toContain('runs dry');
    expect(await page.locator('.field.wrong').count()).toBe(0);
  });

  it('takes an unusual figure once the reader says that it is meant so, until that is taken back', async () => {
    const pace = page.locator('details.rig-section', { has: page.locator('h4', { hasText: /^Pace$/ }) });
    const openPace = () => openPart(pace);
    await openPace();
    const hours = pace.getByRole('textbox', { name: 'Driving a day' }).first();
    const before = await hours.inputValue();
    await hours.fill('18');
    const meant = page.getByRole('button', { name: 'It is meant so' });
    await meant.click();
    await settled(page);
    expect(await meant.count()).toBe(0);
    expect(await hours.inputValue()).toBe('18');
    await openTab(page, 'Notes');
    await page.getByRole('button', { name: 'No longer' }).click();
    await meant.waitFor();
    await openTab(page, 'Rig');
    await openPace();
    await hours.fill(before);
    await settled(page);
    expect(await page.locator('.problem').count()).toBe(0);
  });

  it('adds a second tank and takes it away again', async () => {
    await page.getByRole('button', { name: 'Add a tank' }).first().click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Holds', exact: true }).count()).toBe(3);
    await page.getByRole('textbox', { name: 'Holds', exact: true }).nth(1).fill('270');
    await expect.poll(fuelAnswer).not.toContain('dry');
    await page.getByRole('button', { name: 'Remove tank 2' }).click();
    await expect.poll(fuelAnswer).toContain('runs dry');
  });

  it('asks again what is aboard when the answer is taken back, and takes the new answer', async () => {
    await openTab(page, 'Settings');
    await page
      .getByRole('combobox', { name: 'Fuel aboard' })
      .selectOption({ label: 'not said: taken as full' });
    const question = page.getByRole('heading', { name: 'What is aboard at the start?' });
    await question.waitFor();
    const band = page.locator('.questions');
    await band.getByRole('combobox', { name: 'Diesel' }).selectOption({ label: 'driven since full' });
    await band.getByRole('textbox', { name: /driven since full/ }).fill('100');
    await band.getByRole('button', { name: 'Use this' }).click();
    await question.waitFor({ state: 'detached' });
    await expect
      .poll(() => page.getByRole('textbox', { name: 'driven since all was full' }).inputValue())
      .toBe('100');
    await openTab(page, 'Rig');
  });

  it('takes units each on its own, litres with miles, and keeps them and every litre', async () => {
    const units = page.getByRole('combobox', { name: 'Units' });
    await units.selectOption({ label: 'each on its own' });
    const choice = page.getByRole('dialog', { name: 'Units' });
    await choice.getByRole('combobox', { name: 'Distances' }).selectOption('mi');
    await choice.getByRole('button', { name: 'Done' }).click();
    await choice.waitFor({ state: 'detached' });
    await expect.poll(fuelAnswer).toMatch(/\d mi\b/);
    expect(await fuelAnswer()).toMatch(/\d L\b/);
    await page.reload();
    await expect.poll(fuelAnswer).toMatch(/\d mi\b/);
    await openTab(page, 'Rig');
    await units.selectOption({ label: 'each on its own' });
    await choice.getByRole('combobox', { name: 'Fuel and water' }).selectOption('US gal');
    await page.keyboard.press('Escape');
    // 130 L are 34.34237 US gal: four figures stand there, and typed once more they are still 130 L.
    expect(await holds().inputValue()).toBe('34.34');
    await holds().fill('35');
    await holds().fill('34.34');
    await holds().blur();
    await units.selectOption('metric');
    await expect.poll(() => holds().inputValue()).toBe('130');
    await settled(page);
  });

  it('speaks German where that is chosen, figures and server sentences too, and English again', async () => {
    await page.getByRole('combobox', { name: 'Language' }).selectOption('de');
    await expect.poll(() => page.locator('html').getAttribute('lang')).toBe('de');
    await expect.poll(fuelAnswer).toMatch(/geht aus|Geht aus/);
    await page.getByRole('tab', { name: 'Antwort' }).click();
    await expect.poll(() => textOf(page.locator('.in-words'))).toMatch(/Geht aus bei km [\d,]+/);
    await page.getByRole('tab', { name: 'Fahrzeug' }).click();
    const tank = page.getByRole('textbox', { name: 'Fasst', exact: true }).first();
    await tank.fill('1.450');
    await expect.poll(() => textOf(page.locator('.field.wrong .error').first())).toContain('auf zwei Arten');
    await tank.fill('130,5');
    await tank.blur();
    await settled(page);
    expect(await tank.inputValue()).toBe('130,5');
    await tank.fill('130');
    await settled(page);
    await page.getByRole('combobox', { name: 'Sprache' }).selectOption('en');
    await expect.poll(fuelAnswer).toContain('runs dry');
    await openTab(page, 'Rig');
    expect(await holds().inputValue()).toBe('130');
  });

  it('saves the rig as a file that the page opens again', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the rig as a file' }).click(),
    ]);
    const path = await download.path();
    await holds().fill('500');
    await expect.poll(fuelAnswer).not.toContain('dry');
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Open a rig file' }).click(),
    ]);
    await chooser.setFiles(path);
    await expect.poll(fuelAnswer).toContain('runs dry');
    await expect.poll(() => holds().inputValue()).toBe('130');
  });

  it('takes what an instrument showed of the salt in a water, and counts the water no longer', async () => {
    await openTab(page, 'Supplies');
    await page.getByRole('searchbox', { name: /^Find in Supplies/ }).fill('Ketta town tap');
    const tap = page.getByRole('row').filter({ hasText: 'Ketta town tap' }).first();
    await expect.poll(() => textOf(tap)).not.toContain('not relied on');
    await tap.locator('.row-button').click();
    const salt = page.getByRole('textbox', { name: 'Measured today' });
    await salt.fill('much');
    await page.getByRole('button', { name: 'Note the salt' }).click();
    await expect.poll(() => textOf(page.locator('.supply-details [role=alert]'))).toContain('“much”');
    await salt.fill('5000');
    await page.getByRole('button', { name: 'Note the salt' }).click();
    await settled(page);
    await expect.poll(() => textOf(tap)).toContain('not relied on');
  });

  it('met no error but the refusals that were meant', () => {
    // The browser itself notes each refused request on the console.
    const meant = /the server responded with a status of 422/;
    expect(opened.faults.filter((fault) => !meant.test(fault))).toEqual([]);
  });
});
