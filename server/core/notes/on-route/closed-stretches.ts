import type { PacePlan } from '../../pace/pace-plan.ts';
import { timeThere } from '../../pace/time-there.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { SpanM } from '../../quantity/span.ts';
import { saidBy } from '../../supply/tags/said-by.ts';
import type { Trip } from '../../trip/settle-trip.ts';

/**
 * A caution for each closed stretch that the route goes over, on days on which it may be closed: the plan cannot be driven
 * as it is. Those past the end of the route are told as well.
 */
export function closedCautions(closed: Trip['closed'], lengthM: number, pace: PacePlan): Caution[] {
  return closed.flatMap((stretch): Caution[] => {
    const { fromM, toM } = stretch;
    if (fromM >= lengthM) return [{ code: 'closed-off-route', facts: { atM: fromM }, fromM, toM }];
    if (!mayBeClosed(stretch, pace, Math.min(toM, lengthM))) return [];
    const { on, from, until } = stretch;
    const days = {
      ...(from === undefined ? {} : { from }),
      ...(until === undefined ? {} : { until }),
    };
    const facts = { on, ...saidBy(stretch), ...days };
    return [{ code: 'route-closed', facts, fromM, toM: Math.min(toM, lengthM) }];
  });
}

/** The stretches of the route that may be closed on the days on which the drive comes to them, in route order. */
export const closedSpans = (closed: Trip['closed'], lengthM: number, pace: PacePlan): SpanM[] =>
  closed
    .map((stretch) => ({ ...stretch, toM: Math.min(stretch.toM, lengthM) }))
    .filter((stretch) => stretch.fromM < lengthM && mayBeClosed(stretch, pace, stretch.toM))
    .map(({ fromM, toM }) => ({ fromM, toM }))
    .sort((a, b) => a.fromM - b.fromM);

/** Whether the drive may be on it on a day on which it is closed. */
function mayBeClosed({ fromM, from, until }: Trip['closed'][number], pace: PacePlan, toM: number): boolean {
  const entered = timeThere(pace, fromM).span?.earliest.slice(0, 10);
  const left = timeThere(pace, toM).span?.latest.slice(0, 10);
  if (entered === undefined || left === undefined) return true;
  return (until === undefined || entered <= until) && (from === undefined || left >= from);
}
