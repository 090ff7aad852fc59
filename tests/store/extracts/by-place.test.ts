import fc from 'fast-check';
import { expect, it } from 'vitest';
import { byPlace } from '../../../server/store/extracts/by-place.ts';
import type { BoxedRow } from '../../../server/store/port/port.ts';

const rowAt = (lon: number, lat: number): BoxedRow => ({ box: [lon, lat, lon, lat], json: `${lon} ${lat}` });
const place = fc.tuple(
  fc.double({ min: -180, max: 180, noNaN: true }),
  fc.double({ min: -90, max: 90, noNaN: true }),
);

/** From each row to the next, degrees, all together. */
const way = (rows: readonly BoxedRow[]): number =>
  rows.slice(1).reduce((sum, { box: [x, y] }, at) => {
    const [lastX = 0, lastY = 0] = rows[at]?.box ?? [];
    return sum + Math.hypot(x - lastX, y - lastY);
  }, 0);

it('rows by place are the same rows, whatever their places', () => {
  fc.assert(
    fc.property(fc.array(place, { maxLength: 30 }), (places) => {
      const rows = places.map(([lon, lat]) => rowAt(lon, lat));
      expect(new Set(byPlace(rows))).toEqual(new Set(rows));
      expect(byPlace(rows)).toHaveLength(rows.length);
    }),
  );
});

it('neighbours come one after the other', () => {
  const rows = fc.sample(place, { numRuns: 500, seed: 3 }).map(([lon, lat]) => rowAt(lon, lat));
  expect(way(byPlace(rows))).toBeLessThan(way(rows) / 5);
});
