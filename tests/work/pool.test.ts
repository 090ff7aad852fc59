import { afterEach, describe, expect, it } from 'vitest';
import { InputProblem } from '../../server/core/input/problem.ts';
import { JobAborted } from '../../server/work/job.ts';
import { type PoolOptions, WorkerPool } from '../../server/work/pool.ts';
import { STATE_MS } from '../helpers/patience.ts';
import type { tasks } from './trouble-tasks.ts';

type Trouble = typeof tasks;

const pools: WorkerPool<Trouble>[] = [];
function poolOf(options: Partial<PoolOptions> = {}): WorkerPool<Trouble> {
  const pool = new WorkerPool<Trouble>({
    tasks: new URL('./trouble-tasks.ts', import.meta.url),
    size: 1,
    maxWaiting: 4,
    maxHeapMb: 64,
    ...options,
  });
  pools.push(pool);
  return pool;
}
afterEach(async () => {
  await Promise.all(pools.splice(0).map((pool) => pool.close()));
});

const LONG = { timeoutMs: STATE_MS };
const codeOf = (error: unknown) => (error instanceof InputProblem ? error.problem.code : String(error));

describe('the worker pool', () => {
  it('runs TypeScript tasks, in order where there is one worker', async () => {
    const pool = poolOf();
    const sums = await Promise.all([1, 2, 3].map((a) => pool.run('add', { a, b: 10 }, LONG)));
    expect(sums).toEqual([11, 12, 13]);
  });

  it('moves the bytes of an outcome over whole', async () => {
    const outcome = await poolOf().run('bytes', { length: 1_000_000 }, LONG);
    expect(outcome.value.byteLength).toBe(1_000_000);
    expect(outcome.value[999_999]).toBe(7);
  });

  it('leaves the main thread free while a worker is busy', async () => {
    const pool = poolOf();
    await pool.run('add', { a: 0, b: 0 }, LONG);
    const order: string[] = [];
    const spinning = pool.run('spin', { forMs: 200 }, LONG).then(() => order.push('worker done'));
    setTimeout(() => order.push('main thread had its turn'), 1);
    await spinning;
    expect(order).toEqual(['main thread had its turn', 'worker done']);
  });

  it('ends a job that takes too long, and works on', async () => {
    const pool = poolOf();
    await pool.run('add', { a: 0, b: 0 }, LONG);
    const error = await pool.run('spin', { forMs: 10 * STATE_MS }, { timeoutMs: 50 }).catch(codeOf);
    expect(error).toBe('too-slow');
    expect(await pool.run('add', { a: 1, b: 2 }, LONG)).toBe(3);
  });

  it('refuses more jobs than may wait, and counts waiting in the time allowed', async () => {
    const pool = poolOf({ maxWaiting: 1 });
    const spinning = pool.run('spin', { forMs: 10 * STATE_MS }, { timeoutMs: 400 }).catch(codeOf);
    const waiting = pool.run('add', { a: 1, b: 1 }, { timeoutMs: 50 }).catch(codeOf);
    const third = await pool.run('add', { a: 1, b: 1 }, LONG).catch(codeOf);
    expect(third).toBe('too-many-requests');
    expect(await waiting).toBe('too-slow');
    expect(await spinning).toBe('too-slow');
  });

  it('gives a job up when asked to, by word first and by force after a while', { tags: 'slow' }, async () => {
    const pool = poolOf();
    await pool.run('add', { a: 0, b: 0 }, LONG);
    for (const name of ['untilAborted', 'spin'] as const) {
      const controller = new AbortController();
      const running =
        name === 'spin'
          ? pool.run(name, { forMs: 10 * STATE_MS }, { ...LONG, signal: controller.signal })
          : pool.run(name, null, { ...LONG, signal: controller.signal });
      controller.abort();
      await expect(running).rejects.toBeInstanceOf(JobAborted);
      expect(await pool.run('add', { a: 2, b: 2 }, LONG)).toBe(4);
    }
  });

  it('survives a worker that runs out of memory, exits or throws', { tags: 'slow' }, async () => {
    const pool = poolOf();
    expect(await pool.run('hoard', null, LONG).catch(codeOf)).toBe('too-large');
    const dying = pool.run('exit', null, LONG).catch(codeOf);
    const next = pool.run('add', { a: 1, b: 1 }, LONG);
    expect([await dying, await next]).toEqual(['internal', 2]);
    await expect(pool.run('fault', null, LONG)).rejects.toThrow('a fault of ours');
    expect(await pool.run('add', { a: 3, b: 4 }, LONG)).toBe(7);
  });
});

