import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import { dataFolder } from '../../server/store/data-folder.ts';
import { demoPath } from '../http/form.ts';
import { SmallOverpass } from '../io/overpass/small-overpass.ts';
import { runCli } from './run-cli.ts';

let folder = '';
const before = process.env.DRYSTAGE_DATA;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drystage-cli-kept-'));
  process.env.DRYSTAGE_DATA = join(folder, 'data');
});
afterAll(() => {
  process.env.DRYSTAGE_DATA = before;
  rmSync(folder, { recursive: true });
});

const ROUTE = demoPath('route.gpx');
const EXTRACT = demoPath('orrimar.osm.pbf');
const RIG = demoPath('rig.yaml');
const TRIP = demoPath('trip.yaml');
const json = async (...args: string[]) => {
  const { status, out, err } = await runCli(...args, '--json');
  expect([status, err]).toEqual([0, '']);
  return JSON.parse(out);
};
/** An answer that does not tell how its extract is called. */
const unnamed = (analysis: Analysis) => {
  const { extracts, ...rest } = analysis;
  return { ...rest, extracts: extracts.map((one) => ({ ...one, source: '' })) };
};

describe('the data folder', () => {
  it.each([
    [{ DRYSTAGE_DATA: '/data/here' }, 'linux', '/data/here'],
    [{ DRYSTAGE_DATA: ' ', XDG_DATA_HOME: '/xdg' }, 'linux', '/xdg/drystage'],
    [{ XDG_DATA_HOME: 'not/absolute' }, 'linux', '/home/me/.local/share/drystage'],
    [{}, 'linux', '/home/me/.local/share/drystage'],
    [{}, 'darwin', '/home/me/Library/Application Support/Drystage'],
    [{ APPDATA: '/roaming' }, 'win32', '/roaming/Drystage'],
  ] as const)('of %j on %s is %s', (env, platform, path) => {
    expect(dataFolder(env, platform, '/home/me')).toBe(path);
  });

  it('is named by the help of the commands', async () => {
    for (const command of [['--help'], ['extract', '--help'], ['trip', '--help']]) {
      expect((await runCli(...command)).out).toContain(
        process.platform === 'win32' ? 'Drystage' : 'drystage',
      );
    }
    expect((await runCli('extract', '--help')).out).toContain(join(folder, 'data'));
  });
});

describe('kept extracts on the command line', { tags: 'slow' }, () => {
  it('are added, listed, taken by name with the answer of the file, and removed', async () => {
    expect((await runCli('extract', 'list')).out).toBe('No extracts are kept.\n');
    const added = await runCli('extract', 'add', EXTRACT, '--name', 'Orrimar');
    expect(added).toMatchObject({ status: 0, err: '' });
    expect(added.out).toMatch(/^Kept as "Orrimar": \d+ supplies, \d+ roads and places\.\n$/);
    expect((await runCli('extract', 'add', EXTRACT)).out).toContain('Kept already as "Orrimar"');
    const { extracts } = await json('extract', 'list');
    expect(extracts).toMatchObject([{ name: 'Orrimar', fileName: 'orrimar.osm.pbf', format: 'pbf' }]);
    expect((await runCli('extract', 'list')).out).toMatch(/Orrimar +\d{4}-\d\d-\d\d +\d+ /);
    const options = ['--rig', RIG, '--trip', TRIP];
    const byName = await json('gaps', ROUTE, '--supply', 'Orrimar', ...options);
    const byFile = await json('gaps', ROUTE, '--supply', EXTRACT, ...options);
    expect(byName.extracts[0].source).toBe('Orrimar');
    expect(unnamed(byName)).toEqual(unnamed(byFile));
    expect((await runCli('extract', 'remove', 'Orrimar')).out).toBe('"Orrimar" is kept no longer.\n');
    expect(await json('extract', 'list')).toEqual({ extracts: [] });
    const gone = await runCli('gaps', ROUTE, '--supply', 'Orrimar', ...options);
    expect(gone).toMatchObject({ status: 2 });
    expect(gone.err).toContain('Orrimar');
  });
});

