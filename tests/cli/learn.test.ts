import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Compile } from 'typebox/compile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { LogResult } from '../../server/contract/answers/log.ts';
import { readRigFile } from '../../server/io/rig-file.ts';
import { demoPath } from '../http/form.ts';
import { runCli } from './run-cli.ts';

let folder = '';
let fuel = '';
let water = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'learn-'));
  fuel = await written(
    'fuel.csv',
    'odometer_km,litres,full,surface,note,price',
    '10000,80,full,track,start,1',
    '10500,50,full,track,,1',
    '10800,20,part,track,at the mine,1',
    '11000,40,full,track,,1',
    '11400,44,full,track,\u001b[31mred,1',
    '11500,20,full,track,,1',
    '12000,65,full,track,,1',
    '12100,9,part,track,,1',
  );
  water = await written(
    'water.csv',
    'date,litres,people,days',
    ...[10, 12, 8, 14, 24].map((litres, index) => `2026-04-0${index + 1},${litres},2,1`),
  );
});
afterAll(() => rm(folder, { recursive: true }));

async function written(name: string, ...lines: string[]): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, `${lines.join('\n')}\n`);
  return path;
}

describe('drystage learn', () => {
  it('prints the rates first, then every interval, what was left out, and the lines to paste', async () => {
    const { status, out, err } = await runCli('learn', fuel);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out.startsWith(`${fuel}: low 10.4, typical 12.0, high 17.2 l/100 km\n`)).toBe(true);
    expect(out).toMatch(/^ +3-5 +10500\.0 +11000\.0 +500\.0 +60\.0 +12\.0 +track +- +at the mine$/m);
    expect(out).toMatch(/^ +6-7 .* 20\.0 +track +- +outlier$/m);
    expect(out).toContain('- line 9: filled after the last full tank');
    expect(out).toContain('Columns not looked at: price');
    expect(out).toContain('litresPer100Km: { low: 10.4, typical: 12, high: 17.2 }');
    expect(out).toContain('observed: { surface: track }');
    expect(out).not.toContain('\u001b');
  });

  it('gives lines that stand in a rig file as they are', async () => {
    const { out } = await runCli('learn', fuel);
    const pasted = parse(out.slice(out.indexOf('\nfuel:\n'))) as { fuel: object };
    const demo = await readRigFile(demoPath('rig.yaml'));
    if (!demo.ok) throw new Error('expected the demo rig');
    const rig = await written(
      'rig.yaml',
      stringify({ ...demo.value, fuel: { ...demo.value.fuel, ...pasted.fuel } }),
    );
    const read = await readRigFile(rig);
    expect(read).toMatchObject({
      ok: true,
      value: { fuel: { litresPer100Km: { high: 17.2 }, observed: { surface: 'track' } } },
    });
  });

  it('gives the contract as --json', async () => {
    for (const args of [[fuel], [water, '--people', '3'], [fuel, '--surface', 'track']]) {
      const { status, out } = await runCli('learn', ...args, '--json');
      expect(status).toBe(0);
      expect(Compile(LogResult).Errors(JSON.parse(out))).toEqual([]);
    }
  });

  it('learns water for the crew', async () => {
    const { out } = await runCli('learn', water, '--people', '3');
    // 4, 5, 6, 7 and 12 l for a person and day: 4.4, 6 and 10.
    expect(out).toContain('low 4.4, typical 6.0, high 10.0 l for a person and day');
    expect(out).toContain('for 3 people: low 13.2, typical 18.0, high 30.0 l a day');
    expect(out).toContain('litresPerDay: { low: 13.2, typical: 18, high: 30 } # 3 people');
  });

  it('prints its help', async () => {
    const { status, out } = await runCli('learn', '--help');
    expect(status).toBe(0);
    expect(out).toContain('odometer_km or odometer_mi');
  });

  it.each([
    [[], 'LOG.csv: no log; expected a CSV file after learn.'],
    [['a', 'b'], 'b: a second log; expected one.'],
    [['a', '--supply', 'b'], "Unknown option '--supply'"],
    [['a', '--people', '2', '--people', '3'], '--people: 2 of them; expected one.'],
    [['a', '--people', 'two'], '--people: "two"; expected a whole number from 1 to 200.'],
    [['a', '--surface', 'dunes'], '--surface: "dunes"; expected one of sealed, gravel'],
    [['gone.csv'], 'gone.csv: no such file; expected a log as CSV.'],
    [['/'], '/: a folder; expected a log as CSV.'],
  ])('refuses %j in one line', async (args, line) => {
    const { status, out, err } = await runCli('learn', ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(line);
    expect(err).toMatch(/^[^\n]+\.\n$/);
  });

  it.each([
    [
      'an odometer that goes back',
      ['odometer_km,litres,full', '900,50,full', '1400,50,full', '950,50,full'],
      'line 4, odometer_km: 950 after 1400 in line 3',
    ],
    [
      'too few intervals',
      ['odometer_km,litres,full', '900,50,full', '1400,50,full'],
      '1 intervals from full tank to full tank (lines 2 to 3); expected at least 5. Fill up 4 more times',
    ],
    [
      'no unit',
      ['odometer,litres,full', '900,50,full'],
      'line 1: the heading "odometer", which does not tell its unit; expected odometer_km or odometer_mi',
    ],
    [
      'a web page',
      ['<!doctype html>', '<p>log in</p>'],
      'line 1: the columns "<!doctype html>"; expected odometer_km,litres,full',
    ],
    ['nothing', ['', ''], 'an empty file'],
  ])('names file, place and remedy of %s', async (_name, lines, text) => {
    const path = await written('bad.csv', ...lines);
    const { status, out, err } = await runCli('learn', path);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err.startsWith(path)).toBe(true);
    expect(err).toContain(text);
    expect(err).toMatch(/^[^\n]+\.\n$/);
  });
});
