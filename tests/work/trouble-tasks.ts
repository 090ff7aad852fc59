/** Tasks that make trouble for a pool. */
export const tasks = {
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
