import { booleanPointInPolygon, booleanPointOnLine, lineString, point } from '@turf/turf';
import fc from 'fast-check';
import type { Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { isInside, placeOf, unwrapPolygon } from '../../../../server/core/supply/points/place.ts';

const square = (west: number, south: number, side: number): Position[] => [
  [west, south],
  [west + side, south],
  [west + side, south + side],
  [west, south + side],
  [west, south],
];

/** A star-shaped ring about a centre, radii in degrees. */
const ringAbout = (lon: number, lat: number, radii: readonly number[]): Position[] => {
  const ring = radii.map((radius, i) => {
    const turn = (2 * Math.PI * i) / radii.length;
    return [lon + radius * Math.cos(turn), lat + radius * Math.sin(turn)];
  });
  return [...ring, ring[0]!];
};
const anyRing = fc
  .tuple(
    fc.double({ min: -170, max: 170, noNaN: true }),
    fc.double({ min: -80, max: 80, noNaN: true }),
    fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 3, maxLength: 12 }),
  )
  .map(([lon, lat, radii]) => ringAbout(lon, lat, radii));

describe('a place on a geometry', () => {
  it('is the point itself, or the first of several', () => {
    expect(placeOf({ type: 'Point', coordinates: [88, -35] })).toEqual([88, -35]);
    expect(
      placeOf({
        type: 'MultiPoint',
        coordinates: [
          [1, 2],
          [3, 4],
        ],
      }),
    ).toEqual([1, 2]);
  });

  it('of a collection with an empty area is that of its next part', () => {
    const geometries: Geometry[] = [
      { type: 'Polygon', coordinates: [] },
      { type: 'Point', coordinates: [88, -35] },
    ];
    expect(placeOf({ type: 'GeometryCollection', geometries })).toEqual([88, -35]);
  });

  it('is on the surface of any area, by an independent test', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const [lon, lat] = placeOf({ type: 'Polygon', coordinates: [ring] })!;
        expect(booleanPointInPolygon(point([lon, lat]), { type: 'Polygon', coordinates: [ring] })).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('is beside the hole of a ring, and in the horseshoe rather than its mouth', () => {
    const holed: Geometry = { type: 'Polygon', coordinates: [square(0, 0, 10), square(2, 2, 6)] };
    const [lon, lat] = placeOf(holed)!;
    expect(isInside(unwrapPolygon([square(2, 2, 6)]), lon, lat)).toBe(false);
    expect(isInside(unwrapPolygon([square(0, 0, 10)]), lon, lat)).toBe(true);
    const horseshoe: Position[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [9, 10],
      [9, 1],
      [1, 1],
      [1, 10],
      [0, 10],
      [0, 0],
    ];
    const place = placeOf({ type: 'Polygon', coordinates: [horseshoe] })!;
    expect(booleanPointInPolygon(point(place), { type: 'Polygon', coordinates: [horseshoe] })).toBe(true);
  });

  it('is on the largest part of several', () => {
    const parts: Geometry = { type: 'MultiPolygon', coordinates: [[square(0, 0, 1)], [square(20, 0, 3)]] };
    expect(placeOf(parts)![0]).toBeGreaterThan(20);
    const lines: Geometry = {
      type: 'MultiLineString',
      coordinates: [
        [
          [0, 0],
          [1, 0],
        ],
        [
          [5, 0],
          [9, 0],
        ],
      ],
    };
    expect(placeOf(lines)).toEqual([7, 0]);
    const mixed: Geometry = {
      type: 'GeometryCollection',
      geometries: [
        { type: 'Point', coordinates: [50, 50] },
        { type: 'Polygon', coordinates: [square(0, 0, 1)] },
      ],
    };
    expect(placeOf(mixed)).toEqual([0.5, 0.5]);
  });

  it('is half way along a line, on it', () => {
    expect(
      placeOf({
        type: 'LineString',
        coordinates: [
          [0, 0],
          [0, 2],
          [0, 6],
        ],
      }),
    ).toEqual([0, 3]);
    const bent: Position[] = [
      [10, 50],
      [10.4, 50.1],
      [10.1, 50.7],
    ];
    const place = placeOf({ type: 'LineString', coordinates: bent })!;
    expect(booleanPointOnLine(point(place), lineString(bent), { epsilon: 1e-9 })).toBe(true);
    expect(
      placeOf({
        type: 'LineString',
        coordinates: [
          [3, 4],
          [3, 4],
        ],
      }),
    ).toEqual([3, 4]);
  });

  it('is near the 180th meridian when the area is', () => {
    const ring: Position[] = [
      [179.9, -17],
      [-179.7, -17],
      [-179.7, -16.9],
      [179.9, -16.9],
      [179.9, -17],
    ];
    const place = placeOf({ type: 'Polygon', coordinates: [ring] })!;
    expect(place[0]).toBeCloseTo(-179.9, 9);
    expect(place[1]).toBeCloseTo(-16.95, 9);
    const line = placeOf({
      type: 'LineString',
      coordinates: [
        [179.9, -17],
        [-179.9, -17],
      ],
    })!;
    expect(Math.abs(Math.abs(line[0]) - 180)).toBeLessThan(1e-9);
    expect(line[0]).toBeLessThan(180);
  });

  it('is on the outline when there is no surface, and none at all without positions on the Earth', () => {
    expect(
      placeOf({
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [4, 0],
            [0, 0],
          ],
        ],
      }),
    ).toEqual([4, 0]);
    for (const geometry of [
      { type: 'Polygon', coordinates: [] },
      { type: 'Polygon', coordinates: [[]] },
      { type: 'LineString', coordinates: [] },
      { type: 'MultiPolygon', coordinates: [] },
      { type: 'GeometryCollection', geometries: [] },
      { type: 'Point', coordinates: [] },
      { type: 'Point', coordinates: [Number.NaN, 4] },
      { type: 'Point', coordinates: [181, 4] },
      { type: 'Point', coordinates: [4, 91] },
      {
        type: 'LineString',
        coordinates: [
          [0, 0],
          [Number.POSITIVE_INFINITY, 0],
        ],
      },
    ] as Geometry[]) {
      expect(placeOf(geometry), JSON.stringify(geometry)).toBeNull();
    }
  });
});
