import { describe, expect, it } from 'vitest';
import { edgeAt } from '../../../../server/core/plan/side/carry-side.ts';
import { costOf, haltInVain, haltsOf } from '../../../../server/core/plan/side/halts.ts';
import { bareRoute, bareStop, questionOf, type SmallStop } from '../by-hand/small-routes.ts';

describe('what a halt for fuel costs the water', () => {
  const sidesWith = (stop: Partial<SmallStop>) =>
    questionOf(bareRoute({ mostCans: { fuel: 2, water: 0 }, stops: [bareStop(100, stop)] })).sides;
  const costKm = (stop: Partial<SmallStop>) => {
    const { fuel, water } = sidesWith(stop);
    return costOf(haltsOf(fuel, water.course)) / 1000;
  };

  it('is the way there and back, and its days as the way that takes as much water', () => {
    // 100 km a day.
    expect(costKm({ detourKm: 5 })).toBeCloseTo(10, 9);
    expect(costKm({ detourKm: 5, waitDays: 0.5 })).toBeCloseTo(60, 9);
    // 20 l in the tank and two cans of 5 at a hundredth of a day, or no more than there is.
    expect(costKm({ detourKm: 5, waitDays: 0.5, daysPerLitre: 0.01 })).toBeCloseTo(90, 9);
    expect(costKm({ detourKm: 5, waitDays: 0.5, daysPerLitre: 0.01, mostL: { fuel: 10 } })).toBeCloseTo(
      70,
      9,
    );
  });

  it('is nothing beside the route without a wait', () => {
    const { fuel, water } = sidesWith({});
    expect(haltsOf(fuel, water.course)).toEqual([]);
  });

  it('in vain is the wait as well, without any filling', () => {
    const { water } = questionOf(
      bareRoute({
        stops: [bareStop(100, { offers: 'water', detourKm: 5, waitDays: 0.5, daysPerLitre: 0.01 })],
      }),
    ).sides;
    const { costM } = haltInVain(water.course, edgeAt(water, 1), edgeAt(water, 2));
    expect(costM / 1000).toBeCloseTo(60, 9);
  });
});
