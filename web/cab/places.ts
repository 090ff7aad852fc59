import type { Commodity } from '../../server/contract/common.ts';
import type { CabFile, CabMark, CabSupply } from '../../server/core/cab/cab-file.ts';
import type { CabRuns } from '../../server/core/cab/cab-runs.ts';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import type { PlanEdge } from '../../server/core/plan/side/plan-edge.ts';
import { COMMODITIES } from '../../server/core/quantity/commodities.ts';
import { CAB } from '../../server/words/cab.ts';
import { kmBefore } from './figures.ts';

/** So near to a stop one may be at it (ours). */
const AT_STOP_M = 1_500;

/** The stop of the plan at which one is, if any. */
export function stopNear(runs: CabRuns, atM: number): PlanEdge | null {
  const stops = COMMODITIES.flatMap((each) => runs[each].planned.map(({ to }) => to));
  return stops.reduce<PlanEdge | null>((nearest, stop) => {
    const offM = Math.abs(stop.atM - atM);
    if (stop.kind !== 'passing' || offM > AT_STOP_M) return nearest;
    return nearest === null || offM < Math.abs(nearest.atM - atM) ? stop : nearest;
  }, null);
}

/** A line of what comes next. */
export interface NextLine extends Pick<CabMark, 'atM' | 'name' | 'todo' | 'contact'> {
  readonly isStop: boolean;
}

/** Lines of what comes next at most (ours): one look. */
const MOST_NEXT = 6;

/**
 * What comes next by the plan, in the order of the road; turn-back points by what is aboard, where that was read, in place
 * of those of the plan.
 */
export function nextLines(file: CabFile, state: CabState, here: { atM: number; left: boolean }): NextLine[] {
  const { atM, left } = here;
  const ahead = file.marks.filter(
    (mark) => (left ? mark.atM > atM : mark.atM >= atM) && mark.kind !== 'start',
  );
  const planned = ahead
    .filter(
      ({ kind, commodities, ...mark }) =>
        kind !== 'turn-back' || commodities.every((each) => mark.atM > endOf(state, each)),
    )
    .map(({ kind, ...mark }) => ({ ...mark, isStop: kind === 'stop' }));
  return [...planned, ...turnLines(file, state)].toSorted((a, b) => a.atM - b.atM).slice(0, MOST_NEXT);
}

/** Until there the present state speaks for a commodity. */
function endOf(state: CabState, commodity: Commodity): number {
  const side = state[commodity];
  return 'none' in side ? Number.NEGATIVE_INFINITY : side.to.atM;
}

const turnLines = ({ fuelKind }: CabFile, state: CabState): NextLine[] =>
  COMMODITIES.flatMap((commodity) => {
    const side = state[commodity];
    if ('none' in side || side.back?.untilM == null || side.back.untilM >= side.to.atM) return [];
    const { untilM } = side.back;
    const name = CAB.lastTurn(CAB.answer.content(commodity, fuelKind));
    return [{ atM: metresBefore(untilM), name, todo: [], contact: null, isStop: false }];
  });

/** A place that must not be passed is never told as farther than it is. */
const metresBefore = (metres: number): number => Number(kmBefore(metres)) * 1000;

/** Further supplies told of at most, each way (ours). */
const MOST_OTHERS = 2;

/** Supplies beside the plan on the stretch where one is, nearest ones each way, for the commodities that are not enough. */
export function othersNear({ others }: CabFile, state: CabState, atM: number): CabSupply[] {
  return COMMODITIES.flatMap((commodity) => {
    const side = state[commodity];
    if ('none' in side || side.on.verdict === 'enough') return [];
    const own = others.filter(
      (one) => one.commodity === commodity && one.atM > side.from.atM && one.atM < side.to.atM,
    );
    return [
      ...own.filter((one) => one.atM <= atM).slice(-MOST_OTHERS),
      ...own.filter((one) => one.atM > atM).slice(0, MOST_OTHERS),
    ];
  });
}
