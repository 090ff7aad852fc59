import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CellSet,
  cellOf,
  cellPartOf,
  cellsAround,
  PART_HEIGHT,
  partNumberOf,
  partWidth,
} from '../../../../server/core/route/cover/road-cells.ts';

const anyLon = fc.double({ min: -180, max: 179.999, noNaN: true });
const anyLat = fc.double({ min: -89.9, max: 89.9, noNaN: true });

describe('the grid of roads', () => {
  it('puts a place into the part whose middle is no farther than half a part', () => {
    fc.assert(
      fc.property(anyLon, anyLat, (lon, lat) => {
        const { cell, part, ...middle } = cellPartOf(lon, lat);
        expect(Math.abs(middle.lon - lon)).toBeLessThanOrEqual(partWidth(lat) / 2 + 1e-9);
        expect(Math.abs(middle.lat - lat)).toBeLessThanOrEqual(PART_HEIGHT / 2 + 1e-9);
        expect(cell).toBe(cellOf(lon, lat));
        expect(partNumberOf(lon, lat)).toBe(cell * 64 + part);
      }),
      // Just west of a border of cells: the three must round alike. And just west of the 180th meridian.
      {
        examples: [
          [-1.4210854715202007e-14, 0],
          [179.99999999999994, 0],
          [179.99999999999994, 89.9],
        ],
      },
    );
  });

  it('takes a longitude that has run on past 180 for the same place', () => {
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 179 }), anyLat, (lon, lat) => {
        expect(cellOf(lon + 360.25, lat)).toBe(cellOf(lon + 0.25, lat));
        expect(partNumberOf(lon - 359.75, lat)).toBe(partNumberOf(lon + 0.25, lat));
      }),
    );
  });

  it('ends at the poles: what lies at one is in the last row', () => {
    expect(cellOf(10, 90)).toBe(cellOf(10, 89.9999));
    expect(cellOf(10, -90)).toBe(cellOf(10, -89.9999));
    expect(partNumberOf(10, 90)).toBe(partNumberOf(10, 89.99999));
  });

  it('has nine cells around a place, its own among them', () => {
    const cells = cellsAround(10.1, 45);
    expect(new Set(cells).size).toBe(9);
    expect(cells).toContain(cellOf(10.1, 45));
  });
});

describe('a set of cells', () => {
  it('should hold what was put into it, the first cell of all too, and nothing else', () => {
    const cells = fc.uniqueArray(fc.nat({ max: 200 }), { maxLength: 60 });
    fc.assert(
      fc.property(cells, (held) => {
        const set = CellSet.of(new Set(held));
        const found = Array.from({ length: 201 }, (_, cell) => cell).filter((cell) => set.has(cell));
        expect(found).toEqual(held.toSorted((a, b) => a - b));
      }),
      { numRuns: 30, examples: [[[0, 1]]] },
    );
  });
});
