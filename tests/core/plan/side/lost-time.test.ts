import { describe, expect, it } from 'vitest';
import { haltingAt } from '../../../../server/core/plan/side/lost-time.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

/** What a halt so many metres off the route costs, with waiting. */
function costAt(detourM: number, waitDays = 0) {
  const { sides } = questionOf(bareRoute({ stops: [bareStop(100, { waitDays })] }));
  const edge = sides.fuel.edges[1];
  if (edge === undefined) throw new Error('the route has one stop');
  return haltingAt(sides.fuel, { ...edge, detourM });
}

describe('what a halt costs a plan', () => {
  it('is nothing for a supply within 500 m of the route, and every metre from there on', () => {
    expect(costAt(0)).toEqual({ lostM: 0, drivingM: 0 });
    expect(costAt(499.9)).toEqual({ lostM: 0, drivingM: 0 });
    expect(costAt(500)).toEqual({ lostM: 1000, drivingM: 1000 });
  });

  it('is the waiting in any case', () => {
    // A day is 100 km.
    expect(costAt(100, 0.5)).toMatchObject({ drivingM: 0 });
    expect(costAt(100, 0.5).lostM).toBeGreaterThan(0);
    expect(costAt(100, 0.5).lostM).toBeCloseTo(costAt(500, 0.5).lostM - 1000, 6);
  });
});
