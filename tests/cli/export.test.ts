import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import { readPdf } from '../app/sheet/pdf/read-pdf.ts';
import { statesIn } from '../app/take-along/file-parts.ts';
import { demoPath } from '../http/form.ts';
import { runCli } from './run-cli.ts';

const FILES = [
  '--supply',
  demoPath('orrimar.osm.pbf'),
  '--rig',
  demoPath('rig.yaml'),
  '--trip',
  demoPath('trip.yaml'),
];
const exported = (...more: string[]) => runCli('export', demoPath('route.gpx'), ...FILES, ...more);

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'export-'));
});
afterAll(() => rm(folder, { recursive: true }));

describe('drystage export', () => {
  it('writes the file whose ending is named, and says how large it is', { tags: 'slow' }, async () => {
    const file = join(folder, 'trip.GPX');
    const { status, out, err } = await exported('--to', file);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toBe(`${file}: ${(await stat(file)).size} bytes\n`);
    expect(await readFile(file, 'utf8')).toContain('<name>Fuel Ketta fuel</name>');
  });

  it('writes the sheet as PDF, of the size that is asked for', { tags: 'slow' }, async () => {
    const file = join(folder, 'sheet.pdf');
    const { status, out } = await exported('--to', file, '--paper', 'letter');
    expect({ status, out }).toEqual({ status: 0, out: `${file}: ${(await stat(file)).size} bytes\n` });
    const pages = await readPdf(await readFile(file));
    expect(pages.length).toBeLessThanOrEqual(5);
    expect(pages.map(({ widthPt }) => widthPt)).toEqual(pages.map(() => 612));
    expect(pages[0]?.text).toContain('With this plan the reserve is kept all the way.');
    const text = pages.map((page) => page.text).join(' ');
    // The stops of the README's example, and nothing of what the plan against one failure is asked for is lost.
    for (const stop of ['Ketta town tap', 'Ketta fuel', 'Mine camp tap', 'Mine camp bowser', 'Hask Gate tap'])
      expect(text).toContain(stop);
    expect(text).toContain('No plan is safe against the failure of any one stop.');
  });

  it('writes one file for a telephone, with the program and the figures of its view', {
    tags: 'slow',
  }, async () => {
    const file = join(folder, 'trip.html');
    const { status, err } = await exported('--to', file);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const html = await readFile(file, 'utf8');
    const [state] = statesIn(html, [
      { atM: 437_000, left: false, litres: { fuel: 170, water: 98 }, failed: { fuel: [], water: [] } },
    ]) as CabState[];
    expect(state?.answer).toBe('on');
    expect(state?.fuel).toMatchObject({ from: { name: 'Ketta fuel' }, to: { name: 'Mine camp bowser' } });
  });

  it('replaces a file only where it is told to', { tags: 'slow' }, async () => {
    const file = join(folder, 'kept.csv');
    await writeFile(file, 'mine');
    const refused = await exported(`--to=${file}`);
    expect(refused).toMatchObject({ status: 2, out: '' });
    expect(refused.err).toContain(`${file}: a file that is there already; expected a new name.`);
    expect(await readFile(file, 'utf8')).toBe('mine');
    expect((await exported('--replace', '--to', file)).status).toBe(0);
    expect(await readFile(file, 'utf8')).toContain('at (km)');
  });

  it.each([
    [['--to', 'trip.docx'], '"trip.docx"; expected a file with one of the endings .html, .pdf, .gpx'],
    [['--to', 'gpx'], '"gpx"; expected a file with one of the endings'],
    [['--to', 'a.pdf', '--paper', 'a5'], '--paper: "a5"; expected one of a4, letter'],
    [['--to', 'a.pdf', '--paper', 'a4', '--paper', 'letter'], '--paper: "a4", "letter"; expected one of'],
    [['--to', 'a.gpx', '--paper', 'a4'], '--paper: a size for .gpx; expected it with .pdf alone'],
    [[], 'no file to write; expected --to FILE'],
    [['--to'], '--to without a file'],
    [['--to', 'a.gpx', '--to', 'b.gpx'], 'several files to write; expected one'],
    [['--to', 'a.gpx', '--wide'], "Unknown option '--wide'"],
    [['--to', '/nowhere/at/all/a.gpx'], 'a file that cannot be written (ENOENT)'],
  ])('refuses %j', { tags: 'slow' }, async (words, why) => {
    const { status, out, err } = await exported(...words);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(why);
  });

  it('has a help of its own, and is named where commands are', async () => {
    const { status, out } = await runCli('export', '--help');
    expect(status).toBe(0);
    for (const ending of ['.html', '.pdf', '.gpx', '.geojson', '.csv', '.ics']) expect(out).toContain(ending);
    expect((await runCli('exprot')).err).toContain(
      'compare, plan, export, extract, trip, notes, backup or restore',
    );
  });
});
