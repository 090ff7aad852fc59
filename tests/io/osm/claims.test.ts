import { describe, expect, it } from 'vitest';
import { encodeBlob, encodeHeader } from '../../../fixtures/pbf-writer.ts';
import type { Problem } from '../../../server/core/input/problem.ts';
import { OwnIds } from '../../../server/io/osm/extract/own-ids.ts';
import type { RawElement } from '../../../server/io/osm/extract/raw-element.ts';
import { scanJson } from '../../../server/io/osm/json/scan-json.ts';
import { boxOfElement, type Lookup, lendingOf } from '../../../server/io/osm/keep/keep-near.ts';
import { PBF_LIST_MAX } from '../../../server/io/osm/source/limits.ts';
import { problemOfBytes, readBytes } from './pbf/pbf-files.ts';
import { problemAt, scratchFolder } from './scratch.ts';

const put = scratchFolder();

/** Small files that claim much: each is refused before it takes what it claims. */

function varint(value: number): Buffer {
  const bytes: number[] = [];
  let rest = value;
  for (; rest > 127; rest = Math.floor(rest / 128)) bytes.push((rest % 128) | 128);
  return Buffer.from([...bytes, rest]);
}
const field = (number: number, body: Uint8Array): Buffer =>
  Buffer.concat([varint(number * 8 + 2), varint(body.length), body]);
const group = (kind: number, body: Uint8Array): Buffer => field(2, field(kind, body));
const STRINGS = field(1, Buffer.concat(['', 'amenity', 'fuel'].map((text) => field(1, Buffer.from(text)))));
const TAGS = Buffer.concat([field(2, Buffer.of(1)), field(3, Buffer.of(2))]);
const object = (...parts: Uint8Array[]): Buffer => Buffer.concat([Buffer.of(8, 1), TAGS, ...parts]);

const HEADER = encodeBlob(
  'OSMHeader',
  encodeHeader([0, 0, 1, 1], ['OsmSchema-V0.6', 'DenseNodes'], [], { program: 'test' }),
);
const fileOf = (compression: 'zlib' | 'raw', ...parts: Uint8Array[]): Uint8Array =>
  Buffer.concat([HEADER, encodeBlob('OSMData', Buffer.concat([STRINGS, ...parts]), { compression })]);

const MANY = 10_000_000;
const relation = (members: number) =>
  group(
    4,
    object(
      field(8, Buffer.alloc(members)),
      field(9, Buffer.alloc(members, 2)),
      field(10, Buffer.alloc(members)),
    ),
  );
const way = (nodes: number) => group(3, object(field(8, Buffer.alloc(nodes, 2))));
const tags = (count: number) =>
  group(
    1,
    Buffer.concat([
      Buffer.of(8, 2),
      field(2, Buffer.alloc(count, 1)),
      field(3, Buffer.alloc(count, 2)),
      Buffer.of(64, 2, 72, 2),
    ]),
  );
const groups = (count: number) => Buffer.concat(Array.from({ length: count }, () => Buffer.of(18, 0)));
/** So many nodes at one place, each a fuel station. */
const stations = (count: number) =>
  group(
    2,
    Buffer.concat([
      field(1, Buffer.alloc(count, 2)),
      field(8, Buffer.alloc(count)),
      field(9, Buffer.alloc(count)),
      field(10, Buffer.concat(Array.from({ length: count }, () => Buffer.of(1, 2, 0)))),
    ]),
  );

