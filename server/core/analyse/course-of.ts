import type { Commodity } from '../../contract/common.ts';
import type { Course, Edge, Stay } from '../gaps/course/course.ts';
import { evenCourse } from '../gaps/course/even-course.ts';
import type { RouteDocument } from '../input/sources.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Rig } from '../rig/rig.ts';
import { locate } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { Passing } from '../supply/points/passing.ts';
import { surfaceSpans } from '../surface/surface.ts';
import type { Trip } from '../trip/settle-trip.ts';

/** A waypoint this near to the start or the end of the route lends it its name, metres (ours). */
const NAMES_END_M = 1000;
/** Pieces without cover shorter than this are noise of cutting, metres. */
const NOISE_M = 1;

/** The rest of the route, in order. */
export function uncoveredOf(route: RouteLine, cover: readonly SpanM[]): SpanM[] {
  const uncovered: SpanM[] = [];
  let reachedM = 0;
  for (const span of [...cover, { fromM: route.lengthM, toM: route.lengthM }]) {
    if (span.fromM - reachedM > NOISE_M) uncovered.push({ fromM: reachedM, toM: span.fromM });
    reachedM = Math.max(reachedM, span.toM);
  }
  return uncovered;
}

/** The even course of a commodity: one rate, one pace; stays and stretches without cover in their places. */
export function courseOf(
  { route, rig, trip }: { route: RouteLine; rig: Rig; trip: Trip },
  commodity: Commodity,
  stays: readonly Stay[],
  uncovered: readonly SpanM[],
): Course {
  return evenCourse({
    commodity,
    rig,
    lengthM: route.lengthM,
    allowanceFactor: 1 + trip.allowancePercent / 100,
    allowances: [
      // Aboard a ferry nothing is driven.
      ...(route.ferries ?? []).map(({ fromM, toM }) => ({ fromM, toM, factor: 0 })),
      ...(trip.surfaces.length === 0
        ? []
        : surfaceSpans(route.lengthM, trip).map((span) => ({
            fromM: span.fromM,
            toM: span.toM,
            factor: 1 + span.allowancePercent / 100,
          }))),
    ],
    sketchy: route.sketchy,
    stays,
    oneWay: trip.oneWay,
    uncovered,
    onward: trip.onward,
  });
}

/** Start, every passing of the commodity that counts, end. */
export function edgesOf(
  route: RouteLine,
  passings: readonly Passing[],
  commodity: Commodity,
  ends: { start: string | null; end: string | null },
): Edge[] {
  const end = { id: null, detourM: 0, evidence: null };
  return [
    { ...end, kind: 'start', name: ends.start, atM: 0 },
    ...passings
      .filter((passing) => passing.commodity === commodity && passing.counts)
      .map(
        (passing): Edge => ({
          kind: 'passing',
          id: passing.id,
          name: passing.name ?? passing.kind,
          atM: passing.atM,
          detourM: passing.detourM,
          evidence: passing.evidence,
          ...(passing.mostL === undefined ? {} : { mostL: passing.mostL }),
        }),
      ),
    { ...end, kind: 'end', name: ends.end, atM: route.lengthM },
  ];
}

/** Names for start and end, from the user's waypoints there; null where there are none. */
export function namesOfEnds(
  route: RouteLine,
  document: RouteDocument,
): { start: string | null; end: string | null } {
  const names: { start: string | null; end: string | null } = { start: null, end: null };
  for (const waypoint of document.waypoints) {
    if (waypoint.name === null) continue;
    const { atM, offM } = locate(route, waypoint.lon, waypoint.lat);
    if (offM > NAMES_END_M) continue;
    if (atM <= NAMES_END_M) names.start ??= waypoint.name;
    if (route.lengthM - atM <= NAMES_END_M) names.end ??= waypoint.name;
  }
  return names;
}

/** One caution for each stretch without cover. */
export const coverCautions = ({ commodity, uncovered }: Course): Caution[] =>
  uncovered.map(({ fromM, toM }) => ({ code: 'no-cover', facts: { commodity }, fromM, toM }));
