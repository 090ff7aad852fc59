import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sortedBy } from '../../../web/table/order.ts';

describe('rows in order', () => {
  it('sorts figures by size, not by letters', () => {
    expect(sortedBy([10, 9, -1], (row) => row, 'ascending')).toEqual([-1, 9, 10]);
    expect(sortedBy([10, 9, -1], (row) => row, 'descending')).toEqual([10, 9, -1]);
  });

  it('puts what is not known last either way', () => {
    const rows = [{ km: null }, { km: 2 }, { km: 1 }];
    expect(sortedBy(rows, (row) => row.km, 'ascending').map((row) => row.km)).toEqual([1, 2, null]);
    expect(sortedBy(rows, (row) => row.km, 'descending').map((row) => row.km)).toEqual([2, 1, null]);
  });

  it('keeps the order of equals and loses no row', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ key: fc.integer({ min: 0, max: 3 }), place: fc.integer() })),
        fc.constantFrom('ascending' as const, 'descending' as const),
        (rows, direction) => {
          const sorted = sortedBy(rows, (row) => row.key, direction);
          for (const key of [0, 1, 2, 3]) {
            expect(sorted.filter((row) => row.key === key)).toEqual(rows.filter((row) => row.key === key));
          }
        },
      ),
    );
  });
});
