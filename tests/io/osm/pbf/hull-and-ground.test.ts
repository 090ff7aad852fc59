import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../../../fixtures/pbf-writer.ts';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { RawElement, RawNode } from '../../../../server/io/osm/extract/raw-element.ts';
import { GroundKeeper, groundWithNodes } from '../../../../server/io/osm/pbf/find/ground-keeper.ts';
import { IdFilter } from '../../../../server/io/osm/pbf/find/id-filter.ts';
import { readBytes } from './pbf-files.ts';

const node = (id: number, lon: number, lat: number, tags: Record<string, string> = {}): PbfElement => ({
  type: 'node',
  id,
  lon,
  lat,
  tags,
});

/** Farthest reach of the points in a direction. */
const reach = (points: readonly (readonly [number, number])[], angle: number) =>
  Math.max(...points.map(([x, y]) => x * Math.cos(angle) + y * Math.sin(angle)));

describe('the hull of a file without bounds', () => {
  it('should reach as far as the nodes in each of 64 directions, and have nodes only as corners', async () => {
    const point = fc.tuple(
      fc.integer({ min: -800, max: 800 }).map((n) => n / 10),
      fc.integer({ min: -800, max: 800 }).map((n) => n / 10),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(point, { minLength: 3, maxLength: 300 }),
        fc.boolean(),
        async (points, dense) => {
          const nodes = points.map(([lon, lat], index) => node(index + 1, lon, lat));
          const { hull, bounds } = await readBytes(encodePbfElements(null, nodes, { blockSize: 20, dense }));
          expect(bounds).toBeNull();
          if (hull === null) return;
          expect(hull[0]).toEqual(hull.at(-1));
          for (const corner of hull) expect(points).toContainEqual(corner);
          for (let k = 0; k < 64; k += 1) {
            const angle = (2 * Math.PI * k) / 64;
            expect(reach(hull, angle)).toBeCloseTo(reach(points, angle), 9);
          }
        },
      ),
      { numRuns: 60, seed: 2 },
    );
  });

  it('should be null when the nodes span no area', async () => {
    const line = [node(1, 1, 1), node(2, 2, 1)];
    expect((await readBytes(encodePbfElements(null, line))).hull).toBeNull();
    expect((await readBytes(encodePbfElements(null, []))).hull).toBeNull();
  });

  it('should not span the Earth when the nodes lie on both sides of the 180th meridian', async () => {
    const nodes = [node(1, 179, -18), node(2, -179, -18), node(3, 179, -16), node(4, -179, -16)];
    const { hull } = await readBytes(encodePbfElements(null, nodes));
    expect(hull?.slice(1).sort()).toEqual([
      [179, -16],
      [179, -18],
      [181, -16],
      [181, -18],
    ]);
  });
});

const BOX = [10, 20, 11, 21] as [number, number, number, number];

const WORLD: PbfElement[] = [
  node(1, 10.5, 20.5, { place: 'town', name: 'Inner', note: 'x' }),
  node(2, 12, 22, { place: 'town', name: 'Outer' }),
  node(3, 10.5, 20.6, { place: 'island' }),
  node(10, 10.1, 20.1),
  node(11, 12, 20.1),
  node(12, 13, 20.1),
  node(13, 9, 20.5),
  { type: 'way', id: 1, nodes: [11, 10], tags: { highway: 'track', surface: 'sand', note: 'x' } },
  { type: 'way', id: 2, nodes: [11, 12], tags: { highway: 'primary' } },
  { type: 'way', id: 3, nodes: [10, 11], tags: { highway: 'footway' } },
  { type: 'way', id: 4, nodes: [13, 10], tags: { natural: 'coastline' } },
  // Crosses the box without a node in it.
  { type: 'way', id: 5, nodes: [13, 11], tags: { highway: 'motorway' } },
  { type: 'way', id: 6, nodes: [10, 999, 11], tags: { highway: 'constructor' } },
  { type: 'way', id: 7, nodes: [10, 999, 12], tags: { highway: 'tertiary_link' } },
];

const GROUND: RawElement[] = [
  { type: 'node', id: 1, lon: 10.5, lat: 20.5, tags: { place: 'town', name: 'Inner' } },
  { type: 'node', id: 13, lon: 9, lat: 20.5 },
  { type: 'node', id: 10, lon: 10.1, lat: 20.1 },
  { type: 'node', id: 12, lon: 13, lat: 20.1 },
  { type: 'node', id: 11, lon: 12, lat: 20.1 },
  { type: 'way', id: 4, nodes: [13, 10], tags: { natural: 'coastline' } },
  { type: 'way', id: 7, nodes: [10, 12], tags: { highway: 'tertiary_link' } },
  { type: 'way', id: 1, nodes: [11, 10], tags: { highway: 'track', surface: 'sand' } },
];

