import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A session ends so long after it was last used, milliseconds. Ours. */
const IDLE_MS = 12 * 3_600_000;
/** The oldest goes where there are more. Ours. */
const MOST_SESSIONS = 1000;

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/** Who has signed in with the secret, in memory: a restart signs everybody out. */
export class SessionKeeper {
  readonly #secret: Buffer;
  readonly #now: () => number;
  /** Until when each holds; by digests, so that looking one up tells nothing of the others by its time. */
  readonly #until = new Map<string, number>();

  constructor(secret: string, now: () => number = Date.now) {
    this.#secret = digest(secret);
    this.#now = now;
  }

  /** Whether this is the secret; takes the same time whatever is wrong with it. */
  isSecret(text: string): boolean {
    return timingSafeEqual(digest(text), this.#secret);
  }

  /** The id of a new session. */
  open(): string {
    const id = randomBytes(32).toString('base64url');
    this.#hold(id);
    for (const key of this.#until.keys()) {
      if (this.#until.size <= MOST_SESSIONS) break;
      this.#until.delete(key);
    }
    return id;
  }

  /** Whether a session holds; it then holds on. */
  holds(id: string): boolean {
    const key = digest(id).toString('base64');
    const until = this.#until.get(key);
    this.#until.delete(key);
    if (until === undefined || until < this.#now()) return false;
    this.#hold(id);
    return true;
  }

  close(id: string): void {
    this.#until.delete(digest(id).toString('base64'));
  }

  #hold(id: string): void {
    this.#until.set(digest(id).toString('base64'), this.#now() + IDLE_MS);
  }
}
