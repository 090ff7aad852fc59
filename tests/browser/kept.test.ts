import type { Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import {
  demoFile,
  openPage,
  openTab,
  PHONE,
  panelButton,
  type Site,
  seriousIn,
  settled,
  startSite,
  type WatchedPage,
  WIDE,
} from './site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site?.close());
beforeEach(async () => {
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
});
afterEach(() => opened?.close());

const holds = (on: Page = page): Locator => on.getByRole('textbox', { name: 'Holds', exact: true }).first();
const saved = (on: Page = page): Promise<void> => on.locator('.saving[data-saving="saved"]').waitFor();
const idOf = (on: Page): string | null => new URL(on.url()).searchParams.get('trip');

/** Types another tank into the rig and waits until it is reckoned and saved. */
async function tank(litres: number, on: Page = page): Promise<void> {
  await holds(on).fill(String(litres));
  await settled(on);
  await saved(on);
}

async function startOwn(): Promise<void> {
  await openTab(page, 'Rig');
  await tank(150);
}

describe('a change', () => {
  it('makes a trip of one’s own of the demo, which reload, Back and a bookmark bring back as it was', async () => {
    await startOwn();
    const address = page.url();
    expect(idOf(page)).not.toBeNull();
    expect(new URL(address).searchParams.get('panel')).toBe('rig');

    await page.reload();
    await settled(page);
    expect(await holds().inputValue()).toBe('150');

    await openTab(page, 'Supplies');
    await page.goBack();
    await panelButton(page, 'Rig').waitFor();
    expect(page.url()).toBe(address);

    const other = await page.context().newPage();
    await other.goto(address);
    await other.locator('.strip-place svg').first().waitFor();
    expect(await holds(other).inputValue()).toBe('150');
    expect(opened.faults).toEqual([]);
  });

  it('is undone and redone, by button and by key, and every state is on the list', async () => {
    await startOwn();
    await tank(160);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => holds().inputValue()).toBe('150');
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => holds().inputValue()).toBe('160');
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await expect.poll(() => holds().inputValue()).toBe('150');
    await page.getByRole('button', { name: 'Changes' }).click();
    const list = page.getByRole('dialog', { name: 'Changes of this trip' });
    expect(await list.getByRole('listitem').count()).toBe(3);
    expect(await list.getByRole('listitem').first().textContent()).toContain('160');
    await list.getByRole('listitem').last().getByRole('button', { name: 'Go here' }).click();
    await expect.poll(() => holds().inputValue()).toBe('130');
  });

  it('that cannot be reckoned is kept all the same, and shown with its refusal after a reload', async () => {
    await startOwn();
    await page.getByLabel('Uses at best').fill('90');
    await page.locator('.page[data-phase="refused"]').waitFor();
    await saved();
    await page.reload();
    await page.locator('.page[data-phase="refused"]').waitFor();
    expect(await page.getByLabel('Uses at best').inputValue()).toBe('90');
    expect(await page.locator('.strip-place svg').count()).toBeGreaterThan(0);
  });
});

describe('trouble', () => {
  it('with the server loses nothing: the change waits in the browser, over a reload too', async () => {
    await startOwn();
    const id = idOf(page);
    await page.route(`**/api/trips/${id}`, (route) =>
      route.request().method() === 'PUT' ? route.abort() : route.continue(),
    );
    await holds().fill('170');
    await page.locator('.saving[data-saving="waiting"]').waitFor();
    expect(await page.locator('.saving').textContent()).toContain('kept in this browser');
    await page.unroute(`**/api/trips/${id}`);
    await page.reload();
    await settled(page);
    await saved();
    expect(await holds().inputValue()).toBe('170');
    const kept = (await (await fetch(`${site.origin}/api/trips/${id}`)).json()) as {
      rig: { fuel: { tanks: { litres: number }[] } };
    };
    expect(kept.rig.fuel.tanks[0]?.litres).toBe(170);
  });

  it('of two windows is told, with both versions, and neither is lost', async () => {
    await startOwn();
    const other = await page.context().newPage();
    await other.goto(page.url());
    await other.locator('.strip-place svg').first().waitFor();
    await tank(200, other);
    await holds().fill('180');
    const told = page.getByRole('alert').filter({ hasText: 'changed elsewhere' });
    await told.waitFor();
    await told.getByRole('button', { name: 'Go on with the other' }).click();
    await expect.poll(() => holds().inputValue()).toBe('200');
    await saved();
    await page.getByRole('button', { name: 'Redo' }).click();
    await expect.poll(() => holds().inputValue()).toBe('180');
  });

  it('with the address is told, with a way on', async () => {
    await page.goto(`${site.origin}/?trip=no-such-trip`);
    await page.getByRole('alert').waitFor();
    await page.getByRole('button', { name: 'Open the demo' }).click();
    await page.locator('.strip-place svg').first().waitFor();
    expect(idOf(page)).toBeNull();
  });
});

