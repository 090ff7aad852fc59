/** Bytes of replies that are kept: some eighty plans of the demo, or four of a route with 1,700 gaps (ours). */
const MOST_BYTES = 16 * 2 ** 20;

/** Replies to plans that were made soon, so that a reload or a second window does not make them once more. */
export class PlansMade {
  readonly #soonMs: number;
  /** The one asked for last comes last. */
  readonly #replies = new Map<string, Uint8Array>();
  #bytes = 0;

  /** `soonMs`: one that took longer may have been given up for want of time, and is made anew. */
  constructor(soonMs: number) {
    this.#soonMs = soonMs;
  }

  /** The reply to what is asked, made by `make` unless it is there. `ask`: all that the reply hangs on. */
  async replyTo(ask: unknown, make: () => Promise<Uint8Array>): Promise<Uint8Array> {
    const key = JSON.stringify(ask);
    const known = this.#take(key);
    const began = performance.now();
    const reply = known ?? (await make());
    if (known !== null || performance.now() - began < this.#soonMs) this.#keep(key, reply);
    return reply;
  }

  #take(key: string): Uint8Array | null {
    const reply = this.#replies.get(key);
    if (reply === undefined) return null;
    this.#replies.delete(key);
    this.#bytes -= reply.length;
    return reply;
  }

  #keep(key: string, reply: Uint8Array): void {
    this.#take(key);
    this.#replies.set(key, reply);
    this.#bytes += reply.length;
    for (const oldest of this.#replies.keys()) {
      if (this.#bytes <= MOST_BYTES) break;
      this.#take(oldest);
    }
  }
}
