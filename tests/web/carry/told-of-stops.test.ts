import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TripFile } from '../../../server/contract/trip.ts';
import { isMust, tidied, withMustStop, withPassedBy, withStop } from '../../../web/carry/told-of-stops.ts';

describe('what is told of a stop', () => {
  it('has a place made for it, which is gone again while nothing stands there', () => {
    const { trip, index } = withStop({ plan: { stops: [{ id: 'node/1', waitHours: 2 }] } }, 'node/2');
    expect(index).toBe(1);
    expect(trip.plan?.stops).toEqual([{ id: 'node/1', waitHours: 2 }, { id: 'node/2' }]);
    expect(tidied(trip)).toEqual({ plan: { stops: [{ id: 'node/1', waitHours: 2 }] } });
  });

  it('stands in the place it has', () => {
    const trip: TripFile = { plan: { stops: [{ id: 'node/1', mostLitres: { fuel: 40 } }] } };
    expect(withStop(trip, 'node/1')).toEqual({ trip, index: 0 });
  });

  it('stays while anything is told, and leaves no empty list or group behind', () => {
    expect(tidied({ plan: { stops: [{ id: 'node/1', mostLitres: { water: 5 } }] } })).toEqual({
      plan: { stops: [{ id: 'node/1', mostLitres: { water: 5 } }] },
    });
    expect(tidied({ plan: { stops: [{ id: 'node/1', waitHours: 0 }] } }).plan?.stops?.length).toBe(1);
    expect(tidied({ name: 'x', plan: { stops: [{ id: 'node/1', mostLitres: {} }], passBy: [] } })).toEqual({
      name: 'x',
    });
    expect(tidied({ plan: { noneInside: true, stops: [] } })).toEqual({ plan: { noneInside: true } });
  });
});

describe('a stop that is passed by', () => {
  it('is listed once, and taken off the list again', () => {
    const trip: TripFile = { plan: { passBy: ['way/3'] } };
    const both = withPassedBy(trip, 'node/1', true);
    expect(both).toEqual({ plan: { passBy: ['way/3', 'node/1'] } });
    expect(withPassedBy(both, 'node/1', true)).toEqual(both);
    expect(withPassedBy(both, 'node/1', false)).toEqual(trip);
    expect(withPassedBy(trip, 'way/3', false)).toEqual({});
  });

  it('taken off is as if it had never been on, whatever else is told', () => {
    const id = fc.constantFrom('node/1', 'node/2', 'way/3');
    const trips = fc.record(
      {
        noneInside: fc.boolean(),
        passBy: fc.uniqueArray(id, { minLength: 1 }),
        stops: fc
          .uniqueArray(id, { minLength: 1 })
          .map((ids) => ids.map((each) => ({ id: each, waitHours: 1 }))),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(trips, (plan) => {
        const trip = tidied({ plan });
        expect(withPassedBy(withPassedBy(trip, 'node/9', true), 'node/9', false)).toEqual(trip);
      }),
    );
  });
});

describe('a stop that must be made', () => {
  it('is listed once, is not passed by as well, and is taken off again', () => {
    const must = withMustStop({ plan: { passBy: ['node/1'] } }, 'node/1', true);
    expect(must).toEqual({ plan: { mustStop: ['node/1'] } });
    expect(withMustStop(must, 'node/1', true)).toEqual(must);
    expect([isMust(must, 'node/1'), isMust(must, 'node/2'), isMust({}, 'node/1')]).toEqual([
      true,
      false,
      false,
    ]);
    expect(withPassedBy(must, 'node/1', true)).toEqual({ plan: { passBy: ['node/1'] } });
    expect(withPassedBy(must, 'node/1', false)).toEqual(must);
    expect(withMustStop(must, 'node/1', false)).toEqual({});
    expect(withMustStop({ plan: { passBy: ['node/1'] } }, 'node/1', false)).toEqual({
      plan: { passBy: ['node/1'] },
    });
  });
});
