import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { RawExtract } from '../../../../server/io/osm/extract/raw-extract.ts';
import { contentOf, inOrder, problemOf, readFile } from './pbf-files.ts';

const FOLDER = fileURLToPath(new URL('../../../fixtures/osmium/', import.meta.url));
const fixture = (name: string) => `${FOLDER}${name}`;

const osmiumIsHere = spawnSync('osmium', ['--version']).status === 0;

/** What sample.osm holds for us, worked out by hand. */
const WANTED = ['node/1', 'node/2', 'node/9000000001', 'relation/200', 'relation/201', 'way/100'];
const LENT = [
  'node/5',
  'node/10',
  'node/11',
  'node/12',
  'node/13',
  'node/20',
  'node/21',
  'node/22',
  'node/23',
];

/** Forms that must read alike. */
const ALIKE = ['plain-nodes', 'raw', 'reversed'];

let usual: RawExtract;
beforeAll(async () => {
  usual = await readFile(fixture('default.osm.pbf'));
});

describe('a sample written by osmium', () => {
  it('should give the wanted elements and those that lend them geometry', () => {
    expect([...usual.wanted].sort()).toEqual(WANTED);
    const kept = usual.elements.map((element) => `${element.type}/${element.id}`);
    expect(kept.sort()).toEqual([...WANTED, ...LENT, 'way/101', 'way/102'].sort());
    expect(usual.counts).toEqual({ nodes: 18, ways: 6, relations: 4 });
    expect(usual.bounds).toEqual([86, -36, 88, -34]);
    // Two roads and a place or two are no general map.
    expect(usual.shows).toEqual({ fuel: true, water: true, general: false });
    expect(toContract(usual.skipped)).toEqual([
      { id: 'relation/203', reason: 'a relation without nodes or ways among its members' },
    ]);
  });

  it('should keep positions to the last digit, tags, versions and times', () => {
    const byId = new Map(usual.elements.map((element) => [`${element.type}/${element.id}`, element]));
    expect(byId.get('node/9000000001')).toEqual({
      type: 'node',
      id: 9000000001,
      lat: -35.6543217,
      lon: 86.7654321,
      version: 7,
      timestamp: '2024-05-06T07:08:09Z',
      tags: { natural: 'spring', drinking_water: 'yes' },
    });
    expect(byId.get('node/1')?.tags?.name).toBe('Süd-Ölhof');
    expect(byId.get('way/100')).toEqual({
      type: 'way',
      id: 100,
      nodes: [10, 11, 12, 13, 10],
      version: 5,
      timestamp: '2022-03-04T05:06:07Z',
      tags: { amenity: 'fuel', building: 'yes' },
    });
    expect(byId.get('relation/200')).toEqual({
      type: 'relation',
      id: 200,
      version: 6,
      timestamp: '2022-05-06T07:08:09Z',
      members: [
        { type: 'way', ref: 101, role: 'outer' },
        { type: 'way', ref: 102, role: 'outer' },
      ],
      tags: { type: 'multipolygon', amenity: 'fuel' },
    });
    expect(byId.get('way/101')).toEqual({
      type: 'way',
      id: 101,
      nodes: [20, 21, 22],
      version: 1,
    });
  });

  for (const form of ALIKE) {
    it(`should read alike in the form ${form}`, async () => {
      expect(contentOf(await readFile(fixture(`${form}.osm.pbf`)))).toEqual(contentOf(usual));
    });
  }

  it.each([
    ['located', 6],
    ['located-all-nodes', 18],
  ])(
    'should read alike in the form %s, save for the versions of nodes whose position stands in their way',
    async (form, nodes) => {
      const located = contentOf(await readFile(fixture(`${form}.osm.pbf`)));
      const expected = structuredClone(contentOf(usual));
      const standInWays = new Set(LENT.filter((id) => id !== 'node/5'));
      for (const element of expected.elements) {
        if (!standInWays.has(`${element.type}/${element.id}`)) continue;
        delete element.version;
      }
      expect(located).toEqual({ ...expected, counts: { ...expected.counts, nodes } });
    },
  );

  it('should read alike with times only, save for the versions', async () => {
    const timesOnly = await readFile(fixture('times-only.osm.pbf'));
    const expected = inOrder(usual.elements).map(({ version: _, ...element }) => element);
    expect(inOrder(timesOnly.elements)).toEqual(expected);
  });

  it('should be refused with a remedy when compressed with lz4', async () => {
    const problem = await problemOf(readFile(fixture('lz4.osm.pbf')));
    expect(problem).toMatchObject({
      code: 'pbf-compression',
      place: 'byte 0',
      came: 'a blob compressed with lz4',
    });
    expect(problem.remedy).toContain('pbf_compression=zlib');
  });

  it('should be refused with a remedy when it is a history', async () => {
    const problem = await problemOf(readFile(fixture('history.osh.pbf')));
    expect(problem).toMatchObject({
      code: 'pbf-feature',
      came: 'a file that requires "HistoricalInformation"',
    });
    expect(problem.remedy).toContain('time-filter');
  });

  it(`should be read by osmium as the same sample (${osmiumIsHere ? 'osmium is here' : 'OSMIUM IS ABSENT: only the names of the variants are looked at'})`, () => {
    const variants = readdirSync(FOLDER).filter((name) => name.endsWith('.osm.pbf'));
    expect(variants.sort()).toEqual(
      ['default', 'lz4', 'located', 'located-all-nodes', 'times-only', ...ALIKE]
        .map((name) => `${name}.osm.pbf`)
        .sort(),
    );
    if (!osmiumIsHere) return;
    const opl = (name: string) => {
      const run = spawnSync('osmium', ['cat', '-f', 'opl', fixture(name)], { encoding: 'utf8' });
      expect(run.status).toBe(0);
      return run.stdout.split('\n').sort();
    };
    const sample = opl('sample.osm');
    for (const name of ['default', 'lz4', 'plain-nodes', 'raw', 'reversed'])
      expect(opl(`${name}.osm.pbf`)).toEqual(sample);
  });
});