describe('a pool that keeps workers warm', () => {
  const step = (forMs: number) => ({ name: 'warm', ask: { forMs } });

  async function warmed(pool: WorkerPool<Trouble>, workers: number): Promise<void> {
    await expect.poll(() => pool.warmWorkers).toBe(workers);
  }

  it('warms its worker and one to stand by, one after the other, and no more', async () => {
    const pool = poolOf({ spares: 1 });
    pool.warm([step(1), step(1)]);
    expect(pool.jobs).toBe(0);
    await warmed(pool, 2);
    const told = await pool.run('tell', null, LONG);
    expect(told.steps).toBe(2);
    // One job at a time, with a spare as well.
    const order: string[] = [];
    await Promise.all([
      pool.run('spin', { forMs: 100 }, LONG).then(() => order.push('first')),
      pool.run('add', { a: 1, b: 1 }, LONG).then(() => order.push('second')),
    ]);
    expect(order).toEqual(['first', 'second']);
  });

  it('leaves a warm step for a job that comes, and goes on with it afterwards', async () => {
    const pool = poolOf();
    pool.warm([step(1), step(10 * STATE_MS)]);
    expect(await pool.run('add', { a: 1, b: 2 }, LONG)).toBe(3);
    pool.warm([step(1), step(2)]);
    expect(await pool.run('add', { a: 2, b: 2 }, LONG)).toBe(4);
    await warmed(pool, 1);
  });

  it('hands the next job to the one that stands by while the other is deaf, and makes that one good', {
    tags: 'slow',
  }, async () => {
    const pool = poolOf({ spares: 1 });
    pool.warm([step(1)]);
    await warmed(pool, 2);
    const { number } = await pool.run('tell', null, LONG);
    const controller = new AbortController();
    const spinning = pool.run('spin', { forMs: 10 * STATE_MS }, { ...LONG, signal: controller.signal });
    controller.abort();
    await expect(spinning).rejects.toBeInstanceOf(JobAborted);
    const told = await pool.run('tell', null, LONG);
    expect(told.number).not.toBe(number);
    expect(told.steps).toBe(1);
    // The deaf one is ended after a while; a new one is warmed in its place.
    await expect.poll(() => pool.jobs).toBe(0);
    await warmed(pool, 2);
  });

  it('keeps a worker that blocks its thread but asks whether it is still wanted', async () => {
    const pool = poolOf();
    const { number } = await pool.run('tell', null, LONG);
    const controller = new AbortController();
    const holding = pool.run('holdByWord', null, { ...LONG, signal: controller.signal });
    controller.abort();
    await expect(holding).rejects.toBeInstanceOf(JobAborted);
    expect((await pool.run('tell', null, LONG)).number).toBe(number);
  });

  it('warms no more once a step has failed, and says so', async () => {
    const faults: string[] = [];
    const pool = poolOf({ onFault: (text) => faults.push(text) });
    pool.warm([{ name: 'fault', ask: null }, step(1)]);
    await expect.poll(() => faults.length).toBe(1);
    expect(faults[0]).toContain('a fault of ours');
    expect((await pool.run('tell', null, LONG)).steps).toBe(0);
    expect(faults).toHaveLength(1);
  });
});
