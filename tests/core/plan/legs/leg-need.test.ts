import { expect, it } from 'vitest';
import { filledNeed, legNeed } from '../../../../server/core/plan/legs/leg-need.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

it('a leg takes water for the days of filling where it begins, and for none where it ends', () => {
  // 100 km a day at 5 l; a twentieth of a day a litre: 20 l take a day, 10 l half of one.
  const { water } = questionOf(
    bareRoute({
      lengthKm: 200,
      stops: [bareStop(100, { offers: 'water', daysPerLitre: 0.05 })],
    }),
  ).sides;
  const onward = { from: 1, to: 2 };
  expect(legNeed(water, onward)).toMatchObject({ days: 1, needL: 5 });
  expect(filledNeed(water, onward, 20)).toMatchObject({ days: 2, needL: 10 });
  expect(filledNeed(water, onward, 10)).toMatchObject({ days: 1.5, needL: 7.5 });
  expect(filledNeed(water, { from: 0, to: 1 }, 20)).toMatchObject({ days: 1, needL: 5 });
});
