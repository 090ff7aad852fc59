import type { PlanReply } from '../../server/contract/whatif.ts';
import { detailsOf, type ProblemDetails, planSoFar, planTrip } from '../api/api.ts';
import type { Said } from './said.ts';

/** Wait after the last change before planning again, ms (ours). */
export const QUIET_MS = 150;
/** Work that takes longer than this is said to be at work, ms. */
export const SLOW_MS = 300;

/** A plan that takes long is asked for what it has come to, each time so long after the last answer, ms (ours). */
export const ASK_MS = 500;

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
  /** The plan is a good one that was found soon: whether there is a better one is still searched for. */
  searching: boolean;
  /** How the plan turned out beside the one that was shown before it for the same rig and trip; null where none was. */
  outcome: 'changed' | 'confirmed' | null;
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
  searching: false,
  outcome: null,
  whole: false,
  slowSince: null,
  stopped: null,
  problem: null,
};

/** Rig and trip are new values after every edit. */
export const same = (a: Asked | null, b: Asked | null): boolean =>
  a === b || (a !== null && b !== null && a.id === b.id && a.rig === b.rig && a.trip === b.trip);

/** What a plan tells to do: where to halt with what, and how many cans. */
const advice = ({ plan: { status, cans, legs } }: PlanReply): string =>
  JSON.stringify([
    status,
    cans,
    ...[legs.fuel, legs.water].map((all) =>
      all.map(({ from, to, tankL, cans: full }) => [from.id, to.id, tankL, full]),
    ),
  ]);

/** Ends after so long, or as soon as nobody waits any more. */
const pause = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      resolve();
    });
  });

/**
 * Makes the plan that is wanted: first without what takes long, then with it. Another wish calls off the request for
 * the one before, which stops the server's work as well.
 */
export class Planner {
  /** Called once when the server no longer has the route. */
  onLost: () => void = () => {};
  #state = NOTHING;
  #wanted: Asked | null = null;
  /** Ways out and the plan against one failure are wanted as well. */
  #wantsWhole = true;
  #work: AbortController | null = null;
  /** What the route was last found lost with. */
  #lostWith: Asked | null = null;
  readonly #listeners = new Set<() => void>();

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly read = (): PlannerState => this.#state;

  /**
   * What is to be planned now; null while nobody looks. What was stopped stays so until something else is wanted. Without
   * `whole` it is done when the plain plan is there; work on more that is under way is not called off.
   */
  want(asked: Asked | null, whole = true): void {
    const more = whole && !this.#wantsWhole;
    this.#wantsWhole = whole;
    if (same(asked, this.#wanted) && !(more && this.#work === null)) return;
    this.#callOff();
    this.#wanted = asked;
    if (asked === null || same(asked, this.#state.stopped)) return;
    const isThere = same(this.#state.of, asked) && !this.#state.searching;
    if (whole ? !this.#holdsWhole(asked) : !isThere) this.#start(asked, QUIET_MS);
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
      if (!same(this.#state.of, asked) || this.#state.searching) {
        const name = crypto.randomUUID();
        const plain = new AbortController();
        const making = AbortSignal.any([signal, plain.signal]);
        void this.#askMeanwhile(asked, name, making);
        const reply = await planTrip(id, { rig, trip, extras: false, name }, signal).finally(() =>
          plain.abort(),
        );
        if (signal.aborted) return;
        this.#show(asked, reply, { whole: false });
      }
      if (this.#wantsWhole) {
        const reply = await planTrip(id, { rig, trip, extras: true }, signal);
        if (signal.aborted) return;
        this.#show(asked, reply, { whole: true });
      }
      this.#lostWith = null;
      this.#callOff();
    } catch (error) {
      if (signal.aborted) return;
      this.#callOff();
      this.#fail(asked, detailsOf(error));
    }
  }

  /** Shows a good plan as soon as there is one, until the best is there. */
  async #askMeanwhile(asked: Asked, name: string, making: AbortSignal): Promise<void> {
    try {
      for (;;) {
        await pause(ASK_MS, making);
        if (making.aborted) return;
        const reply = await planSoFar(name, making);
        if (making.aborted) return;
        if (reply === null) continue;
        this.#change({ reply, of: asked, searching: true, outcome: null, whole: false });
        return;
      }
    } catch {
      // Whatever is wrong, the request for the plan itself tells of it.
    }
  }

  /** Puts a plan in the place of the one before it. A reader may have taken that down: it is told where they differ. */
  #show(asked: Asked, reply: PlanReply, { whole }: { whole: boolean }): void {
    const { reply: before, of, searching, outcome } = this.#state;
    const isAgain = before !== null && same(of, asked);
    const turnedOut = !isAgain
      ? null
      : advice(before) !== advice(reply)
        ? 'changed'
        : searching
          ? 'confirmed'
          : outcome;
    this.#change({ reply, of: asked, searching: false, outcome: turnedOut, whole });
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
