import { describe, expect, it } from 'vitest';
import { bandOf, commonSpans, spansNearRoads } from '../../../../server/core/route/cover/near-roads.ts';
import { cellOf } from '../../../../server/core/route/cover/road-cells.ts';
import { equatorLon } from '../../../helpers/analyse-input.ts';
import { routeThrough } from '../lines.ts';

const ROUTE = routeThrough([
  [0, 0],
  [equatorLon(40), 0],
]);
const cellAt = (km: number, lat = 0) => cellOf(equatorLon(km), lat);

describe('the cells within reach of a route', () => {
  it('are those all along it and beside it, and no others', () => {
    const band = bandOf(ROUTE);
    for (let km = 0; km <= 40; km += 0.25) expect(band.has(cellAt(km))).toBe(true);
    expect(band.has(cellAt(20, 0.007))).toBe(true);
    expect(band.has(cellAt(20, 0.03))).toBe(false);
    expect([band.has(cellAt(-3)), band.has(cellAt(43))]).toEqual([false, false]);
  });
});

describe('stretches near roads', () => {
  it('are where a road is in the cell of the place or one beside it; short ones away from roads are bridged', () => {
    const roads = [10, 14, 30].map((km) => cellAt(km));
    const spans = spansNearRoads(ROUTE, Int32Array.from(roads));
    expect(spans).toHaveLength(2);
    const [first, second] = spans;
    // A cell is about 0.77 km wide: one beside it reaches up to twice as far.
    expect(first?.fromM).toBeGreaterThan(8_000);
    expect(first?.fromM).toBeLessThan(9_700);
    expect(first?.toM).toBeGreaterThan(14_300);
    expect(first?.toM).toBeLessThan(16_000);
    expect(second?.fromM).toBeGreaterThan(28_000);
    expect(second?.toM).toBeLessThan(32_000);
  });

  it('have in common what both lists hold', () => {
    const one = [
      { fromM: 0, toM: 10 },
      { fromM: 20, toM: 30 },
    ];
    expect(commonSpans(one, [{ fromM: 5, toM: 25 }])).toEqual([
      { fromM: 5, toM: 10 },
      { fromM: 20, toM: 25 },
    ]);
    expect(commonSpans(one, [{ fromM: 10, toM: 20 }])).toEqual([]);
  });
});
