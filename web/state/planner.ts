import type { PlanReply } from '../../server/contract/whatif.ts';
import { detailsOf, type ProblemDetails, planTrip } from '../api/api.ts';
import type { Said } from './said.ts';

/** Wait after the last change before planning again, ms (ours). */
export const QUIET_MS = 150;
/** Work that takes longer than this is said to be at work, ms. */
export const SLOW_MS = 300;

/** What a plan is made for. */
export interface Asked {
  id: string;
  rig: Said['rig'];
  trip: Said['trip'];
}

/** How far the plan has come; the last good one stays while another is made. */
export interface PlannerState {
  reply: PlanReply | null;
  /** What `reply` is the plan for. */
  of: Asked | null;
  /** False while ways out and the plan against one failure are still to be tried. */
  whole: boolean;
  /** When the work began that takes long, ms since 1970; null while none does. */
  slowSince: number | null;
  /** What the reader stopped before it was there in full. */
  stopped: Asked | null;
  problem: ProblemDetails | null;
}

const NOTHING: PlannerState = {
  reply: null,
  of: null,
  whole: false,
  slowSince: null,
  stopped: null,
  problem: null,
};

/** Rig and trip are new values after every edit. */
export const same = (a: Asked | null, b: Asked | null): boolean =>
  a === b || (a !== null && b !== null && a.id === b.id && a.rig === b.rig && a.trip === b.trip);

/**
 * Makes the plan that is wanted: first without what takes long, then with it. Another wish calls off the request for
 * the one before, which stops the server's work as well.
 */
export class Planner {
  /** Called once when the server no longer has the route. */
  onLost: () => void = () => {};
  #state = NOTHING;
  #wanted: Asked | null = null;
  #work: AbortController | null = null;
  /** What the route was last found lost with. */
  #lostWith: Asked | null = null;
  readonly #listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly read = (): PlannerState => this.#state;

  /** What is to be planned now; null while nobody looks. What was stopped stays so until something else is wanted. */
  want(asked: Asked | null): void {
    if (same(asked, this.#wanted)) return;
    this.#callOff();
    this.#wanted = asked;
    if (asked === null || same(asked, this.#state.stopped)) return;
    if (!this.#holdsWhole(asked)) this.#start(asked, QUIET_MS);
  }

  /** Stops the work; the last good plan stays. */
  readonly stop = (): void => {
    if (this.#work === null) return;
    this.#callOff();
    this.#change({ stopped: this.#wanted });
  };

  /** Goes on after a stop or a failure, or plans anew. */
  readonly again = (): void => {
    const asked = this.#wanted;
    if (asked === null) return;
    this.#callOff();
    this.#lostWith = null;
    if (this.#holdsWhole(asked)) this.#change({ whole: false, of: null });
    this.#start(asked, 0);
  };

  /** Another route is open: nothing of the one before is left. */
  readonly forget = (): void => {
    this.#callOff();
    this.#wanted = null;
    this.#lostWith = null;
    this.#change(NOTHING);
  };

  #holdsWhole(asked: Asked): boolean {
    return this.#state.whole && same(this.#state.of, asked);
  }

  #change(change: Partial<PlannerState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }

  #callOff(): void {
    this.#work?.abort();
    this.#work = null;
    if (this.#state.slowSince !== null) this.#change({ slowSince: null });
  }

  #start(asked: Asked, quietMs: number): void {
    const work = new AbortController();
    this.#work = work;
    this.#change({ problem: null, stopped: null });
    const quiet = setTimeout(() => void this.#plan(asked, work.signal), quietMs);
    const slowly = setTimeout(() => this.#change({ slowSince: Date.now() - SLOW_MS }), quietMs + SLOW_MS);
    work.signal.addEventListener('abort', () => {
      clearTimeout(quiet);
      clearTimeout(slowly);
    });
  }

  async #plan(asked: Asked, signal: AbortSignal): Promise<void> {
    const { id, rig, trip } = asked;
    try {
      // After a stop the plain plan may be there already.
      for (const extras of same(this.#state.of, asked) ? [true] : [false, true]) {
        const reply = await planTrip(id, rig, trip, extras, signal);
        if (signal.aborted) return;
        this.#change({ reply, of: asked, whole: extras });
      }
      this.#lostWith = null;
      this.#callOff();
    } catch (error) {
      if (signal.aborted) return;
      this.#callOff();
      this.#fail(asked, detailsOf(error));
    }
  }

  #fail(asked: Asked, problem: ProblemDetails): void {
    this.#change({ problem });
    const { rig, trip } = this.#lostWith ?? {};
    // Lost again with the same rig and trip: sending it once more would go on for ever.
    if (problem.code !== 'not-found' || (rig === asked.rig && trip === asked.trip)) return;
    this.#lostWith = asked;
    this.onLost();
  }
}
