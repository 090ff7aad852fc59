import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../../fixtures/pbf-writer.ts';
import { boxOf, isNear } from '../../../server/app/near-route.ts';
import type { Bbox } from '../../../server/contract/common.ts';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { farCount, farObjects } from '../../../server/io/osm/extract/far-objects.ts';
import type { RawElement } from '../../../server/io/osm/extract/raw-element.ts';
import type { RawExtract, ReadOptions } from '../../../server/io/osm/extract/raw-extract.ts';
import { osmPapers } from '../../../server/io/osm/extract/whole-file/papers.ts';
import { readGeoJson } from '../../../server/io/osm/geojson/read-geojson.ts';
import { type EachElement, filterElements } from '../../../server/io/osm/keep/filter-elements.ts';
import { unite } from '../../../server/io/osm/unite/unite.ts';
import { readBytes } from './pbf/pbf-files.ts';
import { anyPlace, anyWorld, NEAR_LAND } from './worlds.ts';

/** Declared by the files that are written here. */
const BOUNDS = [-180, -90, 180, 90] as const;

type Near = ReadOptions['near'];

/** A file of these elements as the readers of XML and Overpass JSON take it. */
async function filtered(source: string, elements: readonly RawElement[], near: Near): Promise<RawExtract> {
  const each: EachElement = async (visit) => {
    for (const element of elements) visit({ element, deleted: false });
  };
  const kept = await filterElements(each, { ground: null, near, wantsHull: () => true });
  return { source, format: 'osm-xml', papers: osmPapers({}), features: [], bounds: null, ...kept };
}

const asPbf = (elements: readonly RawElement[], near: Near, blockSize: number, threadsFromBytes?: number) =>
  readBytes(
    encodePbfElements(BOUNDS, elements as PbfElement[], { blockSize }),
    { near: near ?? null },
    threadsFromBytes,
  );

const isNearFeature = ({ geometry }: MappedFeature): boolean => {
  const box = boxOf(geometry);
  return box === null || isNear(NEAR_LAND, box);
};
const nearFeaturesOf = (extracts: readonly RawExtract[]): MappedFeature[] =>
  unite(extracts, [], [])
    .features.filter(isNearFeature)
    // A file that has it far away does not show it here.
    .map(({ seenIn: _in, ...feature }) => feature)
    .sort((a, b) => a.id.localeCompare(b.id));

/** What must not depend on whether far objects are kept. */
const aboutTheFile = ({ bounds, hull, shows, counts, skipped, cautions, ground }: RawExtract) => ({
  bounds,
  hull,
  shows,
  counts,
  skipped,
  cautions,
  ground,
});

function expectAlike(near: RawExtract, all: RawExtract): void {
  expect(nearFeaturesOf([near])).toEqual(nearFeaturesOf([all]));
  expect(aboutTheFile(near)).toEqual(aboutTheFile(all));
  expect(near.wanted.size + farCount(near.far)).toBe(all.wanted.size);
  expect([...near.wanted].every((id) => all.wanted.has(id))).toBe(true);
  expect(farCount(all.far)).toBe(0);
}

