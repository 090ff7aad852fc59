import { useEffect, useState, useSyncExternalStore } from 'react';
import { Planner, type PlannerState, same } from './planner.ts';
import type { Said } from './said.ts';

/** The plan as far as it has come, and what can be done about it. */
export interface Planned extends Omit<PlannerState, 'of' | 'stopped'> {
  /** The plan shown is of the rig and trip before: another is on its way, was stopped, or was refused. */
  stale: boolean;
  /** Stopped by the reader. */
  stopped: boolean;
  onStop: () => void;
  onAgain: () => void;
}

/** The plan for what is said, while `wanted`. `onLost`: the server no longer has the route, and is to be sent it again. */
export function usePlan(id: string, said: Said, wanted: boolean, onLost: () => void): Planned {
  const [planner] = useState(() => new Planner());
  const { of, stopped, ...shown } = useSyncExternalStore(planner.subscribe, planner.read);
  const { rig, trip } = said;
  useEffect(() => {
    planner.onLost = onLost;
  }, [planner, onLost]);
  useEffect(() => planner.want(wanted ? { id, rig, trip } : null), [planner, id, rig, trip, wanted]);
  useEffect(() => () => planner.want(null), [planner]);
  const asked = { id, rig, trip };
  return {
    ...shown,
    stale: !same(of, asked),
    stopped: same(stopped, asked),
    onStop: planner.stop,
    onAgain: planner.again,
  };
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