describe('map data', () => {
  const dialog = () => page.getByRole('dialog', { name: 'Map data of this trip' });
  const listed = () => dialog().locator('.maps').first().getByRole('listitem');

  it('is added to a trip from a file, kept, and still there after a reload', async () => {
    await page.getByRole('button', { name: 'Maps' }).click();
    expect(await listed().count()).toBe(1);
    expect(await listed().textContent()).toContain('as of 2026-04-01');
    await dialog().locator('input[type=file]').setInputFiles(demoFile('orrimar.overpass.json'));
    await expect.poll(() => listed().count()).toBe(2);
    expect(await listed().last().textContent()).toContain('orrimar.overpass');
    await saved();
    expect(idOf(page)).not.toBeNull();
    await page.keyboard.press('Escape');
    await page.reload();
    await settled(page);
    await page.getByRole('button', { name: 'Maps' }).click();
    expect(await listed().count()).toBe(2);
    expect(opened.faults).toEqual([]);
  });

  it('is asked of an Overpass server once it was shown what, told how far it misses, and taken off', async () => {
    const far = new FormData();
    const away = '<osm version="0.6"><bounds minlat="10" minlon="10" maxlat="11" maxlon="11"/></osm>';
    far.append('extract', new Blob([away]), 'far.osm');
    await fetch(`${site.origin}/api/extracts`, { method: 'POST', body: far });
    await page.getByRole('button', { name: 'Maps' }).click();
    const missed = dialog().getByRole('listitem').filter({ hasText: 'far.osm' });
    await missed.waitFor();
    expect(await missed.textContent()).toMatch(/misses the route by \d{4} km/);
    await dialog().getByRole('button', { name: 'Ask Overpass for this route' }).click();
    const question = dialog().getByRole('form', { name: 'What Overpass would be asked' });
    await question.getByText('Nothing has been sent yet').waitFor();
    expect(await question.textContent()).toMatch(/\d+ queries would go to http:\/\/127\.0\.0\.1/);
    await question.getByText('The text of the first query').click();
    expect(await question.locator('pre').textContent()).toContain('[out:json]');
    expect(await seriousIn(page, 'dialog')).toEqual([]);
    await question.getByLabel('Keep it as').fill('Asked for');
    await question.getByRole('button', { name: 'Send these queries' }).click();
    await expect.poll(() => listed().count()).toBe(2);
    expect(await listed().last().textContent()).toMatch(
      /Asked for as of 2026-04-30, with \d+ supplies along/,
    );
    await dialog().getByRole('button', { name: 'Take off Asked for' }).click();
    await expect.poll(() => listed().count()).toBe(1);
    await dialog().getByRole('button', { name: 'Add Asked for to this trip' }).waitFor();
    expect(opened.faults).toEqual([]);
  });

  it('that cannot be read is refused in words, and the trip stays as it was', async () => {
    await page.getByRole('button', { name: 'Maps' }).click();
    await dialog()
      .locator('input[type=file]')
      .setInputFiles({
        name: 'broken.osm.pbf',
        mimeType: 'application/octet-stream',
        buffer: Buffer.from('no map'),
      });
    await dialog().getByRole('alert').waitFor();
    expect(await dialog().getByRole('alert').textContent()).toContain('broken.osm.pbf');
    expect(await listed().count()).toBe(1);
    expect(idOf(page)).toBeNull();
  });
});

