import type { Commodity } from '../../server/contract/common.ts';
import type { CabFile, CabMark, CabSupply } from '../../server/core/cab/cab-file.ts';
import type { CabRuns } from '../../server/core/cab/cab-runs.ts';
import type { CabState } from '../../server/core/cab/cab-state.ts';
import type { PlanEdge } from '../../server/core/plan/side/plan-edge.ts';
import { COMMODITIES } from '../../server/core/quantity/commodities.ts';
import { cabWords } from '../../server/words/cab.ts';
import { metresBefore } from './figures.ts';

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

/** Lines of what comes next at most, and cautions among them beside that (ours): one look. */
const MOST_NEXT = 6;
const MOST_CAUTIONS = 2;

/**
 * What comes next by the plan, in the order of the road; turn-back points by what is aboard, where that was read, in place
 * of those of the plan. Cautions never take the place of a stop: all of them stand below the view.
 */
export function nextLines(
  file: Pick<CabFile, 'marks' | 'fuelKind'>,
  state: CabState,
  here: { atM: number; left: boolean },
): NextLine[] {
  const { atM, left } = here;
  const ahead = file.marks.filter(
    (mark) => (left ? mark.atM > atM : mark.atM >= atM) && mark.kind !== 'start',
  );
  const cautions = ahead
    .filter((mark) => mark.kind === 'caution' && mark.atM > atM)
    .map(({ kind: _, ...mark }): NextLine => ({ ...mark, isStop: false }))
    .slice(0, MOST_CAUTIONS);
  const planned = ahead
    .filter(({ kind }) => kind !== 'caution')
    .filter(
      ({ kind, commodities, ...mark }) =>
        kind !== 'turn-back' || commodities.every((each) => mark.atM > endOf(state, each)),
    )
    .map(({ kind, ...mark }) => ({ ...mark, isStop: kind === 'stop' }));
  const lines = inOrder([...planned, ...turnLines(file, state)]).slice(0, MOST_NEXT);
  const lastM = lines.at(-1)?.atM ?? Number.POSITIVE_INFINITY;
  return inOrder([...lines, ...cautions.filter((caution) => caution.atM <= lastM)]);
}

const inOrder = (lines: readonly NextLine[]) => lines.toSorted((a, b) => a.atM - b.atM);

/** Until there the present state speaks for a commodity. */
function endOf(state: CabState, commodity: Commodity): number {
  const side = state[commodity];
  return 'none' in side ? Number.NEGATIVE_INFINITY : side.to.atM;
}

const turnLines = ({ fuelKind }: Pick<CabFile, 'fuelKind'>, state: CabState): NextLine[] =>
  COMMODITIES.flatMap((commodity) => {
    const side = state[commodity];
    if ('none' in side || side.back?.untilM == null || side.back.untilM >= side.to.atM) return [];
    const { untilM } = side.back;
    const name = cabWords().lastTurn(cabWords().answer.content(commodity, fuelKind));
    return [{ atM: metresBefore(untilM), name, todo: [], contact: null, isStop: false }];
  });

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
