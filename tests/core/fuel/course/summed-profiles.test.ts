import { describe, expect, it } from 'vitest';
import { sumsAt, thinned } from '../../../../server/core/fuel/course/summed-profiles.ts';

const profileOf = (atM: number[], sum: number[]) => ({
  atM: Float64Array.from(atM),
  sum: Float64Array.from(sum),
});

describe('the sums of a profile', () => {
  it('stay at the last beyond its end, as float noise may ask', () => {
    const profile = profileOf([0, 10], [0, 5]);
    expect([...sumsAt(profile, Float64Array.of(0, 4, 10, 10.000001))]).toEqual([0, 2, 5, 5]);
  });
});

describe('a thinned profile', () => {
  it('loses what lies within the tolerance of the straight line, above it as well as below', () => {
    const ends = profileOf([0, 3], [0, 3]);
    expect(thinned(profileOf([0, 1, 2, 3], [0, 1.5, 2, 3]), new Set(), 0.6)).toEqual(ends);
    expect(thinned(profileOf([0, 1, 2, 3], [0, 0.5, 2, 3]), new Set(), 0.6)).toEqual(ends);
  });

  it('keeps what does not', () => {
    const profile = profileOf([0, 1, 2, 3], [0, 1.5, 2, 3]);
    expect(thinned(profile, new Set(), 0.1).atM).toEqual(Float64Array.of(0, 1, 2, 3));
  });
});