describe('a small .osm.pbf', () => {
  it.each<[what: string, block: () => Uint8Array]>([
    ['a relation of ten million members', () => relation(MANY)],
    ['a way of ten million nodes', () => way(MANY)],
    ['a node of ten million tags', () => tags(MANY)],
    ['a million groups', () => groups(1_000_000)],
    ['half a million fuel stations', () => stations(500_000)],
  ])('with %s opens too far, whatever it claims', { tags: 'slow' }, async (_what, block) => {
    const file = fileOf('zlib', block());
    expect(file.length).toBeLessThan(100_000);
    expect((await problemOfBytes(file)).code).toBe('expands-too-far');
  });

  it.each<[what: string, block: () => Uint8Array, came: RegExp]>([
    ['a relation of very many members', () => relation(MANY), /list of 10000000 bytes/],
    ['a way of very many nodes', () => way(MANY), /list of 10000000 bytes/],
    ['a node of very many tags', () => tags(MANY), /list of 10000000 bytes/],
    ['very many groups', () => groups(20_000), /more than 10000 groups/],
    ['very many supplies', () => stations(150_000), /more than 100000 supplies/],
  ])('that is not packed, with %s, is refused by its lists', { tags: 'slow' }, async (_what, block, came) => {
    const problem = await problemOfBytes(fileOf('raw', block()));
    expect(problem.code).toBe('pbf-broken');
    expect(problem.came).toMatch(came);
  });

  it('is read where its lists are as long as any real one, and a block holds as many supplies', {
    tags: 'slow',
  }, async () => {
    const { counts, wanted } = await readBytes(
      fileOf('raw', relation(PBF_LIST_MAX), way(2_000), groups(500)),
    );
    expect(counts).toMatchObject({ relations: 1, ways: 1 });
    expect(wanted.size).toBe(2);
    expect((await readBytes(fileOf('raw', stations(90_000)))).elements).toHaveLength(90_000);
  });
});

/** bzip2 1.0.8 of 400 MB of zeros: a block opens to fifty times its own size. */
const ZEROS = Buffer.from(
  [
    'QlpoOTFBWSZTWQ4J4t8BX45AAMAAAAggADCATUZCoCWpCoCXMUFZJlNZDgni3wFfjkAAwAAACCAAMIBNRkKgJakKgJcxQVkmU1kO',
    'CeLfAV+OQADAAAAIIAAwgE1GQqAlqQqAlzFBWSZTWQ4J4t8BX45AAMAAAAggADCATUZCoCWpCoCXMUFZJlNZDgni3wFfjkAAwAAA',
    'CCAAMIBNRkKgJakKgJcxQVkmU1kOCeLfAV+OQADAAAAIIAAwgE1GQqAlqQqAlzFBWSZTWQ4J4t8BX45AAMAAAAggADCATUZCoCWp',
    'CoCXMUFZJlNZDgni3wFfjkAAwAAACCAAMIBNRkKgJakKgJcxQVkmU1kiuZEFAPtFwQDAAAAAgAggADDMCappiVIg2qipEHi7kinC',
    'hIbAXcMg',
  ].join(''),
  'base64',
);

it('bzip2 is refused as soon as it opens too far, within a block', { tags: 'slow' }, async () => {
  const problem = await problemAt(put('zeros.osm.bz2', ZEROS));
  expect(problem.code).toBe('expands-too-far');
  const opened = Number(/expand to more than (\d+)/.exec(problem.came)?.[1]);
  expect(opened).toBeGreaterThan(16 * 1024 * 1024);
  expect(opened).toBeLessThan(18 * 1024 * 1024);
});

