import { describe, expect, it } from 'vitest';
import { refill } from '../../../../server/core/plan/legs/stock.ts';
import { edgeAt } from '../../../../server/core/plan/side/carry-side.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

describe('what is filled in at a supply that gives little', () => {
  const refillWith = (mostL: number, wantedCans: number) => {
    const route = bareRoute({ stops: [bareStop(100, { mostL: { fuel: mostL } })] });
    const side = questionOf(route).sides.fuel;
    return refill(side, edgeAt(side, 1), { tankL: 15, cans: 0 }, wantedCans);
  };

  it('goes into whole cans first, as many as are wanted, and into the tank with the rest', () => {
    // 5 l of room, cans of 5 l.
    expect(refillWith(15, 2)).toEqual({ tankL: 20, cans: 2, filledL: 15 });
    expect(refillWith(14.9, 2)).toEqual({ tankL: expect.closeTo(19.9, 9), cans: 2, filledL: 14.9 });
    expect(refillWith(14.9, 1)).toEqual({ tankL: 20, cans: 1, filledL: 10 });
    expect(refillWith(15, 3)).toEqual({ tankL: 15, cans: 3, filledL: 15 });
    expect(refillWith(3, 3)).toEqual({ tankL: 18, cans: 0, filledL: 3 });
  });

  it('is no more than a supply has that was laid there, where no terms say it', () => {
    const side = questionOf(bareRoute({ stops: [bareStop(100)] })).sides.fuel;
    const { terms: _none, ...edge } = edgeAt(side, 1);
    const laid = { ...edge, mostL: 7 };
    expect(refill(side, laid, { tankL: 5, cans: 0 }, 1)).toEqual({ tankL: 7, cans: 1, filledL: 7 });
  });

  it('fills no more cans than are wanted', () => {
    expect(refillWith(15, 1)).toEqual({ tankL: 20, cans: 1, filledL: 10 });
  });
});
