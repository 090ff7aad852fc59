import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  COARSE,
  openPage,
  openTab,
  type Site,
  seriousIn,
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
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

const panel = () => page.locator('.tab-panel');
const details = () => page.locator('.supply-details');
/** Opens the row of a supply of the demo by its name. */
async function openSupply(name: string): Promise<void> {
  await openTab(page, 'Supplies');
  await page.getByRole('searchbox', { name: /^Find in Supplies/ }).fill(name);
  await page
    .getByRole('row', { name: new RegExp(name) })
    .first()
    .click();
  await details().waitFor();
}

describe('the card of a supply', () => {
  it('takes that it works with who said it, how they are asked, in which words and until when', async () => {
    await openSupply('Mine camp bowser');
    await details().getByText('Who said it, and until when it holds').click();
    await details().getByLabel('Who said it').first().fill('Ann at the mine');
    await details().getByLabel('Telephone').first().fill('555 123');
    await details().getByLabel('What they said').first().fill('till six');
    await details().getByLabel('until', { exact: true }).fill('2027-12-31');
    await details().getByRole('button', { name: 'It works' }).click();
    await settled(page);
    await expect
      .poll(() => textOf(details()))
      .toMatch(/You confirmed it on \d{4}-\d\d-\d\d \(Ann at the mine, telephone 555 123: "till six"\)/);
    expect(await textOf(details())).toContain('confirmed');
  });

  it('takes that it does not, and why', async () => {
    await openSupply('Dune station');
    await details().getByText('Who said it, and until when it holds').click();
    await details().getByLabel('What they said').first().fill('the pump is gone');
    await details().getByRole('button', { name: 'It does not' }).click();
    await settled(page);
    await expect.poll(() => textOf(details())).toContain('"the pump is gone"');
    expect(await textOf(details())).toContain('Why it is not relied on');
  });

  it('takes what the map has wrong: grade, hours, litres', async () => {
    await openSupply('Ketta town tap');
    await details().getByText('Correct what the map says').click();
    const form = details().locator('details.note-form form');
    await form.getByRole('button', { name: 'Note the correction' }).click();
    expect(await textOf(form.getByRole('alert'))).toBe('Say what is to be corrected.');
    await form.getByLabel('Its water is').selectOption('treatable');
    await form.getByLabel('Gives at most (l)').fill('30');
    await form.getByLabel('Who said it').fill('Bert');
    await form.getByRole('button', { name: 'Note the correction' }).click();
    await settled(page);
    await expect
      .poll(() => textOf(details()))
      .toMatch(/Corrected by you: its water is to be treated, on \d{4}-\d\d-\d\d \(Bert\)/);
    expect(await textOf(details())).toMatch(/Water [^.]*treat/);
  });

  it('takes the depth of a well with its taste, says what is missing or out of bounds, and has it noted', async () => {
    await openSupply('Rope well');
    const depth = details().getByLabel(/^Depth to its water \(m/);
    const note = details().getByRole('button', { name: 'Note the depth' });
    await depth.fill('23');
    await note.click();
    await expect.poll(() => textOf(details())).toContain('Say how it tastes as well.');
    await details().getByLabel('It tastes').selectOption('fresh');
    await depth.fill('900');
    await note.click();
    await expect.poll(() => textOf(details())).toContain('Needs a depth from 0 to 500 m.');
    await depth.fill('23');
    await note.click();
    await settled(page);
    await details().getByText('noted as 23 m').waitFor();
    // Another depth needs no taste again.
    await depth.fill('31');
    await note.click();
    await settled(page);
    await details().getByText('noted as 31 m').waitFor();
    expect(await textOf(details())).not.toContain('Needs a depth');
  });
});

describe('the notes', () => {
  it('take a point of your own by typed co-ordinates, and say what is wrong with them', async () => {
    await openTab(page, 'Notes');
    await panel().getByText('Add a point of your own').click();
    const { lon, lat } = site.demo.analysis.passings.find(({ name }) => name === 'Dune station')!;
    const form = panel().locator('.new-point form');
    await form.getByLabel('Name').fill('Low farm');
    await form.getByLabel('Where').fill('33,84');
    await form.getByRole('button', { name: 'Add the point' }).click();
    await page.locator('.page[data-phase="refused"]').waitFor();
    expect(await textOf(page.locator('.problem'))).toContain('a comma may stand for a decimal point');
    // The refusal was asked for.
    opened.faults.splice(0, opened.faults.length, ...opened.faults.filter((fault) => !fault.includes('422')));
    await panel().getByText('Change Low farm').click();
    expect(await textOf(panel().locator('.own-points li'))).toContain(
      'a comma may stand for a decimal point',
    );
    await panel().getByRole('button', { name: 'Take Low farm out' }).click();
    await settled(page);
    const degrees = (value: number, letters: string) =>
      `${letters[value < 0 ? 1 : 0]} ${Math.floor(Math.abs(value))} ${((Math.abs(value) % 1) * 60).toFixed(3)}`;
    await form.getByLabel('Name').fill('Low farm');
    await form.getByLabel('Where').fill(`${degrees(lat, 'NS')} ${degrees(lon, 'EW')}`);
    await form.getByLabel('Gives').selectOption('drinking water');
    await form.getByLabel('At most (l)').fill('100');
    await form.getByLabel('Who said it').fill('the farmer');
    await form.getByRole('button', { name: 'Add the point' }).click();
    await settled(page);
    await openSupply('Low farm');
    expect(await textOf(details())).toContain('Your own point, noted on');
    expect(await textOf(details())).toContain('own/noted/low-farm');
  });

  it('take one at the place that is clicked on the strip, and stay open for it', async () => {
    await openTab(page, 'Notes');
    const strip = page.locator('.strip-place [role="slider"], .strip-place svg').first();
    const box = (await strip.boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.4, box.y + box.height * 0.5);
    const where = panel().locator('.new-point').getByLabel('Where');
    await expect.poll(() => where.inputValue()).toMatch(/^-3\d\.\d{5}, \d\d\.\d{5}$/);
    await panel().locator('.new-point').getByLabel('Name').fill('Half way depot');
    await panel().getByRole('button', { name: 'Add the point' }).click();
    await settled(page);
    expect(await textOf(panel())).toContain('Half way depot');
  });

  it('take one at the place that is clicked on the map', async () => {
    const drawn = await openPage(site, { ...WIDE, ...COARSE });
    try {
      await openTab(drawn.page, 'Notes');
      const canvas = drawn.page.locator('.map-canvas canvas');
      await canvas.waitFor();
      const where = drawn.page.locator('.new-point').getByLabel('Where');
      await drawn.page.getByText('Add a point of your own').click();
      const map = (await canvas.boundingBox())!;
      const taken = new Set<string>();
      for (const [x, y] of [
        [0.12, 0.2],
        [0.2, 0.1],
      ] as const) {
        await drawn.page.mouse.click(map.x + map.width * x, map.y + map.height * y);
        await expect.poll(async () => taken.has(await where.inputValue())).toBe(false);
        await expect.poll(() => where.inputValue()).toMatch(/^-\d\d\.\d{5}, \d\d\.\d{5}$/);
        taken.add(await where.inputValue());
      }
      expect(taken.size).toBe(2);
      expect(drawn.faults).toEqual([]);
    } finally {
      await drawn.close();
    }
  });

  it('go out as a file and come back, each once', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      panel().getByRole('button', { name: 'Save as GPX' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/-notes\.gpx$/);
    const text = await readFile((await download.path())!, 'utf8');
    expect(text).toContain('<name>Low farm</name>');
    const again = { name: 'notes.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(text) };
    const open = async () => {
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        panel().getByRole('button', { name: 'Open a file of notes' }).click(),
      ]);
      await chooser.setFiles(again);
    };
    await open();
    await panel().getByText('0 notes added.').waitFor();
    await panel().getByRole('button', { name: 'Take Low farm out' }).click();
    await settled(page);
    await open();
    await panel().getByText('1 note added.').waitFor();
    await settled(page);
    await panel().getByRole('button', { name: 'Take Low farm out' }).waitFor();
  });

  it('list what was found out, and take it back', async () => {
    const row = panel().locator('li', { hasText: 'Dune station does not work' });
    await row.getByRole('button', { name: /^Take out/ }).click();
    await settled(page);
    await row.waitFor({ state: 'detached' });
  });

  it('take a stretch that is closed, which is told before all else', async () => {
    await panel().getByRole('button', { name: 'Add a stretch' }).click();
    await settled(page);
    await expect.poll(() => textOf(page.locator('.todo'))).toContain('km 0 to km 1: Closed (you noted it on');
    await panel().getByRole('button', { name: 'Remove stretch 1' }).click();
    await settled(page);
    expect(await textOf(page.locator('.todo'))).not.toContain('Closed');
  });

  it('take the heat of a stretch, which is told with the water that it takes', async () => {
    await panel().getByRole('button', { name: 'Add a hot stretch' }).click();
    await settled(page);
    const stretch = panel().locator('fieldset', { hasText: 'Heat on a stretch' });
    await stretch.getByLabel('to', { exact: true }).fill('140');
    await settled(page);
    await stretch.getByLabel('Hottest by day, in the shade').fill('44');
    await settled(page);
    await stretch.getByLabel('Sun').selectOption('full');
    await settled(page);
    await expect
      .poll(() => textOf(panel()))
      .toMatch(/44 °C between km 0 and km 140: [\d.]+ L a day, [\d.]+ L more than elsewhere/);
    await panel().getByRole('button', { name: 'Remove hot stretch 1' }).click();
    await settled(page);
  });

  it('can be read and used by everybody', async () => {
    expect(await seriousIn(page, '.tab-panel')).toEqual([]);
  });
});

describe('the list to check before leaving', () => {
  it('is ticked off as confirmed today, and says so', async () => {
    await openTab(page, 'Carry');
    const list = page.locator('.check-list');
    await list.locator('li').first().waitFor();
    await settled(page);
    const item = list.locator('li', { has: page.getByRole('checkbox', { checked: false }) }).first();
    const name = await textOf(item.locator('b'));
    expect(name).not.toBe('');
    await item.getByRole('checkbox').click();
    await settled(page);
    const ticked = list.locator('li', { has: page.locator('b', { hasText: name }) }).first();
    await ticked.getByText(/confirmed on \d{4}-\d\d-\d\d/).waitFor();
    expect(await ticked.getByRole('checkbox').isChecked()).toBe(true);
    expect(opened.faults).toEqual([]);
  });
});