describe('keeping what is near', () => {
  it('should give the same features near by, and say the same of the file, from XML and Overpass JSON', {
    tags: 'slow',
  }, async () => {
    await fc.assert(
      fc.asyncProperty(anyWorld, async (world) => {
        expectAlike(await filtered('a', world, NEAR_LAND), await filtered('a', world, null));
      }),
      { numRuns: 300 },
    );
  });

  it('should give the same from pbf, in blocks of any size', { tags: 'slow' }, async () => {
    await fc.assert(
      fc.asyncProperty(anyWorld, fc.integer({ min: 1, max: 40 }), async (world, blockSize) => {
        expectAlike(await asPbf(world, NEAR_LAND, blockSize), await asPbf(world, null, blockSize));
      }),
      { numRuns: 150 },
    );
  });

  it('leaves out what is far, with the nodes that nothing else needs', async () => {
    const square = (first: number, lon: number): RawElement[] => [
      { type: 'node', id: first, lon, lat: 50 },
      { type: 'node', id: first + 1, lon: lon + 0.001, lat: 50 },
      { type: 'way', id: first, nodes: [first, first + 1], version: 3, tags: { amenity: 'fuel' } },
    ];
    const [a, b] = [square(1, 10), square(11, 20)];
    const world = [a, b].flat().sort((p, q) => p.type.localeCompare(q.type));
    for (const extract of [await filtered('a', world, NEAR_LAND), await asPbf(world, NEAR_LAND, 2)]) {
      expect(extract.elements.map(({ type, id }) => `${type}/${id}`).sort()).toEqual([
        'node/1',
        'node/2',
        'way/1',
      ]);
      expect([...farObjects(extract.far)]).toEqual([{ type: 'way', id: 11, version: 3 }]);
      expect(extract.far.bbox).toEqual([20, 50, 20.001, 50]);
    }
  });

  it('keeps what a near relation is made of, though it is far itself', async () => {
    const world: RawElement[] = [
      { type: 'node', id: 1, lon: 10, lat: 50 },
      { type: 'node', id: 2, lon: 20, lat: 50, tags: { amenity: 'fuel' } },
      { type: 'way', id: 3, nodes: [2], tags: { amenity: 'fuel' } },
      {
        type: 'relation',
        id: 4,
        members: [
          { type: 'node', ref: 1, role: '' },
          { type: 'way', ref: 3, role: '' },
        ],
        tags: { type: 'site', amenity: 'fuel' },
      },
    ];
    for (const extract of [await filtered('a', world, NEAR_LAND), await asPbf(world, NEAR_LAND, 9)]) {
      expect([...extract.wanted]).toEqual(['relation/4']);
      expect(extract.elements.map(({ type, id, tags }) => [type, id, tags?.amenity]).sort()).toEqual([
        ['node', 1, undefined],
        ['node', 2, undefined],
        ['relation', 4, 'fuel'],
        ['way', 3, undefined],
      ]);
      expect(farCount(extract.far)).toBe(2);
    }
  });

  it('reading by threads is the same', async () => {
    const world = fc
      .sample(anyWorld, { numRuns: 30, seed: 7 })
      .flatMap((part, n) =>
        part.filter(({ type }) => type === 'node').map((node) => ({ ...node, id: node.id + 100 * n })),
      );
    const lone = await asPbf(world, NEAR_LAND, 20);
    expect(await asPbf(world, NEAR_LAND, 20, 0)).toEqual(lone);
    expect(farCount(lone.far)).toBeGreaterThan(10);
    expect(lone.wanted.size).toBeGreaterThan(10);
  });

  it('GeoJSON features with ids of OSM are left out, others stay', () => {
    const feature = (id: string | undefined, lon: number) => ({
      type: 'Feature',
      ...(id !== undefined && { id }),
      properties: { amenity: 'fuel', name: 'Pump' },
      geometry: { type: 'Point', coordinates: [lon, 50] },
    });
    const document = {
      type: 'FeatureCollection',
      features: [feature('node/1', 10), feature('node/2', 20), feature(undefined, 20)],
    };
    const { features, far, hull, shows } = readGeoJson(document, {
      source: 'a',
      ground: null,
      near: NEAR_LAND,
    });
    expect(features.map(({ id }) => id)).toEqual(['node/1', 'own/pump']);
    expect([...farObjects(far)]).toEqual([{ type: 'node', id: 2 }]);
    expect([hull, shows.fuel]).toEqual([null, true]);
  });
});

const FUEL = { amenity: 'fuel' };
const station = (lon: number, version?: number): RawElement => ({
  type: 'node',
  id: 1,
  lon,
  lat: 50,
  tags: FUEL,
  ...(version !== undefined && { version }),
});

