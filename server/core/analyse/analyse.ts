import type { Analysis, Gap, Report } from '../../contract/analysis.ts';
import type { Caution, Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { answerOf } from '../answer/answer-of.ts';
import { withHelpHours } from '../crew/aboard/help-hours.ts';
import { washingStops } from '../crew/aboard/washing-stops.ts';
import { waterUseOf } from '../crew/aboard/water-use-of.ts';
import { type FuelSources, fuelCourse, fuelPlan } from '../fuel/course/fuel-course.ts';
import { fuelUseOf } from '../fuel/course/fuel-use-of.ts';
import { loadedCourse } from '../fuel/course/loaded-course.ts';
import { nightsAt } from '../fuel/course/nights-at.ts';
import type { Course, EdgeM } from '../gaps/course.ts';
import { gapsOf } from '../gaps/gaps-of.ts';
import { withRescues } from '../gaps/rescue.ts';
import { startLevel } from '../gaps/start-level.ts';
import { type Camp, placeCamps, staysOf } from '../gaps/stays.ts';
import type { Outcome } from '../input/problem.ts';
import type { RouteDocument, Supplies } from '../input/sources.ts';
import { evenLoad, type Load } from '../mass/load.ts';
import { massWithFullTanks } from '../mass/mass-at.ts';
import { massReport } from '../mass/mass-report.ts';
import { withArrivals } from '../pace/arrivals.ts';
import { daysOf } from '../pace/days-of.ts';
import { nightInsideCautions } from '../pace/night-inside.ts';
import type { OpeningHoursReader } from '../pace/opening.ts';
import { campHoursCautions, paceAssumptions, paceOn, withCampHours } from '../pace/pace-on.ts';
import { pacePlan } from '../pace/pace-plan.ts';
import { pacedCourse } from '../pace/paced-course.ts';
import { judgedOnReach } from '../pace/season-on-reach.ts';
import { allCamps } from '../pace/trip-stops.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Rig } from '../rig/rig.ts';
import { settleRig } from '../rig/settle-rig.ts';
import { buildRoute } from '../route/build-route.ts';
import type { RouteLine } from '../route/route-line.ts';
import { classify, type Judging } from '../supply/judge/rules.ts';
import { toSupplyFeatures } from '../supply/points/features.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { routeTopM } from '../treatment/source/route-top.ts';
import { treatmentReport } from '../treatment/source/treatment-report.ts';
import { treatsOf } from '../treatment/source/treats-of.ts';
import { settleTrip } from '../trip/settle-trip.ts';
import { courseOf, coverCautions, coverOf, edgesOf, namesOfEnds, uncoveredOf } from './course-of.ts';
import { coursesWith } from './courses-with.ts';
import { passingsOf } from './passings-of.ts';
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
  points: SupplyPoint[];
}

/** An analysis with what it was reckoned with. */
export interface Reckoned extends Analysed {
  /** What the gaps of each commodity were reckoned with: a carry plan goes on from there. */
  sides: Record<Commodity, AnalysedSide>;
  /** The course of fuel with so much more on board than full tanks, kg: the rate may go by the mass. */
  fuelWithLoad: (moreKg: number) => Course;
  /** As `fuelWithLoad`, with what is on board along the route. */
  fuelWithLoads: (load: Load) => Course;
  /** Both courses for another rig or trip on the same route, with what is on board along it; supplies stay as judged. */
  coursesWith: (rig: RigFile, trip: TripFile, load: Load) => Record<Commodity, Course>;
}

export interface AnalysedSide {
  course: Course;
  /** Start, every passing that counts, end. */
  edges: EdgeM[];
  /** In the fixed tanks at the start, litres. */
  startL: number;
}

/**
 * The one entry point: a route, supplies, a rig and a trip in, the whole answer out. Pure: the same input gives the
 * same answer, and no input is changed. Fails only where no route can be made of the document.
 */
export function analyse(input: AnalyseInput): Outcome<Analysed> {
  const outcome = reckonTrip(input);
  if (!outcome.ok) return outcome;
  const { analysis, route, points } = outcome.value;
  return { ok: true, value: { analysis, route, points } };
}

