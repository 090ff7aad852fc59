import type { MapLibreMap } from 'maplibre-gl';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COARSE, openPage, openTab, type Site, startSite, type WatchedPage } from '../site.ts';

let site: Site;
let opened: WatchedPage;
let page: Page;
beforeAll(async () => {
  site = await startSite();
  opened = await openPage(site, {
    viewport: { width: 1200, height: 860 },
    reducedMotion: 'reduce',
    ...COARSE,
  });
  page = opened.page;
  await page.getByText('outline Natural Earth').waitFor();
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

/** Runs in the page: what of a layer is drawn now, by these of its properties. */
async function drawn({ layer, of }: { layer: string; of: string }): Promise<unknown[]> {
  const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
  if (!map.loaded()) await map.once('idle');
  return map.queryRenderedFeatures({ layers: [layer] }).map(({ properties }) => properties[of] as unknown);
}
/** Runs in the page: brings a place to so many pixels from the map's left and lower edges. */
async function bring({
  at,
  zoom,
  left,
  up,
}: {
  at: [number, number];
  zoom: number;
  left: number;
  up: number;
}) {
  const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
  map.jumpTo({ center: at, zoom });
  const { x, y } = map.project(at);
  map.panBy([x - left, y - (map.getContainer().clientHeight - up)], { animate: false });
  await map.once('idle');
}
const inMap = (of: string, layer: string) => page.evaluate(drawn, { layer, of });
const placeOf = (name: string) =>
  site.demo.map.supplies.features.find(({ properties }) => properties.name === name)!.geometry
    .coordinates as [number, number];

describe('the map', () => {
  it.each([
    [12, 200],
    [290, 55],
  ])(
    'shows the whole card of a supply %i px from its left and %i px from its lower edge',
    async (left, up) => {
      const at = placeOf('Dune station');
      await page.evaluate(bring, { at, zoom: 9, left, up });
      const box = (await page.locator('.map-canvas').boundingBox())!;
      await page.mouse.click(box.x + left, box.y + box.height - up);
      const card = page.getByRole('dialog', { name: 'Dune station' });
      await card.waitFor();
      const isInside = async () => {
        const inner = (await card.boundingBox())!;
        return (
          inner.x >= box.x &&
          inner.y >= box.y &&
          inner.x + inner.width <= box.x + box.width &&
          inner.y + inner.height <= box.y + box.height
        );
      };
      await expect.poll(isInside).toBe(true);
      await page.getByRole('button', { name: 'Close Dune station' }).click();
      await card.waitFor({ state: 'detached' });
    },
  );

  it('draws supplies together from afar, never those at the ends of a stretch that runs dry', async () => {
    await page.evaluate(bring, { at: placeOf('Dune station'), zoom: 3, left: 300, up: 300 });
    const together = (await inMap('point_count', 'clusters-hollow')) as number[];
    expect(Math.max(...together)).toBeGreaterThan(1);
    const alone = (await inMap('id', 'marks-key')) as string[];
    const ends = (['fuel', 'water'] as const).flatMap((commodity) =>
      site.demo.analysis[commodity].gaps
        .filter(({ verdict }) => verdict === 'short')
        .flatMap(({ from, to }) => [from.id, to.id]),
    );
    expect(ends.length).toBeGreaterThan(3);
    expect(alone).toEqual(expect.arrayContaining(ends));
  });

  it('goes nearer where several are drawn as one, until they stand apart', async () => {
    const zoom = () =>
      page.evaluate(() => {
        const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
        return map.getZoom();
      });
    await page.evaluate(bring, { at: placeOf('Dune station'), zoom: 5, left: 300, up: 300 });
    const before = await zoom();
    const at = await page.evaluate(() => {
      const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
      const marks = map.queryRenderedFeatures({ layers: ['marks-key', 'marks-hollow', 'marks-water'] });
      const placeOf = ({ geometry }: (typeof marks)[number]) =>
        map.project((geometry as GeoJSON.Point).coordinates as [number, number]);
      const free = map
        .queryRenderedFeatures({ layers: ['clusters-hollow'] })
        .map(placeOf)
        .find((one) =>
          marks.every((mark) => Math.hypot(placeOf(mark).x - one.x, placeOf(mark).y - one.y) > 10),
        );
      return free === undefined ? null : { x: free.x, y: free.y };
    });
    const box = (await page.locator('.map-canvas').boundingBox())!;
    await page.mouse.click(box.x + at!.x, box.y + at!.y);
    await expect.poll(zoom).toBeGreaterThan(before + 0.5);
  });

  it('has a north arrow only while it is turned, which turns it back', async () => {
    const north = page.getByRole('button', { name: /north/i });
    expect(await north.isVisible()).toBe(false);
    await page.evaluate(() => {
      const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
      map.rotateTo(50, { animate: false });
    });
    await north.click();
    await north.waitFor({ state: 'hidden' });
  });

  it('names every stop of the plan at every zoom, and draws what is carried along the route', async () => {
    await openTab(page, 'Carry');
    await page.locator('.plan[data-plan="whole"]').waitFor();
    await page.locator('.map-legend').getByText('full cans carried').waitFor({ state: 'attached' });
    for (const zoom of [4, 6]) {
      await page.evaluate(bring, { at: placeOf('Dune station'), zoom, left: 300, up: 300 });
      const named = (await inMap('id', 'names-stops')) as string[];
      const stops = await page.evaluate(() => {
        const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
        return map
          .queryRenderedFeatures({ layers: ['marks-key'], filter: ['==', ['get', 'used'], true] })
          .filter(({ properties }) => properties.label !== '')
          .map(({ properties }) => properties.id as string);
      });
      expect(stops.length).toBeGreaterThan(1);
      expect(named).toEqual(expect.arrayContaining(stops));
      for (const commodity of ['fuel', 'water']) {
        expect(await inMap('cans', `route-${commodity}-cans`)).not.toEqual([]);
        expect(await inMap('trouble', `route-${commodity}-left`)).not.toEqual([]);
      }
    }
  });

  it('follows the strip that is brought near by wheel, keys, buttons and drag, and leads it when it is moved', async () => {
    const strip = page.locator('.strip');
    const figures = async () =>
      (await page.locator('.strip .strip-figure').allTextContents()).map((figure) =>
        Number(figure.replace(',', '')),
      );
    const span = async () => {
      const all = await figures();
      return Math.max(...all) - Math.min(...all);
    };
    const mapWidth = () =>
      page.evaluate(() => {
        const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
        return map.getBounds().getEast() - map.getBounds().getWest();
      });
    await strip.focus();
    await page.keyboard.press('0');
    await expect.poll(figures).toEqual(expect.arrayContaining([200, 1400]));
    await page.evaluate(() => {
      const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
      map.jumpTo({ zoom: 4 });
    });
    const whole = await span();
    const wide = await mapWidth();
    const box = (await strip.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.wheel(0, -480);
    await expect.poll(span).toBeLessThan(whole / 2);
    await expect.poll(mapWidth).toBeLessThan(wide / 2);

    const before = await figures();
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + 150, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => Math.min(...(await figures()))).toBeGreaterThan(Math.min(...before));
    // A drag chooses nothing.
    expect(await page.locator('.strip .strip-chosen').count()).toBe(0);

    await strip.focus();
    await page.keyboard.press('+');
    await expect.poll(span).toBeLessThan(whole / 5);
    await page.keyboard.press('End');
    await expect.poll(async () => Math.max(...(await figures()))).toBeGreaterThan(1400);
    await page.getByRole('button', { name: 'Whole route' }).click();
    await expect.poll(span).toBe(whole);
    // The map has followed before it is moved by hand.
    const { bbox } = site.demo.map;
    await expect.poll(mapWidth).toBeGreaterThan(bbox[2] - bbox[0]);

    await page.evaluate(bring, { at: placeOf('Dune station'), zoom: 6, left: 250, up: 250 });
    const canvas = (await page.locator('.map .maplibregl-canvas').boundingBox())!;
    await page.mouse.move(canvas.x + 250, canvas.y + canvas.height - 250);
    await page.mouse.wheel(0, -300);
    await expect.poll(span).toBeLessThan(whole * 0.8);
    await page.keyboard.press('0');
  });

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});
