import { useEffect, useRef, useState } from 'react';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { detailsOf, type ProblemDetails, planTrip } from '../api.ts';
import type { Said } from '../rig/said.ts';

/** Wait after the last change before planning again, ms (ours). */
const QUIET_MS = 150;
/** Work that takes longer than this is said to be at work, ms. */
const SLOW_MS = 300;

/** The plan as far as it has come; the last good one stays while another is made. */
export interface Planned {
  reply: PlanReply | null;
  /** False while ways out and the plan against one failure are still being tried. */
  whole: boolean;
  /** The plan shown is of the rig and trip before: another is on its way, or was refused. */
  stale: boolean;
  /** At work for longer than the eye forgives. */
  slow: boolean;
  problem: ProblemDetails | null;
}

/** What a plan was made for. */
interface Asked {
  id: string;
  rig: Said['rig'];
  trip: Said['trip'];
}

interface Held extends Omit<Planned, 'stale'> {
  /** What `reply` is the plan for. */
  of: Asked | null;
}

const NOTHING: Held = { reply: null, of: null, whole: false, slow: false, problem: null };

const same = (a: Asked | null, b: Asked): boolean =>
  a !== null && a.id === b.id && a.rig === b.rig && a.trip === b.trip;

/**
 * The plan for what is said, while `wanted`: first without what takes long, then with it. A change calls off the
 * request before it, which stops the server's work as well.
 */
export function usePlan(id: string, said: Said, wanted: boolean): Planned {
  const [state, setState] = useState<Held>(NOTHING);
  /** What the plan that is held in full was made for. */
  const held = useRef<Asked | null>(null);
  const { rig, trip } = said;
  useEffect(() => {
    const asked = { id, rig, trip };
    if (!wanted || same(held.current, asked)) return;
    held.current = null;
    const control = new AbortController();
    const { signal } = control;
    setState((last) => ({ ...last, problem: null }));
    const slowly = setTimeout(() => setState((last) => ({ ...last, slow: true })), QUIET_MS + SLOW_MS);
    const ask = async (extras: boolean): Promise<void> => {
      const reply = await planTrip(id, rig, trip, extras, signal);
      if (signal.aborted) return;
      if (extras) {
        held.current = asked;
        clearTimeout(slowly);
      }
      setState((last) => ({
        reply,
        of: asked,
        whole: extras,
        slow: extras ? false : last.slow,
        problem: null,
      }));
    };
    const quiet = setTimeout(() => {
      ask(false)
        .then(() => (signal.aborted ? undefined : ask(true)))
        .catch((error: unknown) => {
          if (signal.aborted) return;
          clearTimeout(slowly);
          setState((last) => ({ ...last, slow: false, problem: detailsOf(error) }));
        });
    }, QUIET_MS);
    return () => {
      clearTimeout(quiet);
      clearTimeout(slowly);
      control.abort();
      setState((last) => ({ ...last, slow: false }));
    };
  }, [id, rig, trip, wanted]);
  const { of, ...shown } = state;
  return { ...shown, stale: !same(of, { id, rig, trip }) };
}