describe('a corridor fetched on the command line', { tags: 'slow' }, () => {
  const overpass = new SmallOverpass([{ id: 1, lat: -35, lon: 85.05, tags: { amenity: 'fuel' } }]);
  afterAll(() => overpass.stop());

  it('is shown before anything is sent, asked for with --yes, and kept under its name', async () => {
    const { address } = await overpass.start();
    const route = join(folder, 'short.gpx');
    const points = [85, 85.05, 85.1].map((lon) => `<trkpt lat="-35" lon="${lon}"/>`).join('');
    writeFileSync(route, `<gpx version="1.1"><trk><trkseg>${points}</trkseg></trk></gpx>`);
    const fetchIt = (...more: string[]) =>
      runCli('extract', 'fetch', route, '--overpass', address.href, ...more);
    const { out } = await fetchIt();
    expect(out).toContain(`Would ask ${address.href} as drystage/`);
    expect(out).toMatch(/corridor {2}5 km[\s\S]+queries {3}1, one at a time; 0 of them[\s\S]+\[out:json\]/);
    expect(out).toContain('Nothing was sent. Add --yes to ask.');
    expect((await fetchIt('--yes')).err).toContain('--name');
    expect((await fetchIt('--corridor', '90')).err).toContain('at most 50');
    expect(overpass.asked).toEqual([]);
    expect(await fetchIt('--yes', '--name', 'Short corridor')).toEqual({
      status: 0,
      err: '',
      out: 'Kept as "Short corridor": 1 supplies, 0 roads and places.\n',
    });
    expect(overpass.asked[0]?.headers['user-agent']).toMatch(/^drystage\/\d/);
    expect((await fetchIt()).out).toContain('1 of them are answered already');
    const { extracts } = await json('extract', 'list');
    expect(extracts).toMatchObject([{ name: 'Short corridor', asOf: overpass.base }]);
    await runCli('extract', 'remove', 'Short corridor');
  });
});

describe('kept trips on the command line', { tags: 'slow' }, () => {
  it('are imported, answered by name as from the files, and exported', async () => {
    const old = new URL('../fixtures/store/version-1.drystage.json', import.meta.url).pathname;
    const { out } = await runCli('trip', 'import', old, '--name', 'Old one');
    expect(out).toMatch(/^Kept as "Old one" \([0-9a-f-]{36}\)\.\n$/);
    const id = /\(([^)]+)\)/.exec(out)?.[1] ?? '';
    expect(await json('trip', 'list')).toMatchObject({ trips: [{ id, name: 'Old one', revision: 1 }] });
    expect((await runCli('trip', 'list')).out).toContain(`Old one`);
    const analysis = (await json('gaps', 'Old one')) as Analysis;
    expect(analysis.route.name).toBe('Along');
    expect(analysis.trip.corridorKm).toBe(6);
    expect(await json('gaps', id)).toEqual(analysis);
    const wider = join(folder, 'wider.yaml');
    writeFileSync(wider, 'corridorKm: 9\n');
    expect((await json('gaps', 'Old one', '--trip', wider)).trip.corridorKm).toBe(9);
    expect((await json('gaps', 'Old one', '--rig', RIG)).rig.name).not.toBe(analysis.rig.name);
    expect((await json('plan', 'Old one')).plan.status).toBeTruthy();
    const both = await json('compare', 'Old one', '--rig', RIG, '--rig', demoPath('rig-simple.yaml'));
    expect(both.rigs).toHaveLength(2);

    const path = join(folder, 'out.json');
    expect((await runCli('trip', 'export', 'Old one', '--name', path)).out).toBe(`${path}\n`);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ drystage: 'trip', name: 'Old one' });
    const again = await runCli('trip', 'export', 'Old one', '--name', path);
    expect(again.err).toContain('a file that is there already');
    await runCli('trip', 'import', path);
    expect((await runCli('gaps', 'Old one')).err).toContain('a name that several kept trips have');
    expect((await runCli('gaps', id)).status).toBe(0);
  });
});

