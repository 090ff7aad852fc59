import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Fix, placesNear } from '../../../server/core/cab/places-near.ts';
import { type RouteSketch, routeSketch } from '../../../server/core/cab/route-sketch.ts';
import { routeOf } from '../../../server/core/route/build/route-of.ts';
import { locate, positionAt } from '../../../server/core/route/passings/locate.ts';
import type { RouteLine } from '../../../server/core/route/route-line.ts';
import { documentOf } from '../../helpers/analyse-input.ts';

function lineOf(points: [number, number][]): RouteLine {
  const route = routeOf(documentOf([points]), { part: 'all', sparseStepM: Number.POSITIVE_INFINITY });
  if (!route.ok) throw new Error(route.refusal.code);
  return route.value;
}

const fixAt = (lon: number, lat: number, accuracyM = 5): Fix => ({ lon, lat, accuracyM });

function found(sketch: RouteSketch, fix: Fix, lastM: number | null = null) {
  const near = placesNear(sketch, fix, lastM);
  if (near.kind !== 'found') throw new Error(near.kind);
  return near.places;
}

/** A winding road from anywhere, also over the 180th meridian. */
const winding = fc
  .record({
    lon: fc.double({ min: -180, max: 180, noNaN: true }),
    lat: fc.double({ min: -65, max: 65, noNaN: true }),
    turns: fc.array(fc.double({ min: -0.9, max: 0.9, noNaN: true }), { minLength: 3, maxLength: 40 }),
  })
  .map(({ lon, lat, turns }) => {
    let heading = 0;
    const points: [number, number][] = [[lon, lat]];
    for (const turn of turns) {
      const [x, y] = points.at(-1) ?? [lon, lat];
      heading = Math.max(-1.2, Math.min(1.2, heading + turn));
      const next = x + 0.04 * Math.cos(heading);
      points.push([next > 180 ? next - 360 : next, y + 0.02 * Math.sin(heading)]);
    }
    return lineOf(points);
  });

describe('the places of a route near a position', () => {
  it('are right to what the sketch leaves out', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(winding, fc.double({ min: 0, max: 1, noNaN: true }), (route, share) => {
        const sketch = routeSketch(route);
        const atM = share * route.lengthM;
        const { lon, lat } = positionAt(route, atM);
        const [place] = found(sketch, fixAt(lon, lat), atM);
        expect(place.offM).toBeLessThan(25);
        expect(Math.abs(place.atM - atM)).toBeLessThan(60);
        const exact = locate(route, lon, lat);
        expect(Math.abs(place.atM - exact.atM)).toBeLessThan(60);
      }),
      { numRuns: 300, seed: 20_261_130 },
    );
  });

  it('are both ways of a spur, the one nearest to where one was last first', () => {
    const route = lineOf([
      [10, 50],
      [10.5, 50],
      [10.5, 50.2],
      [10.5, 50],
      [11, 50],
    ]);
    const sketch = routeSketch(route);
    const spurM = locate(route, 10.5, 50).atM;
    const fix = fixAt(10.5003, 50.1);
    const places = found(sketch, fix);
    expect(places).toHaveLength(2);
    const [there, back] = places;
    expect(there.atM).toBeGreaterThan(spurM + 11_000);
    expect((back?.atM ?? 0) - there.atM).toBeCloseTo(2 * 11_120, -3);
    expect(found(sketch, fix, (back?.atM ?? 0) + 5_000)[0].atM).toBe(back?.atM);
    expect(found(sketch, fix, 0)[0].atM).toBe(there.atM);
  });

  it('are none far off the road, nor for a position that is not well known', () => {
    const route = lineOf([
      [10, 50],
      [11, 50],
    ]);
    const sketch = routeSketch(route);
    const beside = found(sketch, fixAt(10.5, 50.008))[0].offM;
    expect(Math.abs(beside - locate(route, 10.5, 50.008).offM)).toBeLessThan(3);
    expect(beside).toBeGreaterThan(700);
    const far = placesNear(sketch, fixAt(10.5, 50.1), null);
    expect(far).toMatchObject({ kind: 'far' });
    expect('offM' in far && far.offM).toBeCloseTo(11_000, -3);
    expect(placesNear(sketch, fixAt(10.5, 50, 3_000), null)).toEqual({ kind: 'rough', accuracyM: 3_000 });
  });

  it('leave out what no position shows, and keep a step short', () => {
    const points = Array.from({ length: 2_001 }, (_, i): [number, number] => [
      10 + i / 2_000,
      50 + 1e-6 * (i % 2),
    ]);
    const { atM, lon } = routeSketch(lineOf(points));
    expect(lon.length).toBeLessThan(40);
    for (const [index, toM] of atM.slice(1).entries()) expect(toM - (atM[index] ?? 0)).toBeLessThan(5_001);
  });
});
