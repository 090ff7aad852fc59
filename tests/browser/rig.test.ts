import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import { formatMass, type UnitSystem } from '../../web/units/units.ts';
import { withVehicle } from '../../web/vehicle/vehicle-start.ts';
import { FULL_RIG } from '../helpers/full-plan.ts';
import {
  openPage,
  openTab,
  PHONE,
  plain,
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
let folder: string;
beforeAll(async () => {
  site = await startSite();
  folder = await mkdtemp(join(tmpdir(), 'drystage-rig-'));
  opened = await openPage(site, WIDE, { withMap: false });
  page = opened.page;
  await openTab(page, 'Rig');
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The analysis as the API gives it for this rig on the demo. */
async function reckoned(rig: RigFile): Promise<Analysis> {
  const response = await fetch(`${site.origin}/api/analyses/demo`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip: site.demo.said.trip }),
  });
  return ((await response.json()) as AnalysisReply).analysis;
}

const massText = (kg: number, units: UnitSystem = 'metric') => plain(formatMass(kg, units));
const section = (on: Page, title: string) =>
  on.locator('.rig-section', { has: on.locator('h4', { hasText: title }) });
const masses = (on: Page) => textOf(on.locator('.mass-table'));

/** Opens every part of the form and everything folded away in it: what opens may bring more to open. */
const unfold = (on: Page) =>
  on.waitForFunction(() => {
    const closed = document.querySelectorAll('.form details:not([open])');
    for (const each of closed) each.setAttribute('open', '');
    // A section brings what is in it only once it has opened.
    const open = [...document.querySelectorAll('.form details')];
    return closed.length === 0 && open.every((each) => each.childElementCount > 1);
  });

async function openRig(on: Page, name: string, text: string): Promise<void> {
  const path = join(folder, name);
  await writeFile(path, text);
  const [chooser] = await Promise.all([
    on.waitForEvent('filechooser'),
    on.getByRole('button', { name: 'Open a rig file' }).click(),
  ]);
  await chooser.setFiles(path);
}

/** The rig without its vehicle, to begin from nothing. */
function bare(): RigFile {
  const { vehicle: _vehicle, ...rig } = site.demo.said.rig;
  return rig;
}

