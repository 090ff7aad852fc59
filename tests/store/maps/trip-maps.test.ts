import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describeReal, realPath } from '../../helpers/real.ts';
import { demoPath } from '../../http/form.ts';
import { analysed, GPX, keptFrom, landFiles, loadedAgain, loadedFrom, OSM } from '../small-land.ts';

const named = (path: string) => ({ path, source: path.split('/').at(-1) ?? path });

async function comparison(route: string, extracts: readonly string[]) {
  const files = extracts.map(named);
  const fromFiles = await loadedFrom(named(route), files);
  const maps = await keptFrom(named(route), files);
  return { fromFiles, kept: await loadedAgain(readFileSync(route), named(route).source, maps) };
}

describe('a trip loaded from what is kept of its maps', () => {
  it('is as it was read: supplies, surroundings, cover, ground and all', async () => {
    const { route, extract } = landFiles();
    const { fromFiles, kept } = await comparison(route.path, [extract.path]);
    expect(kept).toEqual(fromFiles);
    expect(kept.supplies.surroundings?.objects.length).toBeGreaterThan(0);
    expect(kept.supplies.features.map(({ id }) => id)).toContain('way/31');
    expect(kept.ground.length).toBeGreaterThan(3);
    expect(analysed(kept)).toEqual(analysed(fromFiles));
  });

  it.each(['orrimar.osm', 'orrimar.osm.pbf', 'orrimar.overpass.json'])(
    'gives the same answer for the demo as %s',
    { tags: 'slow' },
    async (name) => {
      const { fromFiles, kept } = await comparison(demoPath('route.gpx'), [demoPath(name)]);
      expect(kept).toEqual(fromFiles);
    },
  );

  it('takes a further extract as if both had been read together', async () => {
    const { route, extract } = landFiles();
    // A newer version of the station is a shop, and there is another tap.
    const newer = OSM.replace(
      'version="2" timestamp="2026-01-02T00:00:00Z"><tag k="amenity" v="fuel"/>',
      (text) => text.replace('version="2"', 'version="3"').replace('amenity" v="fuel', 'shop" v="kiosk'),
    ).replaceAll('<node id="2"', '<node id="77"');
    const { extract: other } = landFiles(newer, 'newer.osm');
    const before = await keptFrom(route, [extract]);
    const both = await keptFrom(route, [other], before);
    const kept = await loadedAgain(Buffer.from(GPX), 'along.gpx', both);
    const together = await loadedFrom(route, [extract, other]);
    expect(kept.supplies).toEqual(together.supplies);
    expect(kept.extents).toEqual(together.extents);
    expect(kept.supplies.features.map(({ id }) => id)).toEqual(expect.arrayContaining(['node/2', 'node/77']));
    expect(kept.supplies.features.map(({ id }) => id)).not.toContain('node/1');
  });

  it('keeps what was left out of the ground', async () => {
    const { route, extract } = landFiles();
    const maps = { ...(await keptFrom(route, [extract])), groundLeftOut: 7 };
    const { cautions } = (await loadedAgain(Buffer.from(GPX), 'along.gpx', maps)).supplies;
    expect(cautions).toContainEqual({ code: 'ground-thinned', facts: { leftOut: 7 } });
  });
});

describeReal('what is kept of real maps', () => {
  it.each([
    [
      'routes/swiss-grand-tour.gpx',
      ['extracts/switzerland-fuel-2026.overpass.json', 'extracts/liechtenstein-2015.osm.pbf'],
    ],
    [
      'routes/swiss-grand-tour.gpx',
      ['extracts/liechtenstein-2013.osm.pbf', 'extracts/switzerland-fuel-2026.waypoints.gpx'],
    ],
  ])('is what was read: %s with %s', { tags: 'slow' }, async (route, extracts) => {
    const { fromFiles, kept } = await comparison(realPath(route), extracts.map(realPath));
    expect(kept).toEqual(fromFiles);
  });
});
