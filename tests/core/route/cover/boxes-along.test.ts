import { expect, it } from 'vitest';
import { touchesRoute } from '../../../../server/app/near-route.ts';
import { boxesAlong } from '../../../../server/core/route/cover/boxes-along.ts';

const line = (places: readonly [number, number][]) => ({
  lon: Float64Array.from(places, ([lon]) => lon),
  lat: Float64Array.from(places, ([, lat]) => lat),
});

it.each([
  [
    'over the 180th meridian',
    (at: number): [number, number] => [((179.5 + at / 100 + 180) % 360) - 180, -17],
    5,
  ],
  ['far north', (at: number): [number, number] => [20 + at / 50, 78], 50],
  ['up a meridian', (at: number): [number, number] => [-179.99, at / 60], 20],
])('a route %s is covered by boxes that all lie on the map', { tags: 'slow' }, (_name, placeAt, km) => {
  const route = line(Array.from({ length: 120 }, (_, at) => placeAt(at)));
  const boxes = boxesAlong(route, km);
  for (const [west, south, east, north] of boxes) {
    expect(west).toBeGreaterThanOrEqual(-180);
    expect(east).toBeLessThanOrEqual(180);
    expect(west).toBeLessThanOrEqual(east);
    expect([south >= -90, north <= 90]).toEqual([true, true]);
  }
  // Places all around: each that is within reach lies in a box.
  let near = 0;
  const [first = 0] = route.lat;
  for (let lat = first - 1; lat <= first + 3; lat += 0.09)
    for (let lon = -180; lon < 180; lon += 0.45) {
      if (!touchesRoute(route, [lon, lat, lon, lat], km - 1)) continue;
      near += 1;
      expect(boxes.some(([w, s, e, n]) => w <= lon && lon <= e && s <= lat && lat <= n)).toBe(true);
    }
  expect(near).toBeGreaterThan(0);
});

it('a long route has few boxes, which lie close along it', () => {
  const route = line(Array.from({ length: 1001 }, (_, at): [number, number] => [88 + at * 0.0165, -35]));
  const boxes = boxesAlong(route, 5);
  expect(boxes.length).toBeLessThan(100);
  const areaDeg = boxes.reduce((sum, [w, s, e, n]) => sum + (e - w) * (n - s), 0);
  expect(areaDeg).toBeLessThan(16.5 * 0.25 * 2);
});