describe('the rig in full', () => {
  it('begins with nothing forced: "add the vehicle" draws a typical one and says that it is typical', async () => {
    await openRig(page, 'bare.json', JSON.stringify(bare()));
    await page.locator('.side-view').waitFor({ state: 'detached' });
    // What is not told is folded; the index leads to it.
    const part = section(page, 'Vehicle');
    expect(await part.getAttribute('open')).toBeNull();
    await page.getByRole('navigation', { name: 'Parts of the rig' }).getByText('Vehicle').click();
    await expect.poll(() => textOf(page.locator('summary:focus'))).toMatch(/^Vehicle/);
    await part.getByRole('button', { name: 'Add the vehicle' }).click();
    await page.locator('.side-drawing svg').waitFor();
    await settled(page);
    // The button is gone: the keyboard goes on in the first field, not at the top of the page.
    const focused = page.locator(':focus');
    await expect
      .poll(() => focused.getAttribute('id'))
      .toBe(await page.getByRole('textbox', { name: 'Kerb mass' }).getAttribute('id'));
    const { mass } = await reckoned(withVehicle(bare()));
    await expect.poll(() => masses(page)).toContain(massText(mass!.states[0]!.totalKg));
    await expect.poll(() => textOf(page.locator('.typical-still'))).toContain('kerb mass');
  });

  it('weighs again as a figure is changed, and no longer calls it typical', async () => {
    await page.getByRole('textbox', { name: 'Kerb mass' }).fill('2600');
    const rig = withVehicle(bare());
    const { mass } = await reckoned({
      ...rig,
      vehicle: { ...rig.vehicle!, kerbKg: 2600, axleKg: { front: 1256, rear: 1344 } },
    });
    // Alone it contradicts the axle loads: refused beside the field, the last picture stays.
    await page.locator('.page[data-phase="refused"]').waitFor();
    await page.getByRole('textbox', { name: 'of it on the front axle' }).fill('1256');
    await page.getByRole('textbox', { name: 'on the rear axle' }).first().fill('1344');
    await settled(page);
    await expect.poll(() => masses(page)).toContain(massText(mass!.states[0]!.totalKg));
    await expect.poll(() => textOf(page.locator('.typical-still'))).not.toContain('kerb mass');
  });

  it('opens a file, draws it, and shows each state with the figures of the API', async () => {
    await openRig(page, 'full.json', JSON.stringify(FULL_RIG));
    const { mass } = await reckoned(FULL_RIG);
    await expect.poll(() => masses(page)).toContain(massText(mass!.states[0]!.rear!.kg));
    const radios = page.locator('.state-switch input');
    await expect.poll(() => radios.count()).toBe(mass!.states.length);
    for (const [index, state] of mass!.states.entries()) {
      await radios.nth(index).check();
      await expect.poll(() => masses(page)).toContain(massText(state.rear!.kg));
      await expect.poll(() => textOf(page.locator('.side-drawing'))).toContain(massText(state.front!.kg));
    }
    await page.locator('.name-row select').first().selectOption('us');
    await expect.poll(() => masses(page)).toContain(massText(mass!.states.at(-1)!.totalKg, 'us'));
    await page.locator('.name-row select').first().selectOption('metric');
  });

  it('is drawn to scale: the wheels stand as far apart as the wheelbase says', async () => {
    const [front, rear] = await page
      .locator('.side-drawing .wheel')
      .evaluateAll((wheels) => wheels.map((wheel) => Number(wheel.getAttribute('cx'))));
    const radius = Number(await page.locator('.side-drawing .wheel').first().getAttribute('r'));
    const spare = FULL_RIG.vehicle!.gear![0]!;
    const boxes = await page
      .locator('.side-drawing .gear .box')
      .evaluateAll((all) =>
        all.map((box) => Number(box.getAttribute('x')) + Number(box.getAttribute('width')) / 2),
      );
    const pxPerM = (rear! - front!) / 2.85;
    expect(radius / pxPerM).toBeCloseTo(0.38, 3);
    const away = boxes.map((x) => (x - front!) / pxPerM - spare.position!.behindFrontAxleM);
    expect(Math.min(...away.map(Math.abs))).toBeLessThan(0.005);
  });

  it('finds a field by its label: only what is found stays, Enter goes there', async () => {
    const box = page.getByRole('searchbox', { name: 'Find a field of the rig' });
    await box.fill('engine idling');
    await expect.poll(() => page.locator('.form .field').count()).toBe(1);
    await box.press('Enter');
    expect(await textOf(page.locator('.field:has(:focus)'))).toMatch(/^Engine idling/);
    await box.fill('no such field');
    await expect.poll(() => textOf(page.locator('.find-fields [role=status]'))).toMatch(/^No field/);
    await box.press('Escape');
    await expect.poll(() => page.locator('.form .field').count()).toBeGreaterThan(20);
    await page.locator('.side-drawing svg').waitFor();
  });

  it('saves every field that the file had', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the rig as a file' }).click(),
    ]);
    expect(JSON.parse(await readFile(await download.path(), 'utf8'))).toEqual(FULL_RIG);
  });

  it('says what is wrong with a file, with its name and line, and keeps what stood there', async () => {
    await openRig(page, 'wrong.yaml', 'fuel:\n  kind: diesel\n  wheels: 4\n');
    const refusal = page.locator('.panels [role=alert]').first();
    await expect.poll(() => textOf(refusal)).toMatch(/^wrong\.yaml, .*\(line \d+\)/);
    expect(await page.getByRole('textbox', { name: 'Name of the rig' }).inputValue()).toBe(FULL_RIG.name);
  });

  it('met no error but the refusals that were meant', () => {
    const meant = /the server responded with a status of 422/;
    expect(opened.faults.filter((fault) => !meant.test(fault))).toEqual([]);
  });
});

it('every part of the form, all of it unfolded, is fit for screen readers and fits the screen, dark too', async () => {
  const { page: other, close } = await openPage(site, PHONE, { withMap: false });
  const tooWide = () =>
    other.evaluate(() =>
      [...document.querySelectorAll('.rig-section, .side-view')]
        .filter((part) => part.scrollWidth > part.clientWidth + 1)
        .map((part) => `${part.className} ${part.querySelector('h4')?.textContent}`),
    );
  try {
    await openTab(other, 'Rig');
    await openRig(other, 'full.json', JSON.stringify(FULL_RIG));
    await other.locator('.side-drawing svg').waitFor();
    await unfold(other);
    expect(await seriousIn(other, '.panels')).toEqual([]);
    expect(await tooWide()).toEqual([]);
    await other.setViewportSize(WIDE.viewport);
    await other.emulateMedia({ colorScheme: 'dark' });
    expect(await seriousIn(other, '.panels', { colours: true })).toEqual([]);
    expect(await tooWide()).toEqual([]);
  } finally {
    await close();
  }
});
