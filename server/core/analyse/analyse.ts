import type { Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { washingStops } from '../crew/aboard/washing-stops.ts';
import type { Course } from '../gaps/course/course.ts';
import type { Camp } from '../gaps/course/stays.ts';
import type { LonLat } from '../geodesy/lon-lat.ts';
import type { OpeningHoursReader } from '../input/opening-hours.ts';
import type { RouteDocument, Supplies } from '../input/sources.ts';
import { evenLoad, type Load } from '../mass/load.ts';
import { daysOf } from '../pace/days-of.ts';
import { type TimeThere, timeThere } from '../pace/time-there.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { NearPlace } from '../phrases/notes.ts';
import { COMMODITIES } from '../quantity/commodities.ts';
import type { SpanM } from '../quantity/span.ts';
import { routeOf } from '../route/build/route-of.ts';
import type { RouteOutcome } from '../route/build/route-outcome.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { Passing } from '../supply/points/passing.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { nearestSettlement } from '../surroundings/settlements.ts';
import type { Analysis } from './analysis.ts';
import { edgesOf, namesOfEnds, uncoveredOf } from './course-of.ts';
import { type CourseGround, coursesOf } from './courses.ts';
import { campsOf, driveDaysOf } from './drive-days.ts';
import { ferriedRoute, ferryAssumptions, ferryCautions, settledAboard } from './ferried.ts';
import { judge } from './judge.ts';
import { reportSide, reportUses, type Side } from './report.ts';
import { coverOn, markCut, readersCautions } from './route-cover.ts';
import { settle } from './settle.ts';
import { STANDING_CAUTIONS } from './standing-cautions.ts';

export interface AnalyseInput {
  document: RouteDocument;
  /** From all extracts and the user's own points. */
  supplies: Supplies;
  rig: RigFile;
  trip: TripFile;
  /** YYYY-MM-DD: the day for which the age of tags is judged when the trip has no departure. */
  today: string;
  camps: readonly Camp[];
  /** Reads opening hours; without it no arrival is judged. */
  openingHours?: OpeningHoursReader;
}

export interface Analysed {
  analysis: Analysis;
  route: RouteLine;
  points: readonly SupplyPoint[];
}

/** An analysis with what it was reckoned with: a carry plan goes on from there. */
export interface Reckoned extends Analysed {
  sides: Record<Commodity, Side>;
  /** The course of fuel with so much more on board than full tanks, kg: the rate may go by the mass. */
  fuelWithLoad: (moreKg: number) => Course;
  /** As `fuelWithLoad`, with what is on board along the route. */
  fuelWithLoads: (load: Load) => Course;
  /** Both courses for another rig or trip on the same route, with what is on board along it; supplies stay as judged. */
  coursesWith: (rig: RigFile, trip: TripFile, load: Load) => Record<Commodity, Course>;
  /** The nearest named place that is known near one. */
  nearestPlace: (place: LonLat) => NearPlace | null;
  /** When a place of the route is come to. */
  timeThere: (atM: number) => TimeThere;
}

/**
 * The one entry point: a route, supplies, a rig and a trip in, the whole answer out. Pure: the same input gives the
 * same answer, and no input is changed. Fails only where no route can be made of the document.
 */
export function analyse(input: AnalyseInput): RouteOutcome<Analysed> {
  const outcome = reckonTrip(input);
  if (!outcome.ok) return outcome;
  const { analysis, route, points } = outcome.value;
  return { ok: true, value: { analysis, route, points } };
}

/** As analyse, with the courses that a carry plan goes on from. Its stages: settle, judge, course, report. */
export function reckonTrip(input: AnalyseInput): RouteOutcome<Reckoned> {
  const { document, supplies, today, openingHours } = input;
  const plain = settle(input.rig, input.trip);
  const line = routeOf(document, { part: plain.trip.part, sparseStepM: plain.trip.sparseStepM });
  if (!line.ok) return line;
  const route = ferriedRoute(line.value, supplies);
  const settled = settledAboard(plain, route);
  const { trip } = settled;

  const halting = campsOf(route, settled, input.camps);
  const drive = driveDaysOf(route, settled, halting.camps);
  const onRoute = coverOn(route, supplies, trip.extracts);
  const cover = onRoute.spans;
  const judged = judge(settled, {
    areas: onRoute.areas,
    route,
    supplies,
    pace: drive.pace,
    today,
    openingHours,
  });
  const washing = washingStops(trip.washingSources, judged.passings);
  const ground: CourseGround = {
    route,
    drive,
    uncovered: { fuel: uncoveredOf(route, cover.fuel), water: uncoveredOf(route, cover.water) },
    washingStopsM: washing.stopsM,
  };
  const courses = coursesOf(settled, ground);
  const ends = namesOfEnds(route, document);
  const side = (commodity: Commodity) =>
    reportSide(commodity, {
      settled,
      route,
      judged,
      course: courses[commodity],
      cover: cover[commodity],
      edges: edgesOf(route, judged.passings, commodity, ends),
    });
  const [fuel, water] = [side('fuel'), side('water')];
  const { uses, ...said } = reportUses({ settled, route, drive, judged, courses, fuel, water });

  const analysis: Analysis = {
    route: routeTold(route),
    extracts: markCut(judged.extracts, supplies, trip.extracts),
    noData: COMMODITIES.filter((one) => isWithoutData(one, cover, judged.passings)),
    passings: judged.passings,
    fuel: fuel.report,
    water: water.report,
    nights: drive.pace.schedules.slow.nights,
    days: daysOf(drive.pace, route.lengthM, fuel.report, water.report),
    ...uses,
    rig: settled.rigFile,
    trip: settled.tripFile,
    assumptions: [...settled.assumptions, ...ferryAssumptions(route), ...said.assumptions],
    cautions: [
      ...route.cautions,
      ...ferryCautions(route),
      ...readersCautions(supplies, trip.extracts),
      ...onRoute.cautions,
      ...halting.cautions,
      ...drive.cautions,
      ...judged.cautions,
      ...courses.fuelPlan.cautions,
      ...washing.cautions,
      ...fuel.cautions,
      ...water.cautions,
      ...said.cautions,
      ...onwardCautions(trip.onward, route.lengthM),
    ],
    standing: STANDING_CAUTIONS,
    skipped: [...supplies.skipped, ...judged.skipped],
    onwardTold: trip.onward !== null,
  };
  return {
    ok: true,
    value: {
      analysis,
      route,
      points: judged.points,
      sides: { fuel, water },
      fuelWithLoad: (moreKg) => courses.fuelWithLoads(evenLoad(moreKg)),
      fuelWithLoads: courses.fuelWithLoads,
      nearestPlace: (place) => nearestSettlement(supplies.surroundings, place),
      timeThere: (atM) => timeThere(drive.pace, atM),
      coursesWith: (rig, changedTrip, load) => {
        const changed = settledAboard(settle(rig, changedTrip), route);
        const other = coursesOf(changed, { ...ground, drive: driveDaysOf(route, changed, halting.camps) });
        return { fuel: other.fuelWithLoads(load), water: other.water };
      },
    },
  };
}

/** No cover, and not one supply, counting or not. */
const isWithoutData = (
  commodity: Commodity,
  cover: Readonly<Record<Commodity, readonly SpanM[]>>,
  passings: readonly Passing[],
): boolean =>
  cover[commodity].length === 0 &&
  passings.every((passing) => passing.commodity !== commodity || isRiverLeftOut(passing));

/** A river beside the route tells nothing of taps and wells. */
const isRiverLeftOut = ({ kind, counts }: Passing): boolean =>
  !counts && (kind.phrase === 'river' || kind.phrase === 'lake');

const routeTold = ({ name, lengthM, vertices, parts, bbox, longestStepM }: RouteLine): Analysis['route'] => ({
  name,
  lengthM,
  vertices,
  parts,
  bbox,
  longestStepM,
});

const onwardCautions = (onward: unknown, lengthM: number): Caution[] =>
  onward === null ? [{ code: 'onward-unknown', facts: {}, fromM: lengthM, toM: lengthM }] : [];
