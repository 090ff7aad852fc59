import type { PlanStopAsk } from '../../contract/plan.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { LonLat } from '../geodesy/lon-lat.ts';
import type { OpeningHoursReader } from '../input/opening-hours.ts';
import type { PassedOver, Supplies } from '../input/sources.ts';
import { closedCautions } from '../notes/on-route/closed-stretches.ts';
import { confirmAgainCautions } from '../notes/on-route/confirm-again.ts';
import { withOwnPoints } from '../notes/on-route/own-passings.ts';
import { correctedFeatures } from '../notes/points/corrections.ts';
import { ownFeatures } from '../notes/points/own-points.ts';
import { survivalCautions } from '../notes/points/survival.ts';
import { withArrivals } from '../pace/arrivals.ts';
import type { PacePlan } from '../pace/pace-plan.ts';
import { judgedOnReach } from '../pace/season-on-reach.ts';
import type { Caution } from '../phrases/cautions.ts';
import { locate } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import { classify, type Judging } from '../supply/judge/rules.ts';
import { type DatedExtract, datedSupplies } from '../supply/points/dated.ts';
import { toSupplyFeatures } from '../supply/points/features.ts';
import { laidIds } from '../supply/points/laid.ts';
import type { Passing } from '../supply/points/passing.ts';
import { askOf } from '../supply/points/stop-asks.ts';
import type { SupplyFeature } from '../supply/points/supply-feature.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { found, withFurther } from '../supply/tags/reasons.ts';
import { saidBy } from '../supply/tags/said-by.ts';
import { routeTopM } from '../treatment/source/route-top.ts';
import { treatsOf } from '../treatment/source/treats-of.ts';
import { markGone } from './gone.ts';
import { laidSupplies } from './laid-supplies.ts';
import { inRouteOrder, passingsOf } from './passings-of.ts';
import type { AreaOnRoute } from './route-cover.ts';
import type { Settled } from './settle.ts';
import { type WaysKnown, watersBeside, waysKnown, withClosedGround } from './ways-known.ts';

/** What supplies are judged on: where, when, by whom. */
export interface JudgeFacts {
  readonly route: RouteLine;
  readonly supplies: Supplies;
  /** What each extract covers of the route. */
  readonly areas: readonly AreaOnRoute[];
  readonly pace: PacePlan;
  /** YYYY-MM-DD: the day for the age of tags where the trip has no departure. */
  readonly today: string;
  /** Without it no arrival is judged. */
  readonly openingHours: OpeningHoursReader | undefined;
}

/** Supplies as they are judged for a rig and a trip, and where the route comes by them. */
export interface Judged {
  readonly points: readonly SupplyPoint[];
  readonly passings: readonly Passing[];
  readonly ways: WaysKnown;
  readonly cautions: readonly Caution[];
  readonly skipped: readonly PassedOver[];
  readonly extracts: readonly DatedExtract[];
}

/** Every supply of the corridor, judged for the day on which it is reached, with the hours of arrival. */
export function judge(settled: Settled, facts: JudgeFacts): Judged {
  const { route, supplies, pace, openingHours } = facts;
  const { rig, trip } = settled;
  const { dated, features, located, placed, asMapped } = placedSupplies(settled, facts);
  const ways = waysKnown(route, supplies, features);
  const judging = judgingOf(settled, facts);
  const departing = classify(placed, judging);
  const { points, passings: reached } = judgedOnReach({
    route,
    plan: pace,
    features: placed,
    points: departing,
    passings: passingsOf(route, departing, trip.corridorM, trip.detourFactor),
    judging,
  });
  const judged = reached.map((passing) =>
    withFurther(passing, ways(passing), trip.counting[passing.commodity]),
  );
  const tagsOf = new Map(points.map((point) => [`${point.commodity} ${point.id}`, point.tags]));
  const { passings, cautions } = withArrivals(judged, {
    plan: pace,
    tagsOf: (passing) => tagsOf.get(`${passing.commodity} ${passing.id}`),
    read: openingHours,
    waitsTold: judging.waitsTold,
    waterLPerDay: rig.water.litresPerDay.high,
  });
  const own = laidSupplies({ route, pace, trip, today: facts.today });
  const all = withNotes([...passings, ...own.passings], settled, pace);
  return {
    points,
    passings: all,
    ways,
    cautions: [
      ...dated.cautions,
      ...cautions,
      ...own.cautions,
      ...noteCautions(settled, facts, { features: asMapped, passings: all }),
    ],
    skipped: located.skipped,
    extracts: dated.extracts,
  };
}

