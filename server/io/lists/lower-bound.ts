import { numberAt } from '../../core/lists/at.ts';

/** Place of the first of the ascending `ids` that is not less than `id`; of the first `count`, where that is given. */
export function lowerBound(ids: Float64Array, id: number, count = ids.length): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numberAt(ids, middle) < id) low = middle + 1;
    else high = middle;
  }
  return low;
}
