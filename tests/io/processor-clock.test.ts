import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { processorClock } from '../../server/io/processor-clock.ts';

it('a clock of processor time goes on with work, and hardly while nothing is done', async () => {
  const clock = processorClock();
  const begin = clock();
  const until = performance.now() + 100;
  let sum = 0;
  while (performance.now() < until) sum += Math.sqrt(sum + 1);
  const worked = clock() - begin;
  expect(worked).toBeGreaterThan(0);
  expect(worked).toBeLessThanOrEqual(0.2 + (performance.now() - until) / 1000);
  const idle = clock();
  const start = performance.now();
  await wait(50);
  expect(clock() - idle).toBeLessThanOrEqual((performance.now() - start) / 1000);
});
