import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Heap } from '../../../../server/core/plan/search/heap.ts';

interface Entry {
  value: number;
}
const heapOf = (values: readonly number[]): Heap<Entry> => {
  const heap = new Heap<Entry>((a, b) => a.value - b.value);
  for (const value of values) heap.push({ value });
  return heap;
};
function drained(heap: Heap<Entry>): number[] {
  const values: number[] = [];
  for (let { first } = heap; first !== undefined; first = heap.first) {
    values.push(first.value);
    heap.pop();
  }
  return values;
}
const inOrder = (values: readonly number[]) => values.toSorted((a, b) => a - b);

describe('a heap', () => {
  it('should give what was put in by its order', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 20 })), (values) => {
        expect(drained(heapOf(values))).toEqual(inOrder(values));
      }),
    );
  });

  it('should give a first entry that has changed where it belongs now', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 20 }), { minLength: 1 }), fc.nat({ max: 25 }), (values, later) => {
        const heap = heapOf(values);
        heap.first!.value = later;
        heap.settleFirst();
        expect(drained(heap)).toEqual(inOrder([...inOrder(values).slice(1), later]));
      }),
    );
  });

  it('is as empty as it was where nothing is in it to be put in its place', () => {
    const heap = heapOf([]);
    heap.settleFirst();
    heap.push({ value: 1 });
    expect(drained(heap)).toEqual([1]);
  });
});
