import { describe, expect, it } from 'vitest';
import { isInBox } from '../../../../server/io/osm/extract/position.ts';
import type { RawElement } from '../../../../server/io/osm/extract/raw-element.ts';
import { GroundWays, groundKindOf } from '../../../../server/io/osm/keep/ground.ts';
import { groundFeatures } from '../../../../server/io/osm/keep/ground-features.ts';
import { IdList } from '../../../../server/io/osm/keep/id-list.ts';

const way = (id: number, tags: Record<string, string>, nodes = [1, 2]): RawElement => ({
  type: 'way',
  id,
  nodes,
  tags,
});
const node = (id: number, lon: number, lat: number, tags?: Record<string, string>): RawElement => ({
  type: 'node',
  id,
  lon,
  lat,
  ...(tags !== undefined && { tags }),
});

describe('ground', () => {
  it.each([
    ['way', { highway: 'motorway' }, 'road', 'motorway'],
    ['way', { highway: 'trunk_link' }, 'road', 'trunk_link'],
    ['way', { highway: 'unclassified' }, 'road', 'unclassified'],
    ['way', { highway: 'track' }, 'track', 'track'],
    ['way', { natural: 'coastline' }, 'coast', 'coastline'],
    ['node', { place: 'hamlet' }, 'place', 'hamlet'],
  ] as const)('%s %j is drawn as %s', (type, tags, what, rank) => {
    expect(groundKindOf(type, tags)).toMatchObject({ what, rank });
  });

  it.each([
    ['way', { highway: 'footway' }],
    ['way', { highway: 'track_link' }],
    ['way', { place: 'town' }],
    ['node', { highway: 'primary' }],
    ['node', { place: 'locality' }],
    ['relation', { natural: 'coastline' }],
  ] as const)('%s %j is not drawn', (type, tags) => {
    expect(groundKindOf(type, tags)).toBeNull();
  });

  it('becomes lines and points, higher ranks first, each object once', () => {
    const raw = [
      way(1, { highway: 'track', name: 'Salt track' }),
      way(2, { highway: 'primary' }),
      way(2, { highway: 'primary' }),
      way(3, { highway: 'primary' }, [1, 77]),
      { ...way(4, { natural: 'coastline' }, []), geometry: [{ lat: 1, lon: 2 }, null, { lat: 3, lon: 4 }] },
      node(1, 10, 20),
      node(2, 11, 21),
      node(3, 12, 22, { place: 'hamlet', name: 'Low' }),
      node(4, 13, 23, { place: 'city', name: 'High' }),
    ];
    expect(groundFeatures(raw).map(({ properties, geometry }) => [properties, geometry.coordinates])).toEqual(
      [
        [
          { what: 'coast', name: null, rank: 'coastline' },
          [
            [2, 1],
            [4, 3],
          ],
        ],
        [
          { what: 'road', name: null, rank: 'primary' },
          [
            [10, 20],
            [11, 21],
          ],
        ],
        [
          { what: 'track', name: 'Salt track', rank: 'track' },
          [
            [10, 20],
            [11, 21],
          ],
        ],
        [{ what: 'place', name: 'High', rank: 'city' }, [13, 23]],
        [{ what: 'place', name: 'Low', rank: 'hamlet' }, [12, 22]],
      ],
    );
  });

  it('is thinned from the lowest rank, and counts what went', () => {
    const ways = new GroundWays(3);
    const kinds = ['track', 'primary', 'track', 'tertiary', 'motorway'];
    for (const [i, highway] of kinds.entries())
      ways.add(way(i, { highway }), groundKindOf('way', { highway })!);
    expect([ways.ways.map(({ id }) => id), ways.dropped]).toEqual([[4, 1, 3], 2]);
  });

  it('a box may cross the 180th meridian', () => {
    expect([179, -179, 0].map((lon) => isInBox([170, -1, -170, 1], lon, 0))).toEqual([true, true, false]);
    expect([179, -179, 0].map((lon) => isInBox([-10, -1, 10, 1], lon, 0))).toEqual([false, false, true]);
  });

  it('a long list of ids finds what it holds, sorted or not', () => {
    const list = new IdList();
    for (let i = 0; i < 5_000; i += 1) list.add((i * 7_919) % 100_003);
    expect([list.has(7_919), list.has(7_920), list.has(0)]).toEqual([true, false, true]);
    list.add(-4);
    expect([list.has(-4), list.has(7_919)]).toEqual([true, true]);
    list.add(7_920);
    expect([list.has(7_920), list.has(-4)]).toEqual([true, true]);
  });
});
