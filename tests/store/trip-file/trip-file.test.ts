import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packMaps, unpackMaps } from '../../../server/store/maps/trip-maps.ts';
import { readTripFile } from '../../../server/store/trip-file/read-trip-file.ts';
import { tripFileName, tripFileText } from '../../../server/store/trip-file/write-trip-file.ts';
import { TRIP_FILE_VERSION } from '../../../server/store/trip-file/written-trip.ts';
import { openTripFile } from '../../../server/work/open-trip-file.ts';
import { scratchFolder } from '../drivers.ts';
import { RIG } from '../new-trip.ts';
import { analysed, GPX, keptFrom, landFiles, loadedAgain, loadedFrom, usable } from '../small-land.ts';

const VERSION_1 = new URL('../../fixtures/store/version-1.drystage.json', import.meta.url);

async function written(route = Buffer.from(GPX)) {
  const files = landFiles();
  const maps = packMaps(await keptFrom(files.route, [files.extract]));
  const text = tripFileText({
    ...{ name: 'Along', notes: 'Ask at\nthe "Ollin" pump', notice: null, rig: RIG, trip: { corridorKm: 6 } },
    route: { fileName: 'along.gpx', bytes: route },
    maps,
    written: '2026-05-01T08:00:00.000Z',
  });
  return { text, files };
}

const changed = (text: string, change: (file: Record<string, unknown>) => void): string => {
  const file = JSON.parse(text) as Record<string, unknown>;
  change(file);
  return JSON.stringify(file);
};

describe('a trip written to a file and read back', () => {
  it('gives the same analysis as the files it was read from', async () => {
    const { text, files } = await written();
    const { route, maps, rig, trip, ...rest } = usable(readTripFile(text, 'a.drystage.json'));
    const loaded = await loadedAgain(route.bytes, route.fileName, unpackMaps(maps));
    const fromFiles = await loadedFrom(files.route, [files.extract]);
    expect(loaded).toEqual(fromFiles);
    expect(analysed(loaded, rig, trip)).toEqual(analysed(fromFiles, RIG, { corridorKm: 6 }));
    expect({ rig, trip, ...rest }).toEqual({
      ...{ rig: RIG, trip: { corridorKm: 6 }, name: 'Along', notice: null, extracts: ['land.osm'] },
      notes: 'Ask at\nthe "Ollin" pump',
    });
    expect(Buffer.from(route.bytes).toString()).toBe(GPX);
  });

  it('keeps a route that is no UTF-8 to the byte', async () => {
    const latin = Buffer.from(GPX, 'latin1');
    const { text } = await written(latin);
    expect(text).toContain('"gpxBase64"');
    expect(Buffer.from(usable(readTripFile(text, 'a')).route.bytes).equals(latin)).toBe(true);
  });

  it('has each object of the map on a line of its own', async () => {
    const { text } = await written();
    const line = text.split('\n').find((one) => one.includes('"Ollin"') && one.includes('"node"'));
    expect(JSON.parse((line ?? '').replace(/,$/, ''))).toMatchObject({ type: 'node', id: 1 });
  });
});

describe('a file of version 1', () => {
  it('is read as what it would be today', async () => {
    const old = usable(readTripFile(readFileSync(VERSION_1, 'utf8'), 'version-1.drystage.json'));
    expect(old).toMatchObject({ name: 'Along', notes: '', trip: { corridorKm: 6 }, rig: RIG });
    const files = landFiles();
    const loaded = await loadedAgain(old.route.bytes, old.route.fileName, unpackMaps(old.maps));
    expect(analysed(loaded)).toEqual(analysed(await loadedFrom(files.route, [files.extract])));
  });
});

describe('a file that cannot be opened', () => {
  const refusal = (text: string) => {
    const outcome = readTripFile(text, 'a.json');
    return outcome.ok ? null : outcome.problem;
  };

  it('is refused with what is wrong: cut short, of another kind, or too new', async () => {
    const { text } = await written();
    const code = 'trip-file-invalid';
    expect(refusal('')).toMatchObject({ code, came: 'an empty file' });
    expect(refusal(text.slice(0, 5000))).toMatchObject({ code, came: 'a file that ends too early' });
    expect(refusal('<gpx/>')).toMatchObject({ code, came: 'text that is not JSON' });
    expect(refusal('{"type":"FeatureCollection"}')).toMatchObject({ code, came: 'JSON of another kind' });
    expect(refusal('[]')).toMatchObject({ code, came: 'JSON of another kind' });
    expect(refusal('{"drystage":"trip"}')).toMatchObject({ code, place: '/version' });
    expect(
      refusal(changed(text, (file) => Object.assign(file, { version: TRIP_FILE_VERSION + 1 }))),
    ).toMatchObject({
      code: 'trip-file-too-new',
      came: `a file of version ${TRIP_FILE_VERSION + 1}`,
    });
  });

  it.each([
    ['a rig that is none', { rig: { fuel: {} } }, '/rig/water'],
    ['a figure out of range', { trip: { corridorKm: -1 } }, '/trip/corridorKm'],
    ['no route', { route: { fileName: 'a.gpx' } }, '/route'],
    ['the route twice', { route: { fileName: 'a.gpx', gpx: '', gpxBase64: '' } }, '/route'],
    ['no maps', { maps: undefined }, '/maps'],
    [
      'maps of another form',
      { maps: { extracts: [{}], extents: [], ground: [], groundLeftOut: 0 } },
      '/maps/extracts/0/source',
    ],
    ['no name', { name: '' }, '/name'],
  ])('is refused with the place of %s', async (_name, parts, place) => {
    const { text } = await written();
    const problem = refusal(changed(text, (file) => Object.assign(file, parts)));
    expect(problem).toMatchObject({ code: 'trip-file-invalid', source: 'a.json', place });
  });

  it('is tried before it is taken: a route that is none, a map that makes no sense', async () => {
    const { text } = await written();
    const path = join(scratchFolder(), 'trip.json');
    const opened = async (content: string) => {
      writeFileSync(path, content);
      const outcome = await openTripFile({ path, source: 'trip.json' });
      return outcome.ok ? null : outcome.problem;
    };
    expect(await opened(text)).toBeNull();
    const noGpx = changed(text, (file) =>
      Object.assign(file, { route: { fileName: 'a.gpx', gpx: '<kml/>' } }),
    );
    expect(await opened(noGpx)).toMatchObject({ code: 'not-gpx', source: 'a.gpx' });
    const noSense = text
      .replaceAll('"what":"river"', '"what":"unheard-of"')
      .replaceAll('"phrase"', '"phrases"');
    expect(await opened(noSense)).toBeNull();
    const noFacts = changed(text, (file) => {
      const { extracts } = file.maps as { extracts: { cautions: unknown[] }[] };
      for (const extract of extracts) extract.cautions.push({ code: 'no-such-caution', facts: {} });
    });
    expect(await opened(noFacts)).toMatchObject({ code: 'trip-file-invalid', source: 'trip.json' });
  });
});

describe('the name of the file', () => {
  it.each([
    ['Across in May', 'Across in May.drystage.json'],
    ['a/b\\c: *?', 'a b c.drystage.json'],
    ['..', 'trip.drystage.json'],
    ['Дорога на юг', 'Дорога на юг.drystage.json'],
  ])('of "%s" is %s', (name, fileName) => {
    expect(tripFileName(name)).toBe(fileName);
  });
});
