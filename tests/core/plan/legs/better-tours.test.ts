import { describe, expect, it } from 'vitest';
import { betterTours } from '../../../../server/core/plan/legs/better-tours.ts';
import { lastHop } from '../../../../server/core/plan/legs/leg.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

describe('of ways that begin alike and end at one supply', () => {
  it('one with less aboard for as much is left out', () => {
    // At km 50 there are 15 l and 5 more; at km 60 14 l and room for 6: over it a litre more arrives.
    const route = bareRoute({
      lengthKm: 240,
      stops: [bareStop(50, { mostL: { fuel: 5 } }), bareStop(60, { mostL: { fuel: 10 } })],
    });
    const tours = betterTours(questionOf(route).sides.fuel);
    expect(tours.map(({ hops }) => hops.map(({ to }) => to))).toEqual([[2, 3]]);
  });

  it('the six fullest are kept, the fullest of all among them', () => {
    // Each stop gives 2 l more than the one before it and lies 5 km farther off: a litre more for more driving.
    const stops = [1, 2, 3, 4].map((number) =>
      bareStop(number * 10, { detourKm: number * 5, mostL: { fuel: 4 + 2 * number } }),
    );
    const tank = { fuel: 90, water: 40 };
    const route = bareRoute({ lengthKm: 100, stops, tankL: tank, startL: { fuel: 20, water: 40 } });
    const tours = betterTours(questionOf(route).sides.fuel);
    expect(tours).toHaveLength(6);
    const spares = tours.map(({ hops }) => lastHop(hops).spareM / 1000);
    // 20 l and 6, 8, 10 and 12 more are 560 km; 100 go along the route and 100 off it.
    expect(Math.max(...spares)).toBeCloseTo(360, 6);
  });
});
