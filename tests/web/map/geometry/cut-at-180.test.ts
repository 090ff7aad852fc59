import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { area, booleanPointInPolygon } from '@turf/turf';
import type { Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { areasCutAt180 } from '../../../../web/map/geometry/cut-at-180.ts';
import { worldOf } from '../../../../web/map/geometry/world-land.ts';

const polygon = (...coordinates: Position[][]) => ({ type: 'Polygon' as const, coordinates });
const lonsOf = (rings: readonly Position[][]) => rings.flat().map(([lon = Number.NaN]) => lon);
/** Twice the signed area in square degrees: positive counter-clockwise. */
const turn = (ring: readonly Position[]) =>
  ring.reduce((sum, [lon = 0, lat = 0], i) => {
    const [nextLon = 0, nextLat = 0] = ring[(i + 1) % ring.length] ?? [];
    return sum + lon * nextLat - nextLon * lat;
  }, 0);

describe('areas cut at the 180th meridian', () => {
  it('leaves an area that does not reach it as it is, its ring counter-clockwise', () => {
    const ring = [
      [10, 0],
      [10, 5],
      [20, 5],
      [20, 0],
      [10, 0],
    ];
    const [whole, ...more] = areasCutAt180(polygon(ring));
    expect(more).toEqual([]);
    expect(lonsOf(whole!.geometry.coordinates).sort()).toEqual(lonsOf([ring]).sort());
    expect(turn(whole!.geometry.coordinates[0]!)).toBeGreaterThan(0);
  });

  it('makes two of one that crosses it, each with its part of a hole, the same in area', () => {
    const crossing = polygon(
      [
        [170, -10],
        [-170, -10],
        [-170, 10],
        [170, 10],
        [170, -10],
      ],
      [
        [178, -2],
        [178, 2],
        [-178, 2],
        [-178, -2],
        [178, -2],
      ],
    );
    const parts = areasCutAt180(crossing);
    expect(parts.map(({ geometry }) => geometry.coordinates.length)).toEqual([2, 2]);
    expect(
      parts
        .map(({ geometry }) => lonsOf(geometry.coordinates))
        .map((lons) => [Math.min(...lons), Math.max(...lons)]),
    ).toEqual([
      [170, 180],
      [-180, -170],
    ]);
    const lying = polygon(
      [
        [0, -10],
        [20, -10],
        [20, 10],
        [0, 10],
        [0, -10],
      ],
      [
        [8, -2],
        [8, 2],
        [12, 2],
        [12, -2],
        [8, -2],
      ],
    );
    const sum = parts.reduce((all, part) => all + area(part), 0);
    expect(sum / area(lying)).toBeCloseTo(1, 9);
    for (const { geometry } of parts) {
      const [outer, hole] = geometry.coordinates;
      expect(turn(outer!)).toBeGreaterThan(0);
      expect(turn(hole!)).toBeLessThan(0);
    }
  });

  it('takes the pole into a ring that goes round it', () => {
    const ring = [-150, -90, -30, 30, 90, 150, -150].map((lon) => [lon, -70]);
    const areas = areasCutAt180(polygon(ring));
    for (const lon of [-179, -100, 0, 100, 179]) {
      expect(areas.filter((each) => booleanPointInPolygon([lon, -80], each)).length, `${lon}`).toBe(1);
      expect(areas.filter((each) => booleanPointInPolygon([lon, -60], each)).length, `${lon}`).toBe(0);
    }
  });
});

describe('the world', () => {
  const file = createRequire(import.meta.url).resolve('world-atlas/countries-50m.json');
  const { land, borders } = worldOf(JSON.parse(readFileSync(file, 'utf8')) as Parameters<typeof worldOf>[0]);

  it('has no step across the map, none beyond it, and every outer ring counter-clockwise', () => {
    // A sliver may come to nothing by rounding.
    const turns = land.features.map(({ geometry }) => turn(geometry.coordinates[0] ?? []));
    expect(Math.min(...turns)).toBeGreaterThan(-1e-9);
    const rings = land.features.flatMap(({ geometry }) => geometry.coordinates);
    const farthest = rings.flat().reduce((most, [lon = 0]) => Math.max(most, Math.abs(lon)), 0);
    expect(farthest).toBeLessThanOrEqual(180);
    // Antarctica's own edge runs along the end of the map.
    const long = rings.flatMap((ring) =>
      ring.filter(([lon = 0, lat = 0], index) => {
        const [beforeLon = lon] = ring[index - 1] ?? [];
        return Math.abs(lat) < 85 && Math.abs(lon - beforeLon) >= 180;
      }),
    );
    expect(long).toEqual([]);
  });

  it('has a border between two neighbours, and none along a coast', () => {
    const near = (lon: number, lat: number) =>
      borders.features
        .flatMap(({ geometry }) => geometry.coordinates.flat())
        .some(([x = 0, y = 0]) => Math.hypot(x - lon, y - lat) < 0.5);
    expect(near(-2, 49)).toBe(false); // the coast of Normandy
    expect(near(7.6, 47.6)).toBe(true); // Basel, where three countries meet
  });
});