describe('JSON', () => {
  const problemIn = (text: string): Promise<Problem> => problemAt(put('claims.json', text));
  it('of lists within lists without end is refused, at once', async () => {
    const started = performance.now();
    const problem = await problemIn('['.repeat(5_000_000));
    expect(performance.now() - started).toBeLessThan(5_000);
    expect([problem.code, problem.came]).toEqual([
      'too-large',
      'lists and objects within each other over 100 deep',
    ]);
    expect((await problemIn(`{"elements":${'[{"a":'.repeat(60)}`)).code).toBe('too-large');
  });

  it('of more lists and objects than any map has is refused before it is parsed', {
    tags: 'slow',
  }, async () => {
    const positions = '[88,-35],'.repeat(2_100_000);
    const problem = await problemIn(
      `{"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"LineString","coordinates":[${positions}[0,0]]}}]}`,
    );
    expect([problem.code, problem.came]).toEqual(['too-large', 'more than 2000000 lists and objects']);
  });

  it('is not looked at inside its texts', () => {
    const brackets = '[{'.repeat(500);
    expect(() => scanJson(JSON.stringify({ a: brackets, b: `\\"${brackets}` }), 'x')).not.toThrow();
    expect(() => scanJson(`"${brackets}`, 'x')).not.toThrow();
    expect(() => scanJson(`"\\\\"${'['.repeat(101)}`, 'x')).toThrow(/deep/);
  });

  it.each([
    '{"type":"way","id":1,"nodes":[{"toString":1}]}',
    '{"type":"node","id":{"toString":1},"lat":1,"lon":1}',
    '{"type":{"toString":1},"id":1}',
    '{"type":"node","id":1,"lat":{"valueOf":1,"toString":2},"lon":1,"tags":{"amenity":"fuel"}}',
  ])('with an object where a figure belongs is no fault of the program: %s', async (element) => {
    const path = put('types.json', `{"elements":[${element}],"bounds":{"minlon":{"toString":1}}}`);
    const outcome = await problemAt(path).then(
      ({ code }) => code,
      (error: Error) => error.message,
    );
    expect(['json-shape', 'file was read']).toContain(outcome);
  });

  it('of features whose positions are objects is refused or passed over as GeoJSON too', async () => {
    for (const geometry of ['{"type":"Point","coordinates":[{"toString":1},1]}', '{"type":{"toString":1}}']) {
      const feature = `{"type":"Feature","geometry":${geometry},"properties":{"amenity":"fuel"}}`;
      const outcome = await problemAt(
        put('g.geojson', `{"type":"FeatureCollection","features":[${feature}]}`),
      ).then(
        ({ code }) => code,
        (error: Error) => error.message,
      );
      expect(['coordinate-out-of-range', 'file was read']).toContain(outcome);
    }
  });
});

describe('relations within relations', () => {
  const relationOf = (id: number, ref: number): RawElement => ({
    type: 'relation',
    id,
    tags: { amenity: 'fuel', type: 'site' },
    members: [{ type: id === 1 ? 'node' : 'relation', ref, role: '' }],
  });
  const lookupIn = (elements: readonly RawElement[]): Lookup => {
    const byKey = new Map(elements.map((element) => [`${element.type}/${element.id}`, element]));
    return (type, id) => byKey.get(`${type}/${id}`);
  };
  const node: RawElement = { type: 'node', id: 1, lat: 5, lon: 6 };
  const chain = [
    node,
    ...Array.from({ length: 50_000 }, (_, index) => relationOf(index + 1, Math.max(1, index))),
  ];

  it('have the box of what they are made of, and none where they go deeper than any real one', () => {
    const lookup = lookupIn(chain);
    const boxOf = (index: number) => boxOfElement(chain[index] ?? node, lookup);
    expect([1, 2, 4, 6].map(boxOf)).toEqual(Array.from({ length: 4 }, () => [6, 5, 6, 5]));
    expect([7, 8, 50_000].map(boxOf)).toEqual([null, null, null]);
  });

  it('lend all that they are made of, however long the chain, and in a ring', () => {
    const top = chain.at(-1) ?? node;
    expect(lendingOf([top], chain, lookupIn(chain))).toHaveLength(50_000);
    const ring = Array.from({ length: 50_000 }, (_, index) =>
      relationOf(index + 2, ((index + 1) % 50_000) + 2),
    );
    expect(lendingOf([ring[0] ?? node], ring, lookupIn(ring))).toHaveLength(49_999);
    expect(boxOfElement(ring[0] ?? node, lookupIn(ring))).toBeNull();
  });
});

it('gives thousands of points of one name an id each, in no time', () => {
  const ids = new OwnIds();
  const started = performance.now();
  const given = new Set(Array.from({ length: 20_000 }, () => ids.of('Fuel')));
  expect(given.size).toBe(20_000);
  expect([...given].slice(0, 3)).toEqual(['own/fuel', 'own/fuel-2', 'own/fuel-3']);
  expect(performance.now() - started).toBeLessThan(1_000);
  const taken = new OwnIds();
  expect(['Fuel 2', 'Fuel', 'Fuel', 'Fuel'].map((name) => taken.of(name))).toEqual([
    'own/fuel-2',
    'own/fuel',
    'own/fuel-3',
    'own/fuel-4',
  ]);
});
