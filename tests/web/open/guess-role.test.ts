import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { guessRole, withFiles } from '../../../web/open/guess-role.ts';

const demo = (name: string): File =>
  new File([readFileSync(new URL(`../../../fixtures/orrimar/${name}`, import.meta.url))], name);

describe('what a file is for', () => {
  it("tells the demo's files apart, whatever their order", async () => {
    const names = ['rig.yaml', 'orrimar.osm.pbf', 'trip.yaml', 'route.gpx', 'orrimar.overpass.json'];
    const files = await withFiles([], names.map(demo));
    expect(Object.fromEntries(files.map((each) => [each.file.name, each.role]))).toEqual({
      'rig.yaml': 'rig',
      'orrimar.osm.pbf': 'extract',
      'trip.yaml': 'trip',
      'route.gpx': 'route',
      'orrimar.overpass.json': 'extract',
    });
  });

  it('goes by the content, not the name', () => {
    expect(guessRole('route.gpx', '<?xml version="1.0"?><osm version="0.6">', false)).toBe('extract');
    expect(guessRole('data.osm', '{"version":0.6,"elements":[]}', false)).toBe('extract');
    expect(guessRole('track.xml', '<?xml version="1.0"?><gpx version="1.1">', false)).toBe('route');
  });

  it('takes a second GPX for waypoints', () => {
    expect(guessRole('wells.gpx', '<gpx version="1.1">', true)).toBe('extract');
  });

  it('knows rig and trip as JSON', () => {
    expect(guessRole('a.json', '{\n  "fuel": {\n "tanks": []', false)).toBe('rig');
    expect(guessRole('b.json', '{ "onward": { "km": 0 } }', false)).toBe('trip');
  });

  it('lets a newer route or rig take over, and keeps all extracts', async () => {
    const first = await withFiles([], [demo('route.gpx'), demo('rig.yaml'), demo('orrimar.osm.pbf')]);
    const then = await withFiles(first, [demo('rig.yaml'), demo('orrimar.osm.pbf')]);
    expect(then.map((each) => each.role).sort()).toEqual(['extract', 'extract', 'rig', 'route']);
  });
});
