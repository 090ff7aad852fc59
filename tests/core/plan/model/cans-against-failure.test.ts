import { expect, it } from 'vitest';
import { cansAgainstFailure } from '../../../../server/core/plan/model/cans-against-failure.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

it('cans worth having against a failure are those that open a way back from a stop on the way, a way on, or a way back', () => {
  // 10 l and cans of 2 l, a pump at km 100, water at km 60.
  const countsOn = (lengthKm: number) => {
    const question = questionOf(
      bareRoute({
        lengthKm,
        tankL: { fuel: 10, water: 40 },
        canL: { fuel: 2, water: 5 },
        mostCans: { fuel: 6, water: 0 },
        stops: [bareStop(60, { offers: 'water' }), bareStop(100)],
      }),
    );
    return cansAgainstFailure(question, 'fuel', { spendReserve: false }, [])(0, 1, 0);
  };
  // With 12 l the start is regained from km 60, with 20 l from km 100; nothing is reached 300 km on.
  expect(countsOn(400)).toEqual([1, 5]);
  // With 14 l the end at km 130 is reached.
  expect(countsOn(130)).toEqual([1, 2, 5]);
});
