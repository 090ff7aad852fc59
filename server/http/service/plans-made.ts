/** Replies that are kept: some pages' worth (ours). */
const MOST_KEPT = 8;

/** Replies to plans that were made soon, so that a reload or a second window does not make them once more. */
export class PlansMade {
  readonly #soonMs: number;
  readonly #replies = new Map<string, Uint8Array>();

  /** `soonMs`: one that took longer may have been given up for want of time, and is made anew. */
  constructor(soonMs: number) {
    this.#soonMs = soonMs;
  }

  /** The reply to what is asked, made by `make` unless it is there. `ask`: all that the reply hangs on. */
  async replyTo(ask: unknown, make: () => Promise<Uint8Array>): Promise<Uint8Array> {
    const key = JSON.stringify(ask);
    const known = this.#replies.get(key);
    if (known !== undefined) return known;
    const began = performance.now();
    const reply = await make();
    if (performance.now() - began < this.#soonMs) this.#keep(key, reply);
    return reply;
  }

  #keep(key: string, reply: Uint8Array): void {
    this.#replies.delete(key);
    this.#replies.set(key, reply);
    for (const oldest of this.#replies.keys()) {
      if (this.#replies.size <= MOST_KEPT) break;
      this.#replies.delete(oldest);
    }
  }
}
