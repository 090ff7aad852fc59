import type { MapLibreMap } from 'maplibre-gl';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LIGHT } from '../../../web/map/style/palette.ts';
import { openPage, type Site, startSite, type WatchedPage } from '../site.ts';
import { LAND, type Place, SEA } from './places.ts';

let site: Site;
let opened: WatchedPage;
beforeAll(async () => {
  site = await startSite();
  // Half as many pixels either way: software draws each of them.
  const options = { viewport: { width: 1100, height: 760 }, deviceScaleFactor: 0.5 };
  opened = await openPage(site, { ...options, reducedMotion: 'reduce' });
  // The world comes by itself, after the map.
  await opened.page.getByText('outline Natural Earth').waitFor();
  await opened.page.evaluate(keepGround);
});
afterAll(async () => {
  await opened?.close();
  await site?.close();
});

/** What the map says of a place: by its layers, and by the colour that it has there. */
interface Told {
  name: string;
  land: boolean;
  seaColour: boolean;
}

/** Runs in the page: leaves of the map what tells land from sea, which is drawn in a fraction of the time. */
async function keepGround(): Promise<void> {
  const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
  await map.once('idle');
  for (const { id } of map.getStyle().layers)
    if (!['background', 'world', 'land'].includes(id)) map.removeLayer(id);
  // The page would draw them anew once its plan is made.
  Object.assign(map, { setStyle: () => map, setFilter: () => map });
}

/** Runs in the page: looks at each place at one zoom, from as few views as show them all well inside. */
async function look({ places, zoom, sea }: { places: readonly Place[]; zoom: number; sea: string }) {
  const { map } = document.querySelector('.map-canvas') as Element & { map: MapLibreMap };
  const canvas = map.getCanvas();
  const gl = canvas.getContext('webgl2');
  if (gl === null) throw new Error('the map is not drawn by WebGL 2');
  const seaBytes = [1, 3, 5].map((at) => Number.parseInt(sea.slice(at, at + 2), 16));
  const [width, height] = [canvas.clientWidth, canvas.clientHeight];
  const scale = canvas.width / width;
  const told: Told[] = [];
  let left = [...places];
  while (left.length > 0) {
    const [, lon, lat] = left[0]!;
    map.jumpTo({ center: [lon, lat], zoom });
    // What was drawn can be read in the same turn only.
    for (map.redraw(); !map.areTilesLoaded(); map.redraw()) await new Promise((go) => setTimeout(go, 4));
    const pixel = new Uint8Array(4);
    const outside: Place[] = [];
    for (const place of left) {
      const { x, y } = map.project([place[1], place[2]]);
      if (!(x > 4 && y > 4 && x < width - 4 && y < height - 4)) {
        outside.push(place);
        continue;
      }
      const land = map.queryRenderedFeatures([x, y], { layers: ['world', 'land'] }).length > 0;
      gl.readPixels(
        Math.round(x * scale),
        Math.round((height - y) * scale),
        1,
        1,
        gl.RGBA,
        gl.UNSIGNED_BYTE,
        pixel,
      );
      const seaColour = seaBytes.every((byte, channel) => Math.abs(byte - pixel[channel]!) <= 4);
      told.push({ name: place[0], land, seaColour });
    }
    if (outside.length === left.length) throw new Error(`${left[0]![0]} cannot be brought into view`);
    left = outside;
  }
  return told;
}

describe('the world on the map', () => {
  it('has some 200 places to be asked for', () => {
    expect(LAND.length + SEA.length).toBeGreaterThanOrEqual(200);
  });

  // Tiles of a quarter of the world, of a continent's part, and of a country.
  it.each([2, 3, 5])(
    'is land where there is land and sea where there is sea, at zoom %i',
    { tags: 'slow' },
    async (zoom) => {
      const wrong = async (places: readonly Place[], isLand: boolean) => {
        const told = await opened.page.evaluate(look, { places, zoom, sea: LIGHT.sea });
        expect(told.length).toBe(places.length);
        return told.filter(({ land, seaColour }) => land !== isLand || seaColour === isLand);
      };
      expect(await wrong(LAND, true)).toEqual([]);
      expect(await wrong(SEA, false)).toEqual([]);
    },
  );

  it('met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});
