import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { boxOf, touchesRoute } from '../../../server/app/near-route.ts';
import { routeOf } from '../../../server/core/route/build/route-of.ts';
import { boxesAlong } from '../../../server/core/route/cover/boxes-along.ts';
import { ExtractShelf } from '../../../server/store/extracts/extract-shelf.ts';
import { ingest } from '../../../server/store/extracts/ingest.ts';
import { suppliesAlong } from '../../../server/store/extracts/points-along.ts';
import type { StoreDriver } from '../../../server/store/port/port.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { demoPath } from '../../http/form.ts';
import { DRIVERS, describeDrivers, scratchFolder } from '../drivers.ts';
import { landFiles, loadedFrom, OSM } from '../small-land.ts';

const shelfOf = (driver: StoreDriver, folder = scratchFolder()) => ({
  folder,
  shelf: new ExtractShelf(driver, folder),
});
const reader = (source: string) => (path: string) => ingest(path, source, {});
const added = (shelf: ExtractShelf, path: string, name?: string) => {
  const fileName = path.split('/').at(-1) ?? path;
  return shelf.add({ path, fileName, name, isOurs: false }, reader(fileName));
};
const code = (promise: Promise<unknown>) =>
  promise.then(
    () => null,
    (error) => error.problem.code,
  );

describeDrivers('a shelf of extracts over', DRIVERS, (open) => {
  it('takes a file in once, with what it is and holds', async () => {
    const { shelf, folder } = shelfOf(open());
    const { extract } = landFiles();
    const land = await added(shelf, extract.path, 'Land');
    expect(land).toMatchObject({
      ...{ name: 'Land', fileName: 'land.osm', bytes: OSM.length, format: 'osm-xml' },
      bbox: [87.5, -36, 89, -34],
      shows: { fuel: true, water: true, general: true },
      counts: { supplies: 4, ground: 7 },
    });
    expect(land.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(readFileSync(await shelf.fileOf(land), 'utf8')).toBe(OSM);
    expect(await added(shelf, extract.path, 'Other')).toEqual(land);
    expect(shelf.all()).toEqual([land]);
    expect([shelf.named('Land')?.id, shelf.named('land')]).toEqual([land.id, null]);
    expect(readdirSync(join(folder, 'extracts'))).toEqual([land.id]);
  });

  it('gives each a name of its own', async () => {
    const { shelf } = shelfOf(open());
    await added(shelf, landFiles(OSM).extract.path);
    const second = landFiles(`${OSM}\n`).extract.path;
    expect(await code(added(shelf, second, 'land.osm'))).toBe('name-taken');
    expect((await added(shelf, second)).name).toBe('land.osm (2)');
  });

  it('leaves nothing behind of a file that cannot be read', async () => {
    const driver = open();
    const { shelf, folder } = shelfOf(driver);
    const { extract } = landFiles(OSM.slice(0, 900));
    expect(await code(added(shelf, extract.path))).toBe('xml-broken');
    expect([shelf.all(), driver.extracts.hidden(), readdirSync(join(folder, 'extracts'))]).toEqual([
      [],
      [],
      [],
    ]);
  });

  it('removes one whole', async () => {
    const { shelf, folder } = shelfOf(open());
    const { id } = await added(shelf, landFiles().extract.path);
    expect(await shelf.remove(id)).toBe(true);
    expect(await shelf.remove(id)).toBe(false);
    expect([shelf.all(), readdirSync(join(folder, 'extracts'))]).toEqual([[], []]);
  });

  it('sweeps what was left half done, and nothing while another process is at work', async () => {
    const driver = open();
    const { shelf, folder } = shelfOf(driver);
    const whole = await added(shelf, landFiles().extract.path);
    driver.extracts.begin('half');
    driver.extracts.addPoints('half', [{ box: [1, 1, 1, 1], json: '1' }]);
    for (const name of ['half', 'nobody']) writeFileSync(join(folder, 'extracts', name), 'x');
    mkdirSync(join(folder, 'incoming'));
    writeFileSync(join(folder, 'incoming', 'cut'), 'x');
    const claim = driver.claim('extracts');
    await shelf.sweep();
    expect(driver.extracts.hidden()).toEqual(['half']);
    expect(await code(shelf.remove(whole.id))).toBe('store-unusable');
    claim?.release();
    await shelf.sweep();
    expect([driver.extracts.hidden(), shelf.all()]).toEqual([[], [whole]]);
    expect(readdirSync(join(folder, 'extracts'))).toEqual([whole.id]);
    expect(existsSync(join(folder, 'incoming', 'cut'))).toBe(false);
  });
});

/** Supplies near a route by their key, and as reading the file gives them. */
async function bothWays(driver: StoreDriver, route: string, path: string, marginKm: number) {
  const source = path.split('/').at(-1) ?? path;
  const { shelf } = shelfOf(driver);
  const { id } = await shelf.add({ path, fileName: source, isOurs: false }, reader(source));
  const loaded = await loadedFrom({ path: route, source: route }, [{ path, source }]);
  const line = routeOf(loaded.document, { part: 'all', sparseStepM: 2000 });
  if (!line.ok) throw new Error('no route');
  const boxes = boxesAlong(line.value, marginKm);
  const byFile = loaded.supplies.features.filter(({ geometry, source: of }) => {
    const [w, n, e, north] = boxOf(geometry) ?? [-180, -90, 180, 90];
    return (
      of !== 'the route' && boxes.some((box) => w <= box[2] && e >= box[0] && n <= box[3] && north >= box[1])
    );
  });
  const within = byFile.filter(({ geometry }) => {
    const box = boxOf(geometry);
    return box !== null && touchesRoute(line.value, box, marginKm - 1);
  });
  // Little more is given than what lies so near.
  expect(within.length).toBeGreaterThan(byFile.length / 4);
  const nearer = loaded.supplies.features.filter(({ geometry, source: of }) => {
    const box = boxOf(geometry);
    return of !== 'the route' && box !== null && touchesRoute(line.value, box, marginKm - 1);
  });
  expect(nearer.length).toBe(within.length);
  const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
  return { byKey: suppliesAlong(shelf, id, line.value, marginKm).sort(byId), byFile: byFile.sort(byId) };
}

describeDrivers('supplies along a route by their spatial key, in', DRIVERS, (open) => {
  it.each([
    [demoPath('route.gpx'), demoPath('orrimar.osm.pbf'), 5],
    [demoPath('route.gpx'), demoPath('orrimar.overpass.json'), 50],
  ])(
    'are those that reading the file gives: %s with %s within %i km',
    { tags: 'slow' },
    async (route, path, km) => {
      const { byKey, byFile } = await bothWays(open(), route, path, km);
      expect(byFile.length).toBeGreaterThan(10);
      expect(byKey).toEqual(byFile);
    },
  );
});

describeReal('supplies of real maps along a route, by their spatial key', () => {
  it.each([
    ['switzerland-fuel-2026.overpass.json', 5],
    ['switzerland-fuel-2026.overpass.json', 50],
    ['liechtenstein-2015.osm.pbf', 5],
  ])('are those that reading the file gives: %s within %i km', { tags: 'slow' }, async (name, km) => {
    const [, open] = DRIVERS[0] ?? [];
    if (open === undefined) throw new Error('no driver');
    const { byKey, byFile } = await bothWays(
      open(),
      realPath('routes/swiss-grand-tour.gpx'),
      realPath(`extracts/${name}`),
      km,
    );
    expect(byFile.length).toBeGreaterThan(3);
    expect(byKey).toEqual(byFile);
  });
});
