import { expect, it } from 'vitest';
import { isOutlier } from '../../../server/core/log/percentile.ts';

it('a value is an outlier beyond the fences, not on them', () => {
  const fences = { below: 2, above: 10 };
  expect([1.9, 2, 6, 10, 10.1].map((value) => isOutlier(value, fences))).toEqual([
    true,
    false,
    false,
    false,
    true,
  ]);
});
