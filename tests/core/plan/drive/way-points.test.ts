import { describe, expect, it } from 'vitest';
import {
  pointsThere,
  type WayPoint,
  wayPointBetween,
} from '../../../../server/core/plan/drive/way-points.ts';

const point = (atM: number, litres: number): WayPoint => ({ atM, litres, backL: 0 });
/** A night at 100 m takes 10 l. */
const POINTS = [point(0, 40), point(100, 30), point(100, 20), point(200, 10)] as const;
const litresAt = (atM: number) => pointsThere(POINTS, atM, wayPointBetween).map(({ litres }) => litres);

describe('the points at a place', () => {
  it('are both of a night there, the one before it first, also where float noise puts the place beside it', () => {
    for (const atM of [100, 100 + 1e-9, 100 - 1e-9, 100 + 5e-4]) expect(litresAt(atM)).toEqual([30, 20]);
  });

  it('are one between its neighbours anywhere else', () => {
    expect(litresAt(50)).toEqual([35]);
    expect(litresAt(150)).toEqual([15]);
    expect(litresAt(300)).toEqual([10]);
  });
});
