import { describe, expect, it } from 'vitest';
import { nightInsideCautions } from '../../../server/core/pace/night-inside.ts';
import { endEdge, startEdge } from '../../helpers/course.ts';

describe('a night that may fall inside a gap', () => {
  const elapsed = (hours: number) => ({
    elapsedH: { atM: Float64Array.of(0, 100_000), sum: Float64Array.of(0, hours) },
  });
  // A day more at the fast pace: 10 l, and half of it in reserve.
  const plan = { timed: true, schedules: { slow: elapsed(3), typical: elapsed(3), fast: elapsed(27) } };
  const cautionOf = (arriveL: number, marginL: number) =>
    nightInsideCautions(
      plan as never,
      [{ from: startEdge, to: endEdge(100_000), needL: 10, arriveL, marginL, grades: null }] as never,
      10,
      0.5,
    )[0]?.facts;

  it('is told where what is left holds without it and not with it', () => {
    expect(cautionOf(30, 20)).toBeUndefined();
    expect(cautionOf(30, 12)).toMatchObject({ moreL: 10, emptied: false });
    expect(cautionOf(8, 2)).toMatchObject({ moreL: 10, emptied: true });
    expect(cautionOf(0, 0)).toMatchObject({ emptied: true });
  });

  it('is nothing new where nothing is left anyway', () => {
    expect(cautionOf(-1, -5)).toBeUndefined();
    // Into the reserve without it already, empty with it.
    expect(cautionOf(4, -5)).toMatchObject({ emptied: true });
  });
});
