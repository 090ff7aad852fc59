import { expect, it } from 'vitest';
import { PlansMade } from '../../../server/http/service/plans-made.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
/** Makes replies and counts them. */
function maker() {
  const made: string[] = [];
  const make = (text: string) => () => {
    made.push(text);
    return Promise.resolve(bytes(text));
  };
  return { made, make };
}

it('a plan that was made soon is made once for the same question, and again for another', async () => {
  const plans = new PlansMade(60_000);
  const { made, make } = maker();
  const first = await plans.replyTo({ trip: 1 }, make('a'));
  expect(await plans.replyTo({ trip: 1 }, make('b'))).toBe(first);
  expect(await plans.replyTo({ trip: 2 }, make('c'))).toEqual(bytes('c'));
  expect(made).toEqual(['a', 'c']);
});

it('one that took long is made anew, as is one that failed', async () => {
  const { made, make } = maker();
  const slow = new PlansMade(0);
  await slow.replyTo(1, make('a'));
  await slow.replyTo(1, make('b'));
  expect(made).toEqual(['a', 'b']);
  const plans = new PlansMade(60_000);
  await expect(plans.replyTo(1, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
  expect(await plans.replyTo(1, make('c'))).toEqual(bytes('c'));
});

it('some megabytes are kept, of what was asked for last', async () => {
  const plans = new PlansMade(60_000);
  const { made, make } = maker();
  const long = 'x'.repeat(2 ** 20);
  const ask = (trip: number) => plans.replyTo(trip, make(`${trip}${long}`));
  for (let trip = 0; trip < 15; trip += 1) await ask(trip);
  await ask(0);
  expect(made.length).toBe(15);
  for (let trip = 15; trip < 20; trip += 1) await ask(trip);
  await ask(0);
  expect(made.length).toBe(20);
  await ask(1);
  expect(made.length).toBe(21);
});
