import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxOf,
  isNear,
  isPlaceNear,
  kmOffRoute,
  nearGrid,
  nearRoute,
  touchesRoute,
} from '../../server/app/near-route.ts';
import type { Bbox } from '../../server/contract/common.ts';

/** Some 222 km along the parallel of 35° S, a vertex at each 0.02 degrees. */
const parallel = (west: number) => ({
  lon: Float64Array.from({ length: 122 }, (_, i) => west + i * 0.02),
  lat: Float64Array.from({ length: 122 }, () => -35),
});

const pointBox = (lon: number, lat: number): Bbox => [lon, lat, lon, lat];

describe('near the route', () => {
  it('is the same of a place as of a box that is no more than it, over the 180th meridian too', () => {
    for (const west of [85, 178.5, -180]) {
      const grid = nearGrid(parallel(west), 60);
      fc.assert(
        fc.property(
          fc.double({ min: -180, max: 180, noNaN: true }),
          fc.double({ min: -37, max: -33, noNaN: true }),
          (lon, lat) => {
            expect(isPlaceNear(grid, lon, lat)).toBe(isNear(grid, pointBox(lon, lat)));
          },
        ),
      );
      expect(isPlaceNear(grid, west === 178.5 ? -179.9 : west, -35)).toBe(true);
    }
  });

  const near = nearRoute(parallel(85), 60);

  it('takes in everything within the margin', () => {
    // 60 km are 0.541 degrees of latitude at 35° S (110.94 km a degree), 0.657 of longitude.
    fc.assert(
      fc.property(
        fc.double({ min: 84.35, max: 88.06, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (lon, off) => {
          const beside = lon < 85 || lon > 87.42 ? 0 : off * 0.54;
          expect(near(pointBox(lon, -35 + beside))).toBe(true);
        },
      ),
    );
  });

  it('leaves out what is far away', () => {
    expect(near(pointBox(86, -33.5))).toBe(false);
    expect(near(pointBox(90, -35))).toBe(false);
    expect(near(pointBox(-94, 35))).toBe(false);
  });

  it('works over the 180th meridian, with longitudes run on or not', () => {
    const over = nearRoute(parallel(179), 60);
    expect(over(pointBox(-179.5, -35))).toBe(true);
    expect(over([179.9, -35.1, -179.9, -34.9])).toBe(true);
    expect(over(pointBox(-175, -35))).toBe(false);
  });

  it('works by the poles', () => {
    const north = nearRoute({ lon: Float64Array.of(10), lat: Float64Array.of(89.9) }, 60);
    expect([north(pointBox(-170, 90)), north(pointBox(10, 89)), north(pointBox(10, -90))]).toEqual([
      true,
      false,
      false,
    ]);
    const south = nearRoute({ lon: Float64Array.of(10), lat: Float64Array.of(-90) }, 60);
    expect([south(pointBox(100, -89.8)), south(pointBox(100, -88)), south(pointBox(100, 90))]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('touches a box to the kilometre', () => {
    const route = parallel(85);
    const south = (km: number): Bbox => [86, -36, 86.1, -35 - km / 110.94];
    expect(touchesRoute(route, south(5.9), 5)).toBe(true);
    expect(touchesRoute(route, south(6.5), 5)).toBe(false);
    expect(touchesRoute(parallel(179), [-179.8, -36, -179.7, -34], 5)).toBe(true);
    expect(touchesRoute(route, [-180, -90, 180, 90], 5)).toBe(true);
  });

  it('finds the box of any geometry', () => {
    expect(boxOf({ type: 'Point', coordinates: [1, 2] })).toEqual([1, 2, 1, 2]);
    expect(
      boxOf({
        type: 'Polygon',
        coordinates: [
          [
            [0, 1],
            [4, 2],
            [2, -3],
            [0, 1],
          ],
        ],
      }),
    ).toEqual([0, -3, 4, 2]);
    const collection = { type: 'GeometryCollection', geometries: [{ type: 'Point', coordinates: [9, 8] }] };
    expect(boxOf(collection)).toEqual([9, 8, 9, 8]);
    expect(boxOf({ type: 'MultiPoint', coordinates: [] })).toBeNull();
  });
});

describe('how far off the route a box lies', () => {
  const route = { lon: Float64Array.of(0, 0.01, 0.02), lat: Float64Array.of(0, 0, 0) };

  it.each([
    ['touches it', [-1, -1, 1, 1], 0],
    ['lies a degree north', [0, 1, 1, 2], 110.5],
    ['lies a degree east', [1.02, 0, 2, 1], 110.5],
    ['lies west over the 180th meridian', [179, 0, -179, 1], 178.98 * 110.5],
  ] as const)('where it %s', (_name, box, km) => {
    expect(kmOffRoute(route, [...box])).toBeCloseTo(km, 6);
  });
});
