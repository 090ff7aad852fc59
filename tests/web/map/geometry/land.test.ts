import type { Position } from 'geojson';
import { describe, expect, test } from 'vitest';
import type { MapData } from '../../../../server/contract/answers/map.ts';
import { groundFeatures, landAreas } from '../../../../web/map/geometry/land.ts';
import { sampleReply } from '../../sample-reply.ts';

type Ground = MapData['ground']['features'][number];

const coast = (...coordinates: Position[]): Ground => ({
  type: 'Feature',
  geometry: { type: 'LineString', coordinates },
  properties: { what: 'coast', name: null, rank: 'coastline' },
});
const areasOf = (...features: Ground[]) =>
  landAreas(groundFeatures({ ...sampleReply().map, ground: { type: 'FeatureCollection', features } }));

const SQUARE: Position[] = [
  [0, 0],
  [2, 0],
  [2, 2],
  [0, 2],
  [0, 0],
];

describe('land from coastlines', () => {
  test('is an island where the line closes with the land on its left', () => {
    expect(areasOf(coast(...SQUARE)).map((area) => area.geometry.coordinates)).toEqual([[SQUARE]]);
  });

  test('is joined from pieces in any order', () => {
    const pieces = [coast(...SQUARE.slice(2, 4)), coast(...SQUARE.slice(3)), coast(...SQUARE.slice(0, 3))];
    const [area] = areasOf(...pieces);
    expect(new Set(area?.geometry.coordinates.flat(1).map(String))).toEqual(new Set(SQUARE.map(String)));
  });

  test('is none where the line stays open, or runs round a sea', () => {
    expect(areasOf(coast(...SQUARE.slice(0, 4)))).toEqual([]);
    expect(areasOf(coast(...[...SQUARE].reverse()))).toEqual([]);
  });

  test('comes as given where the reply gives areas', () => {
    const land: Ground = {
      type: 'Feature',
      geometry: { type: 'Polygon', coordinates: [SQUARE] },
      properties: { what: 'land', name: null, rank: 'island' },
    };
    expect(areasOf(land, coast(...SQUARE))).toHaveLength(1);
  });
});
