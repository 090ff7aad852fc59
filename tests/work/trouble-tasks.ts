import { threadId } from 'node:worker_threads';

/** Of this worker alone. */
const thread = { steps: 0, number: threadId };

/** Tasks that make trouble for a pool. */
export const tasks = {
  /** Which worker it is, and how many warm steps it did. */
  async tell(_ask: null): Promise<{ steps: number; number: number }> {
    return thread;
  },
  async warm({ forMs }: { forMs: number }, _signal: AbortSignal, givenUp: () => boolean): Promise<void> {
    holdUntil(performance.now() + forMs, givenUp);
    thread.steps += 1;
  },
  /** Holds the thread, but asks between its steps whether it is still wanted. */
  async holdByWord(_ask: null, _signal: AbortSignal, givenUp: () => boolean): Promise<void> {
    holdUntil(Number.POSITIVE_INFINITY, givenUp);
  },
  async add({ a, b }: { a: number; b: number }): Promise<number> {
    return a + b;
  },
  /** Holds the thread for a while, deaf to everything. */
  async spin({ forMs }: { forMs: number }): Promise<string> {
    const end = performance.now() + forMs;
    while (performance.now() < end);
    return 'spun';
  },
  /** Waits until it is told to give up. */
  async untilAborted(_ask: null, signal: AbortSignal): Promise<string> {
    await new Promise((resolve) => signal.addEventListener('abort', resolve));
    return 'gave up';
  },
  async hoard(_ask: null): Promise<number> {
    const hoard: number[][] = [];
    for (;;) hoard.push(new Array<number>(1_000_000).fill(hoard.length));
  },
  async exit(_ask: null): Promise<never> {
    process.exit(3);
  },
  async fault(_ask: null): Promise<never> {
    throw new Error('a fault of ours');
  },
  async bytes({ length }: { length: number }): Promise<{ ok: true; value: Uint8Array }> {
    return { ok: true, value: new Uint8Array(length).fill(7) };
  },
};

function holdUntil(endMs: number, givenUp: () => boolean): void {
  while (performance.now() < endMs) if (givenUp()) throw new Error('given up');
}