describe('the ground', () => {
  it.each(['dense', 'plain', 'backwards'])(
    'should be the places, roads and coast with a node in the box (%s)',
    async (form) => {
      const elements = form === 'backwards' ? [...WORLD].reverse() : WORLD;
      const read = await readBytes(
        encodePbfElements(null, elements, { dense: form !== 'plain', blockSize: 3 }),
        {
          ground: BOX,
        },
      );
      const sorted = (list: readonly RawElement[]) =>
        [...list].sort((a, b) => a.type.localeCompare(b.type) || a.id - b.id);
      expect(sorted(read.ground)).toEqual(sorted(GROUND));
      expect(read.cautions).toEqual([]);
      expect(read.elements).toEqual([]);
    },
  );

  it('should be read from positions stored in ways', async () => {
    const located: PbfElement = {
      type: 'way',
      id: 1,
      nodes: [10, 11],
      locations: [
        [10.1, 20.1],
        [12, 20.1],
      ],
      tags: { highway: 'track' },
    };
    const read = await readBytes(encodePbfElements(null, [located]), { ground: BOX });
    expect(read.ground).toEqual([
      { type: 'node', id: 10, lon: 10.1, lat: 20.1 },
      { type: 'node', id: 11, lon: 12, lat: 20.1 },
      { type: 'way', id: 1, nodes: [10, 11], tags: { highway: 'track' } },
    ]);
  });

  it('should take a box over the 180th meridian', async () => {
    const nodes = [
      node(1, 179.5, 0, { place: 'town' }),
      node(2, -179.5, 0, { place: 'town' }),
      node(3, 0, 0, { place: 'town' }),
    ];
    const read = await readBytes(encodePbfElements(null, nodes), { ground: [179, -1, -179, 1] });
    expect(read.ground.map((element) => element.id)).toEqual([1, 2]);
  });

  it('should not be gathered unless asked for', async () => {
    expect((await readBytes(encodePbfElements(null, WORLD))).ground).toEqual([]);
  });
});

describe('ways that the filter of ids let through', () => {
  it('should be left out when none of their nodes lies in the box after all', () => {
    const nodes = new Map<number, RawNode>([
      [1, { type: 'node', id: 1, lon: 10.5, lat: 20.5 }],
      [2, { type: 'node', id: 2, lon: 30, lat: 40 }],
      [3, { type: 'node', id: 3, lon: 31, lat: 40 }],
    ]);
    const ways: RawElement[] = [
      { type: 'way', id: 1, nodes: [2, 3] },
      { type: 'way', id: 2, nodes: [1, 2] },
      { type: 'way', id: 3, nodes: [1, 99] },
    ];
    const ground = groundWithNodes(ways, BOX, (id) => nodes.get(id));
    expect(ground.map(({ type, id }) => `${type}/${id}`)).toEqual(['node/1', 'node/2', 'way/2']);
  });
});

describe('a ground that is too large', () => {
  const way = (rank: number, id: number) => ({ rank, way: { type: 'way' as const, id, nodes: [1, 2] } });
  const idsOf = (keeper: GroundKeeper) => keeper.ways().map(({ id }) => id);

  it('should lose its lowest ranks whole, and say so', () => {
    const keeper = new GroundKeeper({ ways: 3, nodes: 100 });
    for (const added of [way(2, 1), way(8, 2), way(3, 3), way(9, 4), way(2, 5)]) keeper.add(added);
    expect(idsOf(keeper)).toEqual([4, 2, 3]);
    expect(keeper.leastRank).toBe(3);
    const [caution] = toContract(keeper.cautions('x.osm.pbf'));
    expect(caution?.code).toBe('ground-thinned');
    expect(caution?.text).toContain('no tracks');
  });

  it('should be bounded by nodes as well', () => {
    const keeper = new GroundKeeper({ ways: 100, nodes: 5 });
    for (const added of [way(2, 1), way(2, 2), way(4, 3), way(4, 4)]) keeper.add(added);
    expect(idsOf(keeper)).toEqual([3, 4]);
  });

  it('should keep what fits of the last rank, and say how many are missing', () => {
    const keeper = new GroundKeeper({ ways: 2, nodes: 100 });
    for (const added of [way(9, 1), way(9, 2), way(9, 3), way(2, 4)]) keeper.add(added);
    expect(idsOf(keeper)).toEqual([1, 2]);
    expect(toContract(keeper.cautions('x'))[0]?.text).toContain('1 ways less');
  });

  it('should say nothing when all of it fits', () => {
    expect(new GroundKeeper().cautions('x')).toEqual([]);
  });
});

describe('the filter of ids', () => {
  it('should never deny an id that was added, and seldom grant another', () => {
    const filter = new IdFilter(new SharedArrayBuffer(1 << 20));
    const idAt = (index: number) => 9_000_000_000 + index * 7 - (index % 2) * 18_000_000_000;
    for (let index = 0; index < 10_000; index += 1) filter.add(idAt(index));
    let granted = 0;
    for (let index = 0; index < 20_000; index += 1) {
      if (index < 10_000) expect(filter.has(idAt(index))).toBe(true);
      else if (filter.has(idAt(index))) granted += 1;
    }
    expect(granted).toBeLessThan(100);
  });
});