describe('the newest version still wins', () => {
  /** Versions of some nodes, each at a place of its own. */
  const anyVersions = fc.uniqueArray(
    fc.record({
      id: fc.integer({ min: 1, max: 4 }),
      version: fc.integer({ min: 1, max: 5 }),
      place: anyPlace,
    }),
    { selector: ({ id, version }) => `${id} ${version}`, maxLength: 12 },
  );
  const asNode = (each: {
    id: number;
    version: number;
    place: { lon: number; lat: number };
  }): RawElement => ({
    type: 'node',
    id: each.id,
    version: each.version,
    ...each.place,
    tags: FUEL,
  });

  it('within one file, also when an object has moved away or come near', { tags: 'slow' }, async () => {
    await fc.assert(
      fc.asyncProperty(anyVersions, fc.integer({ min: 1, max: 12 }), async (versions, blockSize) => {
        const nodes = versions.map(asNode);
        const all = [await asPbf(nodes, null, blockSize), await filtered('a', nodes, null)];
        const near = [await asPbf(nodes, NEAR_LAND, blockSize), await filtered('a', nodes, NEAR_LAND)];
        all.forEach((extract, i) => {
          expect(nearFeaturesOf([near[i]!])).toEqual(nearFeaturesOf([extract]));
          expect(near[i]!.wanted.size + farCount(near[i]!.far)).toBe(extract.wanted.size);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('across files, in any order', { tags: 'slow' }, async () => {
    const anyFiles = anyVersions.chain((versions) =>
      fc.tuple(
        fc.constant(versions),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 12, maxLength: 12 }),
      ),
    );
    await fc.assert(
      fc.asyncProperty(anyFiles, async ([versions, fileOf]) => {
        const files = [0, 1, 2].map((file) => versions.filter((_, i) => fileOf[i] === file).map(asNode));
        const read = (near: Near) => Promise.all(files.map((nodes, i) => filtered(`${i}`, nodes, near)));
        expect(nearFeaturesOf(await read(NEAR_LAND))).toEqual(nearFeaturesOf(await read(null)));
      }),
      { numRuns: 300 },
    );
  });

  it('of what cannot be told apart the later file is taken, near or far', async () => {
    const ids = async (...places: number[]) => {
      const files = places.map((lon, i) => filtered(`${i}`, [station(lon)], NEAR_LAND));
      return nearFeaturesOf(await Promise.all(files)).map(({ id }) => id);
    };
    expect([await ids(10, 20), await ids(20, 10), await ids(20, 10, 20)]).toEqual([[], ['node/1'], []]);
  });

  it('a ready-made feature gives way to a newer version far away', async () => {
    const moved = await filtered(
      'moved',
      [{ ...station(20, 2), timestamp: '2024-01-01T00:00:00Z' }],
      NEAR_LAND,
    );
    const ready = (editedAt: string): MappedFeature => ({
      id: 'node/1',
      geometry: { type: 'Point', coordinates: [10, 50] },
      tags: FUEL,
      editedAt,
    });
    const count = (editedAt: string) => unite([moved], [ready(editedAt)], []).features.length;
    expect([count('2023-01-01T00:00:00Z'), count('2025-01-01T00:00:00Z')]).toEqual([0, 1]);
  });

  it('one version that two files have in parts is kept when a part of it is near', async () => {
    const way: RawElement = { type: 'way', id: 5, version: 2, nodes: [1, 2], tags: FUEL };
    const east = await filtered('east', [{ type: 'node', id: 2, lon: 20, lat: 50 }, way], NEAR_LAND);
    const west = await filtered('west', [{ type: 'node', id: 1, lon: 10, lat: 50 }, way], NEAR_LAND);
    const nothing = await filtered('nothing', [way], NEAR_LAND);
    for (const files of [
      [east, west],
      [west, east],
    ])
      expect(unite(files, [], []).features.map(({ id }) => id)).toEqual(['way/5']);
    for (const files of [
      [east, nothing],
      [nothing, east],
    ])
      expect(unite(files, [], [])).toMatchObject({ features: [], skipped: [] });
  });
});

describe('extents', () => {
  it('a file of far objects only is not an empty one', async () => {
    const { far } = await filtered('a', [station(20), { ...station(21), id: 2 }], NEAR_LAND);
    const box: Bbox = [20, 50, 21, 50];
    expect([farCount(far), far.bbox]).toEqual([2, box]);
  });
});
