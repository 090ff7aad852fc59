import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { locate, positionAt, stepAt } from '../../../../server/core/route/passings/locate.ts';
import { lineOnPlain, onPlain, routeOfSegments, routeThrough } from '../lines.ts';

const wgs84 = geodesic.Geodesic.WGS84;

describe('a place along the route', () => {
  const route = routeThrough([
    [179.5, -17],
    [-179.5, -17],
  ]);

  it('lies on the geodesic at that many metres, its longitude within ±180', () => {
    const line = wgs84.InverseLine(-17, 179.5, -17, -179.5);
    for (const share of [0, 0.1, 0.49, 0.5, 0.77, 1]) {
      const { lon, lat } = positionAt(route, share * route.lengthM);
      const there = line.Position(share * line.s13);
      expect(Math.abs(lon)).toBeLessThanOrEqual(180);
      expect(wgs84.Inverse(lat, lon, there.lat2!, there.lon2!).s12).toBeLessThan(0.01);
    }
  });

  it('is an end when the metres are beyond it', () => {
    expect(positionAt(route, -5)).toEqual({ lon: 179.5, lat: -17 });
    expect(positionAt(route, route.lengthM + 5)).toEqual({ lon: -179.5, lat: -17 });
  });

  it('belongs to the step that begins there', () => {
    expect(stepAt(route, 0)).toBe(0);
    expect(stepAt(route, route.atM[3]!)).toBe(3);
    expect(stepAt(route, route.atM[3]! - 0.001)).toBe(2);
    expect(stepAt(route, route.lengthM)).toBe(route.atM.length - 2);
  });
});

describe('the nearest place on the route', () => {
  const out = lineOnPlain([
    [0, 0],
    [20_000, 0],
    [0, 0],
  ]);

  it('is the earlier of ties, however far away', () => {
    const route = routeThrough(out);
    const near = locate(route, ...onPlain(5_000, 700));
    expect(Math.abs(near.atM - 5_000)).toBeLessThan(1);
    expect(Math.abs(near.offM - 700)).toBeLessThan(1);
    const [lon, lat] = onPlain(0, 0);
    const far = locate(route, lon - 20, lat);
    expect(far.atM).toBe(0);
    expect(Math.abs(far.offM / wgs84.Inverse(lat, lon - 20, lat, lon).s12! - 1)).toBeLessThan(0.003);
  });

  it('is found on a bridge, too: a camp is where it is', () => {
    const route = routeOfSegments(
      [onPlain(0, 0), onPlain(1_000, 0)],
      [onPlain(9_000, 0), onPlain(10_000, 0)],
    );
    expect(Math.abs(locate(route, ...onPlain(5_000, 100)).atM - 5_000)).toBeLessThan(1);
  });

  it('is the place itself for a place on the line', () => {
    const route = routeThrough(out);
    for (const atM of [0, 1, 7_777.7, 19_999]) {
      const { lon, lat } = positionAt(route, atM);
      const found = locate(route, lon, lat);
      expect(Math.abs(found.atM - atM)).toBeLessThan(0.01);
      expect(found.offM).toBeLessThan(0.1);
    }
  });
});