describe('a backup on the command line', { tags: 'slow' }, () => {
  it('is written beside what is kept, refused where its file is there, and restored into another folder', async () => {
    const old = new URL('../fixtures/store/version-1.drystage.json', import.meta.url).pathname;
    await runCli('trip', 'import', old, '--name', 'Backed up');
    const path = join(folder, 'all.backup');
    const { out, err } = await runCli('backup', path);
    expect([err, out]).toEqual([
      '',
      expect.stringMatching(/all\.backup: \d+ trips?, 0 rigs, \d\.\d MB\.\n$/),
    ]);
    expect(await runCli('backup', path)).toMatchObject({
      status: 2,
      err: `${path}: a file that is there already; expected a free name. Give another name.\n`,
    });
    expect((await runCli('restore', path)).err).toContain('something is kept already');
    const data = process.env.DRYSTAGE_DATA;
    process.env.DRYSTAGE_DATA = join(folder, 'restored');
    expect((await runCli('restore', path)).out).toMatch(/restored: \d+ trips?, 0 rigs/);
    expect((await runCli('trip', 'list')).out).toContain('Backed up');
    process.env.DRYSTAGE_DATA = data;
  });
});

describe('notes on the command line', { tags: 'slow' }, () => {
  it('of a kept trip are listed, written as a file and read into another', async () => {
    const old = new URL('../fixtures/store/version-1.drystage.json', import.meta.url).pathname;
    for (const name of ['Noted', 'Bare']) await runCli('trip', 'import', old, '--name', name);
    const notes = join(folder, 'notes.csv');
    writeFileSync(notes, 'noteOf,id,on,works,by\r\nconfirmations,node/7,2026-03-02,true,Bert\r\n');
    expect((await runCli('notes', 'import', 'Noted', notes)).out).toMatch(
      /^1 notes are new, 0 stand in place/,
    );
    expect((await runCli('notes', 'import', 'Noted', notes)).out).toMatch(/^0 notes are new/);
    expect((await runCli('notes', 'list', 'Noted')).out).toMatch(/confirmations +node\/7 +2026-03-02 +Bert/);
    const before = (await json('notes', 'list', 'Noted')).notes;
    expect(before.confirmations).toMatchObject([{ id: 'node/7', works: true, by: 'Bert' }]);
    for (const ending of ['gpx', 'geojson', 'csv']) {
      const path = join(folder, `out.${ending}`);
      expect((await runCli('notes', 'export', 'Noted', path)).out).toBe(`${path}\n`);
      expect((await runCli('notes', 'export', 'Noted', path)).err).toContain('a file that is there already');
      await runCli('notes', 'import', 'Bare', path);
      expect((await json('notes', 'list', 'Bare')).notes).toEqual(before);
    }
    const { trips } = await json('trip', 'list');
    expect(trips.find(({ name }: { name: string }) => name === 'Noted')).toMatchObject({ revision: 2 });
    expect((await runCli('notes', 'export', 'Noted', join(folder, 'out.doc'))).err).toContain(
      '.geojson or .csv',
    );
    expect((await runCli('notes', 'list', 'None such')).err).toContain('no kept trip of that name');
    expect((await runCli('notes', 'import', 'Noted', join(folder, 'none.gpx'))).err).toContain(
      'no such file',
    );
  });
});

describe('words that cannot be understood', () => {
  it.each([
    [['extract'], 'nothing to do; expected add, fetch, list or remove'],
    [['extract', 'eat'], 'nothing that can be done with extracts'],
    [['extract', 'add'], 'no word after add; expected the path of a file'],
    [['extract', 'add', 'a', 'b'], 'b: a word too many'],
    [['extract', 'add', 'no-such-file'], 'no-such-file: no such file'],
    [['extract', 'remove', 'nobody'], 'no kept extract of that name'],
    [['extract', 'list', '--colour'], "Unknown option '--colour'"],
    [['trip', 'eat'], 'nothing that can be done with trips'],
    [['trip', 'export', 'nobody'], 'no kept trip of that name'],
    [['trip', 'import', 'no-such-file'], 'no-such-file: no such file'],
    [['trip', 'import', RIG], 'text that is not JSON'],
    [['gaps', 'nobody'], '--supply: no extract'],
  ])('%j', async (words, line) => {
    const { status, err } = await runCli(...words);
    expect([status, err]).toEqual([2, expect.stringContaining(line)]);
  });
});
