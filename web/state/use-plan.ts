import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { type Asked, Planner, type PlannerState, same } from './planner.ts';

/** The plan as far as it has come, and what can be done about it. */
export interface Planned extends Omit<PlannerState, 'of' | 'stopped'> {
  /** The plan shown is of the rig and trip before: another is on its way, was stopped, or was refused. */
  stale: boolean;
  /** Stopped by the reader. */
  stopped: boolean;
  onStop: () => void;
  onAgain: () => void;
}

interface PlanWish {
  /** What is open, the same value as long as nothing of it changes; null while nothing is. */
  asked: Asked | null;
  /** Somebody looks at the plan: ways out and the plan against one failure are made as well. */
  looked: boolean;
  /** Answer, strip and map go by the plan: it is made in the background. */
  byPlan: boolean;
  /** The server no longer has the route, and is to be sent it again. */
  onLost: () => void;
}

/** The plan for what is said. What takes longest of it is asked for only while somebody looks at it. */
export function usePlan({ asked, looked, byPlan, onLost }: PlanWish): {
  planned: Planned;
  forget: () => void;
} {
  const [planner] = useState(() => new Planner());
  const state = useSyncExternalStore(planner.subscribe, planner.read);
  const wanted = looked ? 'whole' : byPlan ? 'plain' : null;
  useEffect(() => {
    planner.onLost = onLost;
  }, [planner, onLost]);
  useEffect(() => planner.want(wanted === null ? null : asked, wanted === 'whole'), [planner, asked, wanted]);
  useEffect(() => () => planner.want(null), [planner]);
  const planned = useMemo((): Planned => {
    const { of, stopped, ...shown } = state;
    return {
      ...shown,
      stale: !same(of, asked),
      stopped: stopped !== null && same(stopped, asked),
      onStop: planner.stop,
      onAgain: planner.again,
    };
  }, [planner, state, asked]);
  return { planned, forget: planner.forget };
}

/** The plan that strip, map and answer go by. While another is made the last one stays; of earlier figures only, it is none. */
export function planToGoBy({ reply, stale, problem, stopped }: Planned): PlanReply | null {
  return stale && (problem !== null || stopped) ? null : reply;
}

/** How it stands with ways out and the plan against one failure, which take longest. */
export function restOf({
  whole,
  stale,
  stopped,
  problem,
}: Pick<Planned, 'whole' | 'stale' | 'stopped' | 'problem'>) {
  if (whole) return 'there';
  return stale || stopped || problem !== null ? 'not-tried' : 'coming';
}
export type Rest = ReturnType<typeof restOf>;