it('a rig is kept under a name, taken for the trip, and removed', async () => {
  await openTab(page, 'Rig');
  const before = await holds().inputValue();
  await page.getByText('Rigs kept for other trips').click();
  await page.getByLabel('Keep this rig as').fill('Wagon of the test');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  const take = page.getByRole('button', { name: 'Take Wagon of the test' });
  await take.waitFor();
  await page.getByRole('button', { name: 'Keep in place of that one' }).waitFor();
  expect(await seriousIn(page, '.kept-rigs')).toEqual([]);
  await tank(Number(before) + 20);
  await take.click();
  await expect.poll(() => holds().inputValue()).toBe(before);
  await settled(page);
  await saved();
  await page.getByText('Rigs kept for other trips').click();
  await page.getByRole('button', { name: 'Remove Wagon of the test' }).click();
  await take.waitFor({ state: 'detached' });
  expect(opened.faults).toEqual([]);
});

describe('the list of trips', () => {
  const list = () => page.getByRole('dialog', { name: 'Trips' });
  const rowOf = (name: string) => list().getByRole('listitem').filter({ hasText: name });

  it('opens, renames, doubles, deletes and takes back', async () => {
    await startOwn();
    await page.getByRole('button', { name: 'Trips' }).click();
    const mine = list().locator('li[aria-current]');
    await mine.getByRole('button', { name: 'Rename' }).click();
    await mine.getByLabel('Name of the trip').fill('Across in May');
    await mine.getByRole('button', { name: 'Name it so' }).click();
    await rowOf('Across in May').first().waitFor();
    await rowOf('Across in May').first().locator('svg.trip-picture').waitFor();
    await rowOf('Across in May').first().getByRole('button', { name: 'Duplicate' }).click();
    const copy = rowOf('Across in May (2)');
    await copy.waitFor();
    expect(await seriousIn(page, 'dialog')).toEqual([]);
    await copy.getByRole('button', { name: 'Delete' }).click();
    await copy.waitFor({ state: 'detached' });
    await list().getByRole('button', { name: 'Take it back' }).click();
    await copy.getByRole('button', { name: 'Across in May (2)' }).click();
    await list().waitFor({ state: 'detached' });
    await settled(page);
    await openTab(page, 'Rig');
    expect(await holds().inputValue()).toBe('150');
  });

  it('opens the demo as it was, and Back goes to the trip again', async () => {
    await startOwn();
    const own = idOf(page);
    await page.getByRole('button', { name: 'Trips' }).click();
    await list().getByRole('button', { name: 'Orrimar, the demo', exact: true }).click();
    await page.locator('.saving[data-saving="own"]').waitFor();
    expect(idOf(page)).toBeNull();
    await openTab(page, 'Rig');
    expect(await holds().inputValue()).toBe('130');
    await page.goBack();
    await page.goBack();
    await saved();
    expect(idOf(page)).toBe(own);
    await expect.poll(() => holds().inputValue()).toBe('150');
  });

  it('gives a trip away as one file and takes it in again', async () => {
    await startOwn();
    await page.getByRole('button', { name: 'Trips' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      list().locator('li[aria-current]').getByRole('link', { name: 'Save as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.drystage\.json$/);
    const before = idOf(page);
    await list()
      .locator('input[type=file]')
      .setInputFiles(await download.path());
    await list().waitFor({ state: 'detached' });
    await expect.poll(() => idOf(page)).not.toBe(before);
    await settled(page);
    await openTab(page, 'Rig');
    expect(await holds().inputValue()).toBe('150');
  });

  it('takes in a trip’s file that is dropped on the page', async () => {
    const file = await (await fetch(`${site.origin}/api/trips/demo/export`)).text();
    const transfer = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], 'crossing.drystage.json'));
      return data;
    }, file);
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    await expect.poll(() => idOf(page)).not.toBeNull();
    await settled(page);
    expect(await page.getByRole('dialog').count()).toBe(0);
    await page.locator('.strip-place svg').first().waitFor();
  });

  it('can be used on a phone', async () => {
    await page.setViewportSize(PHONE.viewport);
    await page.getByRole('button', { name: 'Trips' }).click();
    await list().getByRole('listitem').first().waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
    expect(wide).toBe(false);
  });
});