/** As analyse, with the courses that a carry plan goes on from. */
export function reckonTrip(input: AnalyseInput): Outcome<Reckoned> {
  const { rig: wholeRig, settled: settledRig, assumptions: rigAssumptions } = settleRig(input.rig);
  const { trip, settled: settledTrip, assumptions: tripAssumptions } = settleTrip(input.trip);
  const rig = withHelpHours(withCampHours(wholeRig, trip.campAfterHours), trip);
  const built = buildRoute(input.document, { part: trip.part, sparseStepKm: trip.sparseStepKm });
  if (!built.ok) return built;
  const route = built.value;

  const located = toSupplyFeatures(input.supplies.features);
  const judging: Judging = {
    fuelKind: rig.fuel.kind,
    engine: rig.fuel.model.engine,
    ropeAndBucket: rig.ropeAndBucket,
    counting: trip.counting,
    on: trip.departure,
    today: input.today,
    confirmations: trip.confirmations,
    treats: treatsOf({
      line: rig.treatment,
      notes: trip.waterNotes,
      on: trip.departure ?? input.today,
      altitudeM: routeTopM(route),
      tankL: rig.water.drawableL,
      ropeAndBucket: rig.ropeAndBucket,
    }),
  };
  const departing = classify(located.features, judging);
  const corridorM = trip.corridorKm * 1000;
  const camps = placeCamps(route, input.camps, corridorM);
  const halting = allCamps(route.lengthM, trip, camps.placed);
  const halts = staysOf(route, trip, halting.camps);
  const ends = namesOfEnds(route, input.document);
  const { wayM } = courseOf(route, rig, trip, 'water', halts.stays, []);
  const pace = pacePlan(route.lengthM, rig, trip, halting.camps, wayM);
  const { nights } = pace.schedules.slow;
  const { points, passings: judged } = judgedOnReach({
    route,
    plan: pace,
    features: located.features,
    points: departing,
    passings: passingsOf(route, departing, corridorM, trip.detourFactor),
    judging,
  });
  const tagsOf = new Map(points.map((point) => [`${point.commodity} ${point.id}`, point.tags]));
  const { passings, cautions: shut } = withArrivals(
    judged,
    pace,
    (passing) => tagsOf.get(`${passing.commodity} ${passing.id}`),
    input.openingHours,
    rig.water.litresPerDay.high,
  );
  const fullKg = massWithFullTanks(settledRig);
  const fuelSources: FuelSources = {
    route,
    rig,
    trip,
    stays: halts.stays,
    nights: nightsAt(nights, trip),
    massKg: fullKg,
    kmPerHour: (surface, end) => paceOn(rig, surface).kmPerHour[end],
    hoursPerDay: (surface) => paceOn(rig, surface).hoursPerDay,
  };
  const plan = fuelPlan(fuelSources);

  const cautions: Caution[] = [
    ...input.document.cautions,
    ...route.cautions,
    ...input.supplies.cautions,
    ...camps.cautions,
    ...campHoursCautions(wholeRig, trip.campAfterHours),
    ...halting.cautions,
    ...halts.cautions,
    ...shut,
    ...plan.cautions,
  ];
  const washing = washingStops(trip.washingSources, passings);
  cautions.push(...washing.cautions);
  const reportFor = (commodity: Commodity): { report: Report; even: Course; side: AnalysedSide } => {
    const cover = coverOf(route, input.supplies, commodity);
    const uncovered = uncoveredOf(route, cover);
    const even = pacedCourse(courseOf(route, rig, trip, commodity, halts.stays, uncovered), pace);
    const course = commodity === 'fuel' ? fuelCourse(even, plan) : { ...even, washingStopsM: washing.stopsM };
    const start = startLevel(rig, trip, commodity);
    cautions.push(...start.cautions, ...coverCautions(course));
    const edges = edgesOf(route, passings, commodity, ends);
    const gaps = gapsOf(course, edges, start.litres);
    const rescued = withRescues(gaps, route, points, commodity, trip.detourFactor);
    const side = { course, edges, startL: start.litres };
    return { report: reportOf(rig, commodity, cover, rescued), even, side };
  };
  const { report: fuel, even: evenFuel, side: fuelSide } = reportFor('fuel');
  const { report: water, side: waterSide } = reportFor('water');
  const { litresPerDay, reserve } = rig.water;
  cautions.push(...nightInsideCautions(pace, water.gaps, litresPerDay.high, reserve.shareOfNeed));
  const use = fuelUseOf({ plan, course: fuelSide.course, file: settledRig.fuel, trip, passings, points });
  cautions.push(...use.cautions);
  const waterUse = waterUseOf({
    rig,
    water: settledRig.water,
    trip,
    aboardL: startLevel(rig, trip, 'water').litres,
    passings,
  });
  cautions.push(...waterUse.cautions);
  const treatment =
    rig.treatment === null
      ? null
      : treatmentReport(rig.treatment, {
          litresPerDay: rig.water.litresPerDay.high,
          days: water.gaps.reduce((days, gap) => days + gap.days, 0),
          altitudeM: routeTopM(route),
          coldestNightC: trip.coldestNightC,
        });
  cautions.push(...(treatment?.cautions ?? []));
  const masses = massReport(settledRig, fuel, water);
  cautions.push(...(masses?.cautions ?? []));
  if (trip.onward === null) {
    const endKm = route.lengthM / 1000;
    const text =
      'How far it is from the end of the route to the next supply was not told. Say so: 0 km when it is there.';
    cautions.push({ code: 'onward-unknown', text, fromKm: endKm, toKm: endKm });
  }

  const fuelWithLoads = (load: Load): Course =>
    fullKg === null || (load.mostKg === 0 && load.along.length === 0)
      ? fuelSide.course
      : loadedCourse(evenFuel, fuelSources, fullKg, load);

  return {
    ok: true,
    value: {
      route,
      points,
      sides: { fuel: fuelSide, water: waterSide },
      fuelWithLoad: (moreKg) => fuelWithLoads(evenLoad(moreKg)),
      fuelWithLoads,
      coursesWith: (changedRig, changedTrip, load) =>
        coursesWith(
          {
            route,
            camps: halting.camps,
            uncovered: { fuel: fuelSide.course.uncovered, water: waterSide.course.uncovered },
            washingStopsM: washing.stopsM,
          },
          changedRig,
          changedTrip,
          load,
        ),
      analysis: {
        route: {
          name: route.name,
          lengthKm: route.lengthM / 1000,
          vertices: route.vertices,
          parts: route.parts,
          bbox: route.bbox,
          longestStepKm: route.longestStepM / 1000,
        },
        passings,
        fuel,
        water,
        nights,
        days: daysOf(pace, route.lengthM, fuel, water),
        fuelUse: use.fuelUse,
        waterUse,
        treatment,
        mass: masses?.mass ?? null,
        answer: answerOf({
          fuel,
          water,
          passings,
          fuelKind: rig.fuel.kind,
          onwardTold: trip.onward !== null,
        }),
        rig: settledRig,
        trip: settledTrip,
        assumptions: [
          ...rigAssumptions.map((one) => ({ ...one, path: `/rig${one.path}` })),
          ...tripAssumptions.map((one) => ({ ...one, path: `/trip${one.path}` })),
          ...use.assumptions,
          ...(trip.surfaces.length === 0 ? [] : paceAssumptions(rig, pace.surfaces)),
        ],
        cautions,
        standing: [...STANDING_CAUTIONS],
        skipped: [...input.supplies.skipped, ...located.skipped],
      },
    },
  };
}

function reportOf(rig: Rig, commodity: Commodity, cover: readonly SpanM[], gaps: Gap[]): Report {
  const store = rig[commodity];
  return {
    capacityL: store.drawableL,
    canL: store.canL,
    cansOwned: store.cansOwned,
    cover: cover.map((span) => ({ fromKm: span.fromM / 1000, toKm: span.toM / 1000 })),
    gaps,
    longest: indexOfMost(gaps, (gap) => gap.lengthKm),
    tightest: indexOfMost(gaps, (gap) => -Math.min(gap.marginL, gap.grades?.drinking.marginL ?? gap.marginL)),
  };
}

/** Index of the greatest, the first of ties. */
const indexOfMost = (gaps: readonly Gap[], figure: (gap: Gap) => number): number =>
  gaps.reduce((best, gap, index) => (figure(gap) > figure(gaps[best]!) ? index : best), 0);
