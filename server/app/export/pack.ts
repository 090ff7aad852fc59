import { PART } from '../../core/defaults/trip-defaults.ts';
import type { Outcome } from '../../core/input/problem.ts';
import { routeOf } from '../../core/route/build/route-of.ts';
import type { RouteLine } from '../../core/route/route-line.ts';
import { noticeWords } from '../../words/notice.ts';
import type { LoadedTrip } from '../loaded-trip.ts';
import type { PlannedTrip } from '../plan-trip.ts';
import { routeProblem } from '../route-problem.ts';

/** What a file to take along is made from. */
export interface ExportPack {
  readonly route: RouteLine;
  readonly planned: PlannedTrip;
  /** Set when the land is invented and must not be driven by. */
  readonly notice: string | null;
  /** ISO date on which it is made. */
  readonly made: string;
}

/** The pack of a planned trip, with the route that it was planned on. */
export function packOf(
  { document, notice }: LoadedTrip,
  planned: PlannedTrip,
  made: string,
): Outcome<ExportPack> {
  const { part = PART } = planned.analysis.trip;
  // Steps of any length are drawn alike: no file to take along asks for those that are sparse.
  const route = routeOf(document, { part, sparseStepM: Number.POSITIVE_INFINITY });
  return route.ok
    ? { ok: true, value: { route: route.value, planned, notice: noticeWords(notice), made } }
    : { ok: false, problem: routeProblem(route.refusal, null) };
}
