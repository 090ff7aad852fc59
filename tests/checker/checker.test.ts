import { expect, it } from 'vitest';
import { checkTrips, SEED } from './trips.ts';

/** As many as take some twenty seconds of processor; `npm run checker` checks a thousand. */
const TRIPS = 100;
/** Each check is made at least so often, for what some plans have only. */
const SELDOM = 5;

it(`of ${TRIPS} random trips every plan, what-if and gauge is as a second computation has it`, {
  tags: 'slow',
}, () => {
  const { book, found, safe } = checkTrips(TRIPS, SEED);
  expect(book.disagreements).toEqual([]);
  expect(found).toBeGreaterThan(TRIPS / 2);
  expect(safe).toBeGreaterThan(TRIPS / 3);
  for (const check of [
    'need of a leg',
    'reserve intact on arrival',
    'no more filled than is to be had',
    'room for a can where it is poured',
    'level at a place',
    'no way back with the reserve from behind the turn-back point',
    'to go on with the reserve',
    'to go back with the reserve',
    'arrival on the way on',
    'arrival on the way back',
    'a failure is borne',
    'margin when a stop fails',
    'margin on going back from what fails',
    'total within what is permitted',
    'front axle within what is permitted',
  ])
    expect(book.made.get(check), check).toBeGreaterThan(SELDOM);
});
