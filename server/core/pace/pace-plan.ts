import type { Surface } from '../../contract/surface.ts';
import { amountBetween, type Profile } from '../gaps/course/profile.ts';
import type { PlacedCamp } from '../gaps/course/stays.ts';
import { at } from '../lists/at.ts';
import { metresOf } from '../quantity/rates.ts';
import type { Rig } from '../rig/rig.ts';
import type { Ferry } from '../route/ferry.ts';
import { type SurfaceSpan, surfaceSpans } from '../surface/surface.ts';
import type { Trip } from '../trip/settle-trip.ts';
import { type PaceEnd, paceOn } from './pace-on.ts';
import { type Piece, type Schedule, type Stop, scheduleOf } from './schedule.ts';
import { stopsOf } from './trip-stops.ts';

/** The drive at three paces. */
export interface PacePlan {
  rig: Rig;
  stops: readonly Stop[];
  /** Their hours are among the stops as stays. */
  ferries: readonly Ferry[];
  /** At the slow pace. */
  pieces: readonly Piece[];
  schedules: Record<PaceEnd, Schedule>;
  /** Surfaces of the route, in order, some more than once. */
  surfaces: readonly Surface[];
  /** True where the hour of departure is told, so that the hours of the clock are known; else the trip starts with a driving day. */
  timed: boolean;
  /** Day of departure, null when it is not told, and the hour; 0 where only the day is told. */
  departure: { date: string | null; hour: number };
}

/** What a drive is scheduled with; `wayM`: the way along the route, allowance included. */
export interface PaceFacts {
  readonly lengthM: number;
  readonly rig: Rig;
  readonly trip: Trip;
  readonly camps: readonly PlacedCamp[];
  readonly wayM: Profile;
  readonly ferries: readonly Ferry[];
}

/** Schedules of a drive at three paces. */
export function pacePlan({ lengthM, rig, trip, camps, wayM, ferries }: PaceFacts): PacePlan {
  const stops = stopsOf(lengthM, trip, camps);
  const spans = surfaceSpans(lengthM, trip);
  const pieces = piecesOf(wayM, spans, rig, 'slow');
  const schedule = (pace: PaceEnd) =>
    scheduleOf(
      pace === 'slow' ? pieces : piecesOf(wayM, spans, rig, pace),
      stops,
      paceOn(rig, 'unknown').hoursPerDay,
    );
  return {
    rig,
    stops,
    ferries,
    pieces,
    schedules: { slow: schedule('slow'), typical: schedule('typical'), fast: schedule('fast') },
    surfaces: spans.map((span) => span.surface),
    timed: trip.departureHour !== null,
    departure: { date: trip.departure, hour: trip.departureHour ?? 0 },
  };
}

/** The route cut wherever the way or the surface changes its rate. */
function piecesOf(wayM: Profile, spans: readonly SurfaceSpan[], rig: Rig, pace: PaceEnd): Piece[] {
  const places = [...new Set([...wayM.atM, ...spans.flatMap((span) => [span.fromM, span.toM])])].sort(
    (a, b) => a - b,
  );
  let span = 0;
  return places.slice(0, -1).map((fromM, index) => {
    const toM = at(places, index + 1);
    while (span + 1 < spans.length && at(spans, span).toM <= fromM) span += 1;
    const { hoursPerDay, kmPerHour } = paceOn(rig, spans[span]?.surface ?? 'unknown');
    const hours = amountBetween(wayM, fromM, toM) / metresOf(kmPerHour[pace]);
    return { fromM, toM, hours, dayShare: hours / hoursPerDay };
  });
}
