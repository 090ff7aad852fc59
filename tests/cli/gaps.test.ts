import { spawn } from 'node:child_process';
import { mkdtemp, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Analysis } from '../../server/contract/analysis.ts';
import { BAD_INPUTS, EXTRACT_ELSEWHERE } from '../helpers/bad-inputs.ts';
import { demoPath } from '../http/form.ts';
import { runCli } from './run-cli.ts';

const ROUTE = demoPath('route.gpx');
const EXTRACT = demoPath('orrimar.osm.pbf');
const RIG = demoPath('rig.yaml');
const TRIP = demoPath('trip.yaml');
const DEMO = ['gaps', ROUTE, '--supply', EXTRACT, '--rig', RIG, '--trip', TRIP];
const CLI = fileURLToPath(new URL('../../server/cli.mjs', import.meta.url));

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cli-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** The command as a process of its own. */
function spawnCli(args: readonly string[], readFirst = Number.POSITIVE_INFINITY) {
  return new Promise<{ status: number | null; out: string; err: string }>((resolve) => {
    const child = spawn(process.execPath, [CLI, ...args]);
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString();
      if (out.length >= readFirst) child.stdout.destroy();
    });
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.on('close', (status) => resolve({ status, out, err }));
  });
}

describe('drystage gaps', () => {
  it('prints the answer first, then a table for each commodity, then cautions', {
    tags: 'slow',
  }, async () => {
    const { status, out, err } = await runCli(...DEMO);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const at = (text: string) => out.indexOf(text);
    const heads = [
      'What to do',
      'Fuel (diesel): ',
      '\nDrinking water: ',
      '\nTo check before leaving, that first without which most fails\n- [ ] Mine camp bowser (km 850.6): implied; without its fuel short',
      '\nCautions\n',
    ];
    const order = heads.map(at);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
    for (const verdict of ['enough', 'into reserve', 'short', 'unknown']) expect(out).toContain(verdict);
  });

  it('prints the figures of --json in its table', { tags: 'slow' }, async () => {
    const json = JSON.parse((await runCli(...DEMO, '--json')).out) as Analysis;
    const { out } = await runCli(...DEMO);
    const tables = out.slice(out.indexOf('Fuel (diesel): ')).split('\n\n');
    const rows = tables
      .filter((table) => /^(Fuel \(|Drinking water: )/.test(table))
      .flatMap((table) => table.split('\n'))
      .filter((line) => /^ +\d+ {2}\S/.test(line));
    const gaps = [...json.fuel.gaps, ...json.water.gaps];
    expect(rows.length).toBe(gaps.length);
    for (const [index, gap] of gaps.entries()) {
      for (const figure of [gap.from.atKm, gap.to.atKm, gap.marginL]) {
        if (Math.abs(figure) >= 0.05) expect(rows[index]).toContain(figure.toFixed(1));
      }
    }
  });

  it('gives the contract as --json', { tags: 'slow' }, async () => {
    const { status, out } = await runCli(...DEMO, '--json');
    expect(status).toBe(0);
    expect(Compile(Analysis).Errors(JSON.parse(out))).toEqual([]);
    expect(out.endsWith('\n')).toBe(true);
  });

  it('takes several extracts, and says which does not touch the route', async () => {
    const elsewhere = join(folder, 'elsewhere.osm');
    await writeFile(elsewhere, EXTRACT_ELSEWHERE);
    const { status, out } = await runCli(...DEMO, '--supply', elsewhere);
    expect(status).toBe(0);
    expect(out).toContain(`${elsewhere} does not touch the route's corridor (5 km)`);
  });

  it('takes one part of the route', { tags: 'slow' }, async () => {
    const { status, err } = await runCli(...DEMO, '--part', '7');
    expect(status).toBe(2);
    expect(err).toMatch(/^\S+route\.gpx.*\n$/);
    expect((await runCli(...DEMO, '--part', '1')).status).toBe(0);
  });

  it('checks the rig before it reads a large extract', async () => {
    const large = join(folder, 'large.osm.pbf');
    await writeFile(large, '');
    await truncate(large, 70_000_000);
    const rig = join(folder, 'wrong.yaml');
    await writeFile(rig, 'colour: sand');
    const wrong = await runCli('gaps', ROUTE, '--supply', large, '--rig', rig);
    expect(wrong.err).toMatch(/wrong\.yaml, \/colour \(line 1\): an unknown key/);
    const right = await runCli('gaps', ROUTE, '--supply', large, '--rig', RIG, '--trip', TRIP);
    expect(right.status).toBe(2);
    expect(right.err.startsWith(large)).toBe(true);
  });

  it('prints help', async () => {
    const { status, out } = await runCli('--help');
    expect(status).toBe(0);
    expect(out).toContain('npm run -s drystage -- gaps ROUTE.gpx --supply EXTRACT');
  });

  it.each([
    [
      [],
      'no command; expected gaps, learn, compare, plan, export, extract, trip, notes, backup or restore as the first word.',
    ],
    [
      ['sail'],
      'the command "sail"; expected gaps, learn, compare, plan, export, extract, trip, notes, backup or restore as the first word.',
    ],
    [['gaps'], 'ROUTE.gpx: no route; expected a GPX file after gaps.'],
    [['gaps', 'a.gpx'], '--supply: no extract; expected at least one --supply EXTRACT.'],
    [['gaps', 'a.gpx', '--supply', 'b.osm'], '--rig: no rig; expected --rig RIG.yaml.'],
    [['gaps', 'a', 'b', '--supply', 'c', '--rig', 'd'], 'b: a second route; expected one'],
    [['gaps', 'a', '--supply', 'c', '--rig', 'd', '--rig', 'e'], '--rig: 2 of them; expected one.'],
    [['gaps', 'a', '--suply', 'b'], "Unknown option '--suply'"],
    [['gaps', 'a', '--supply'], "Option '--supply <value>' argument missing"],
  ])('refuses %j in one line', async (args, line) => {
    const { status, out, err } = await runCli(...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(line);
    expect(err).toMatch(/^[^\n]+See --help\.\n$/);
  });

  it.each([
    ['route', ['gaps', 'gone.gpx', '--supply', EXTRACT, '--rig', RIG], 'gone.gpx: '],
    ['extract', ['gaps', ROUTE, '--supply', 'gone.osm', '--rig', RIG], 'gone.osm: '],
    ['rig', ['gaps', ROUTE, '--supply', EXTRACT, '--rig', 'gone.yaml'], 'gone.yaml: '],
    ['folder as route', ['gaps', '/', '--supply', EXTRACT, '--rig', RIG], '/: '],
    ['folder as extract', ['gaps', ROUTE, '--supply', '/', '--rig', RIG], '/: '],
  ])('names a file that is not one: %s', async (_name, args, start) => {
    const { status, err } = await runCli(...args);
    expect(status).toBe(2);
    expect(err.startsWith(start)).toBe(true);
    expect(err.trimEnd()).not.toContain('\n');
  });
});

describe('a bad input on the command line', () => {
  it.each(BAD_INPUTS)('$name is refused in one line', async (bad) => {
    const path = join(folder, `bad-${bad.role}`);
    await writeFile(path, bad.content);
    const files = { route: ROUTE, extract: EXTRACT, rig: RIG, trip: TRIP, [bad.role]: path };
    const { status, out, err } = await runCli(
      'gaps',
      files.route,
      '--supply',
      files.extract,
      '--rig',
      files.rig,
      '--trip',
      files.trip,
    );
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err.startsWith(path)).toBe(true);
    expect(err).toMatch(/^[^\n]+\.\n$/);
    if (bad.place !== null) {
      const place = err.slice(path.length + 2);
      expect(place).toMatch(bad.place);
    }
  });
});

describe('the command as a process', () => {
  it('ends with 0 or 2 and writes whole output down a pipe', { tags: 'slow' }, async () => {
    const good = await spawnCli([...DEMO, '--json']);
    expect({ status: good.status, err: good.err }).toEqual({ status: 0, err: '' });
    expect(() => JSON.parse(good.out)).not.toThrow();
    const bad = await spawnCli(['gaps', 'gone.gpx', '--supply', EXTRACT, '--rig', RIG]);
    expect({ status: bad.status, out: bad.out }).toEqual({ status: 2, out: '' });
    expect(bad.err.trimEnd().split('\n').length).toBe(1);
  });

  it('is not troubled by a reader that stops early', { tags: 'slow' }, async () => {
    const cut = await spawnCli([...DEMO, '--json'], 10);
    expect({ status: cut.status, err: cut.err }).toEqual({ status: 0, err: '' });
  });
});
