import { describe, expect, it } from 'vitest';
import type { Surrounding } from '../../../server/core/input/sources.ts';
import { surroundingsGround } from '../../../server/core/mapview/surroundings-ground.ts';

const BOX: [number, number, number, number] = [9, 46, 10, 48];
type Place = readonly [number, number];
const surrounding = (what: Surrounding['what'], ...lines: Place[][]): Surrounding => ({
  id: 'relation/1',
  what,
  name: 'Long Water',
  lines: lines.map((line) => Float64Array.from(line.flat())),
});
const drawn = (...objects: Surrounding[]) => surroundingsGround({ objects, roads: [] }, BOX);
const square = (west: number, south: number, size: number): Place[] => [
  [west, south],
  [west + size, south],
  [west + size, south + size],
  [west, south + size],
  [west, south],
];

describe('rivers, lakes and borders as ground', () => {
  it('draws rivers, canals and borders as lines, by name, and nothing of what only bears on supplies', () => {
    const line: Place[] = [
      [9, 47],
      [9.2, 47.3],
      [9.5, 47],
    ];
    const ground = drawn(
      ...(['river', 'canal', 'border', 'railway', 'military', 'settlement'] as const).map((what) =>
        surrounding(what, line),
      ),
    );
    expect(ground.map(({ properties }) => [properties.what, properties.rank, properties.name])).toEqual([
      ['river', 'river', 'Long Water'],
      ['river', 'canal', 'Long Water'],
      ['border', 'border', 'Long Water'],
    ]);
    expect(ground[0]?.geometry.coordinates).toEqual(line);
    expect(drawn(surrounding('military', square(9.1, 47.1, 0.4)))).toEqual([]);
  });

  it('joins a shore of several pieces, in whatever order and whichever way they run, and leaves an island in it', () => {
    const shore = square(9.1, 47.1, 0.4);
    const pieces = [shore.slice(0, 3), shore.slice(3), shore.slice(2, 4).toReversed()];
    const island = square(9.2, 47.2, 0.1);
    const [lake, ...more] = drawn(surrounding('lake', ...pieces, island));
    expect(more).toEqual([]);
    const { coordinates } = lake!.geometry as { coordinates: number[][][] };
    expect(coordinates.map((ring) => ring.length)).toEqual([5, 5]);
    expect(coordinates[1]).toEqual(island);
    expect(new Set(coordinates[0]!.map(String))).toEqual(new Set(shore.map(String)));
  });

  it('makes an area of each of two lakes in one, and of a pond on an island', () => {
    const ground = drawn(
      surrounding('lake', square(9.1, 47.1, 0.4), square(9.2, 47.2, 0.2), square(9.25, 47.25, 0.05)),
      surrounding('lake', square(9, 46.1, 0.1), square(9.5, 46.1, 0.1)),
    );
    expect(ground.map(({ geometry }) => geometry.coordinates.length)).toEqual([2, 1, 1, 1]);
  });

  it('draws no shore that does not close', () => {
    expect(drawn(surrounding('lake', square(9.1, 47.1, 0.4).slice(0, 4)))).toEqual([]);
  });
});
