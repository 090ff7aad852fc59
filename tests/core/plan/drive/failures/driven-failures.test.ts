import { describe, expect, it } from 'vitest';
import { failuresOf } from '../../../../../server/core/plan/drive/failures/driven-failures.ts';
import type { Hop } from '../../../../../server/core/plan/legs/leg.ts';
import type { PlannedLeg } from '../../../../../server/core/plan/model/choice.ts';
import { bareRoute, bareStop, type SmallRoute } from '../../by-hand/small-routes.ts';
import { heldBasis } from '../../what-if/solved-basis.ts';

/** A leg from one edge to the next, left with the tank full. */
function legFrom(from: number, tankL: number): PlannedLeg {
  const hop: Hop = { from, to: from + 1, tankL, cans: 0, filledL: 0, spareM: 0 };
  return { from, to: from + 1, hops: [hop], spareL: 0, canM: 0, shortL: 0 };
}

/** What is done on a fuel route when one of its stops fails, all of them used; water is had at no stop. */
function failuresOn(route: SmallRoute) {
  const fuel = [...route.stops, null].map((_, index) => legFrom(index, route.tankL.fuel));
  const choice = {
    legs: { fuel, water: [legFrom(0, route.tankL.water)] },
    cans: { fuel: 0, water: 0 },
    aims: [],
    complete: true,
  };
  return failuresOf(heldBasis(route, choice).held, false);
}

describe('a stop of a driven plan that fails', () => {
  // 10 l/100 km, 20 l in the tank.
  it('sends the vehicle on where that is borne', () => {
    const [failure, ...others] = failuresOn(bareRoute({ lengthKm: 200, stops: [bareStop(50)] }));
    expect(others).toEqual([]);
    expect(failure).toMatchObject({ commodity: 'fuel', next: 'on', to: { kind: 'end' } });
    expect(failure?.arriveL).toBeCloseTo(0, 9);
  });

  it('sends it back where going on is not borne and going back is', () => {
    const [failure] = failuresOn(bareRoute({ lengthKm: 280, stops: [bareStop(90)] }));
    expect(failure).toMatchObject({ commodity: 'fuel', next: 'back', to: { kind: 'start' } });
    // 180 km are 18 l.
    expect(failure?.arriveL).toBeCloseTo(2, 9);
  });

  it('sends it back where the next stop gives too little to lead on, come to with less', () => {
    // 20 l get to km 100 with 10 l left, where 5 l are to be had: 170 km take 17 l.
    const stops = [bareStop(50), bareStop(100, { mostL: { fuel: 5 } })];
    const [failure] = failuresOn(bareRoute({ lengthKm: 270, stops }));
    expect(failure).toMatchObject({ at: { id: 'node/50' }, next: 'back', to: { kind: 'start' } });
    const [nearer] = failuresOn(bareRoute({ lengthKm: 240, stops }));
    expect(nearer).toMatchObject({ at: { id: 'node/50' }, next: 'on', to: { id: 'node/100' } });
  });

  it('sends it back where the other commodity, sought in vain as well, does not bear the way to what is passed by', () => {
    const failureOfTown = (waterL: number) => {
      const stops = [
        bareStop(85, { offers: 'both' }),
        bareStop(150, { detourKm: 10 }),
        bareStop(160, { offers: 'water' }),
        bareStop(250, { detourKm: 5 }),
      ];
      const route = bareRoute({ lengthKm: 270, stops, tankL: { fuel: 20, water: waterL } });
      const past: Hop = { from: 1, to: 3, tankL: 20, cans: 0, filledL: 0, spareM: 0 };
      const choice = {
        legs: {
          fuel: [legFrom(0, 20), { ...legFrom(1, 20), to: 3, hops: [past] as [Hop] }, legFrom(3, 20)],
          water: [0, 1, 2].map((from) => legFrom(from, waterL)),
        },
        cans: { fuel: 0, water: 0 },
        aims: [],
        complete: true,
      };
      return failuresOf(heldBasis(route, choice).held, false).filter(({ at }) => at.id === 'node/85');
    };
    // The pump at km 250 is out of reach, that at km 150 is not. Water: 160 km are 8 l, 20 km to the pump another.
    expect(failureOfTown(9.1).map(({ next }) => next)).toEqual(['on', 'on']);
    expect(failureOfTown(8.8).map(({ next }) => next)).toEqual(['back', 'back']);
  });

  describe('with a supply ahead that the plan passes by', () => {
    /** A fuel route whose plan stops at the first of its supplies alone; `waterL`: aboard, for 5 l a day of 100 km. */
    const pastOne = (atKm: number, passedBy: ReturnType<typeof bareStop>, waterL = 40) => {
      const route = bareRoute({
        lengthKm: 300,
        stops: [bareStop(atKm), passedBy],
        tankL: { fuel: 20, water: waterL },
      });
      const past: Hop = { from: 1, to: 3, tankL: 20, cans: 0, filledL: 0, spareM: 0 };
      const fuel = [legFrom(0, 20), { ...legFrom(1, 20), to: 3, hops: [past] as [Hop] }];
      const choice = {
        legs: { fuel, water: [legFrom(0, waterL)] },
        cans: { fuel: 0, water: 0 },
        aims: [],
        complete: true,
      };
      return failuresOf(heldBasis(route, choice).held, false);
    };

    it('sends it on there, where that is nearer than the way back', () => {
      const [failure, ...others] = pastOne(90, bareStop(150));
      expect(others).toEqual([]);
      // 60 km on, 90 back; 150 km from the start are 15 of 20 l, and from there a full tank reaches the end.
      expect(failure).toMatchObject({ next: 'on', to: { id: expect.any(String), atM: 150_000 } });
      expect(failure?.arriveL).toBeCloseTo(5, 9);
    });

    it('sends it back where that is nearer', () => {
      expect(pastOne(60, bareStop(150))).toMatchObject([{ next: 'back', to: { kind: 'start' } }]);
    });

    it('sends it back where nothing leads on from there, or the water does not last for the way there', () => {
      // From km 90 + 60: 150 km and twice 30 off the route are 21 l.
      expect(pastOne(90, bareStop(110, { detourKm: 30 }))).toMatchObject([{ next: 'back' }]);
      // 300 km are 3 days and 15 l of water; 20 km more, there and back, take another litre.
      expect(pastOne(90, bareStop(150, { detourKm: 10 }), 16.1)).toMatchObject([{ next: 'on' }]);
      expect(pastOne(90, bareStop(150, { detourKm: 10 }), 16)).toMatchObject([{ next: 'on' }]);
      expect(pastOne(90, bareStop(150, { detourKm: 10 }), 15.9)).toMatchObject([{ next: 'back' }]);
    });
  });

  it('is a fault of the program where neither way is borne', () => {
    // 300 km on as well as back: 30 of 20 l.
    const route = bareRoute({ lengthKm: 300, stops: [bareStop(150)] });
    expect(() => failuresOn(route)).toThrow('fails when the stop at km 150 fails');
  });
});