/** All that may be a supply at its place, as the map has it and as the user corrects it. */
function placedSupplies({ trip }: Settled, facts: JudgeFacts) {
  const { route, supplies, today } = facts;
  const dated = datedSupplies(supplies, trip.extracts, today);
  const features = markGone(dated.features, dated.extracts, facts);
  const located = toSupplyFeatures([...features, ...ownFeatures(trip.ownPoints)]);
  const corrected = correctedFeatures(located.features, trip.corrections);
  const waters = watersBeside(route, supplies.surroundings);
  const placed = withClosedGround([...corrected, ...waters], supplies.surroundings);
  return { dated, features, located, placed, asMapped: [...located.features, ...waters] };
}

/** What became of the objects of which something is noted, what is to be confirmed again, and stretches noted as closed. */
function noteCautions(
  { trip, tripFile }: Settled,
  { route, pace }: JudgeFacts,
  { features, passings }: { features: readonly SupplyFeature[]; passings: readonly Passing[] },
): Caution[] {
  const isOnRoute = ({ lon, lat }: LonLat) => locate(route, lon, lat).offM <= trip.corridorM;
  const survival = survivalCautions(tripFile, { features, laid: laidIds(trip.laid), isOnRoute });
  return [
    ...survival,
    ...confirmAgainCautions(passings),
    ...closedCautions(trip.closed, route.lengthM, pace),
  ];
}

/** Passings in route order, as the user's own points and what is told of single stops make them. */
function withNotes(passings: readonly Passing[], { trip, tripFile }: Settled, pace: PacePlan): Passing[] {
  const asks = tripFile.plan?.stops ?? [];
  return withOwnPoints(passings, { points: trip.ownPoints, pace, counting: trip.counting })
    .sort(inRouteOrder)
    .map((passing) => withLitres(passing, asks, trip.counting));
}

/** With no more than the user says that there is. */
function withLitres(
  passing: Passing,
  asks: readonly PlanStopAsk[],
  counting: Settled['trip']['counting'],
): Passing {
  const ask = askOf(asks, passing);
  const litres = ask?.mostLitres?.[passing.commodity];
  if (litres === undefined) return passing;
  const limited = { ...passing, mostL: Math.min(litres, passing.mostL ?? litres) };
  if (ask?.on === undefined) return limited;
  const note = found('litres-told', { on: ask.on, ...saidBy(ask), litres });
  return withFurther(limited, [note], counting[passing.commodity]);
}

/** Stops of which the user says how long one waits there. */
const waitsTold = (stops: readonly PlanStopAsk[]): ReadonlySet<string> =>
  new Set(stops.filter(({ waitHours }) => waitHours !== undefined).map(({ id }) => id));

/** Signs for heavy vehicles mean those over 3.5 t (OSM wiki, Key:hgv). */
const HEAVY_KG = 3500;
/** The most that the rig may weigh, else what it weighs empty; 0 where neither is told. */
const massToldKg = ({ vehicle }: RigFile): number => vehicle?.permitted?.totalKg ?? vehicle?.kerbKg ?? 0;

function judgingOf(
  { rig, rigFile, trip, tripFile }: Settled,
  { route, today, openingHours }: JudgeFacts,
): Judging {
  return {
    fuelKind: rig.fuel.kind,
    engine: rig.fuel.model.engine,
    ropeAndBucket: rig.ropeAndBucket,
    isHeavy: massToldKg(rigFile) > HEAVY_KG,
    counting: trip.counting,
    on: trip.departure,
    today,
    confirmations: trip.confirmations,
    readHours: openingHours,
    waitsTold: waitsTold(tripFile.plan?.stops ?? []),
    treats: treatsOf({
      line: rig.treatment,
      notes: trip.waterNotes,
      on: trip.departure ?? today,
      altitudeM: routeTopM(route),
      tankL: rig.water.drawableL,
      ropeAndBucket: rig.ropeAndBucket,
      drunkLPerDay: (rig.water.grades?.drinkingPerDay ?? rig.water.litresPerDay).high,
    }),
  };
}
