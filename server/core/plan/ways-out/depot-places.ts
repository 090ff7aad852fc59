import type { Commodity } from '../../../contract/common.ts';
import type { Edge } from '../../gaps/course/course.ts';
import { reckon } from '../../gaps/reckon.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { fewestCans } from '../legs/bearable.ts';
import { leaving } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import {
  type CarrySide,
  type CarrySides,
  cansAllowed,
  drawableOf,
  edgeAt,
  endsOf,
} from '../side/carry-side.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { type BrokenStretch, brokenStretches } from './broken-stretches.ts';
import { withEdges } from './try-change.ts';

/** The latest place is sought to this, metres. */
const STEP_M = 100;
/** More depots than this nobody should be told to lay (ours). */
const MOST_DEPOTS = 4;
/** A day's walk of somebody in health with water to carry, metres (ours). */
const DAYS_WALK_M = 25_000;
/** Float noise, litres. */
const NOISE_L = 1e-9;

/** A place for a depot of one commodity. */
export interface DepotPlace {
  readonly commodity: Commodity;
  readonly edge: Edge;
  /** What it is the latest place from. */
  readonly from: SupplyEdge;
  readonly latest: boolean;
  /** What the stretch that is broken asks for at the least. */
  readonly leastCans: number;
}

/** How places for depots are chosen. */
export interface DepotRule {
  /** Where both commodities are missing at one place, both are laid there. */
  readonly together: boolean;
  /** All halts of the other commodity may be made on the way there. */
  readonly allHalts: boolean;
  /** It may lie within a day's walk of the end of the route, where nobody needs it any more. */
  readonly nearEnd: boolean;
}

/** A depot for each broken stretch, gone on from there as supplied; null where so many as may be are not enough. */
export function depotPlaces(question: CarryQuestion, rule: DepotRule): DepotPlace[] | null {
  const places: DepotPlace[] = [];
  let { sides } = question;
  for (;;) {
    const next = nextPlaces(sides, rule);
    if (next === null) return null;
    if (next.length === 0) return places;
    places.push(...next);
    if (places.length > MOST_DEPOTS) return null;
    sides = withDepots(sides, next);
  }
}

/** One in the first broken stretch of each commodity; null where one cannot be reached at all. */
function nextPlaces(sides: CarrySides, rule: DepotRule): DepotPlace[] | null {
  const latest: DepotPlace[] = [];
  for (const commodity of COMMODITIES) {
    const [stretch] = brokenStretches(sides[commodity]);
    if (stretch === undefined) continue;
    // A depot is laid in cans.
    if (!sides[commodity].course.rig[commodity].takesCans) return null;
    const foreign = rule.allHalts ? sides[otherOf(commodity)].edges : [];
    const place = latestPlace(sides[commodity], stretch, { foreign, nearEnd: rule.nearEnd });
    if (place === null) return null;
    latest.push(place);
  }
  return rule.together ? atOnePlace(latest) : latest;
}

const withDepots = (sides: CarrySides, places: readonly DepotPlace[]): CarrySides =>
  byCommodity((commodity) => {
    const own = places.filter((place) => place.commodity === commodity);
    return withEdges(
      sides[commodity],
      own.map(({ edge }) => edge),
    );
  });

/** Both at the earlier place, where the other stretch is on the way there; else the earlier alone, and then looked again. */
function atOnePlace([a, b, ...more]: readonly DepotPlace[]): DepotPlace[] {
  if (a === undefined || b === undefined) return [a, b, ...more].filter((place) => place !== undefined);
  const [early, late] = a.edge.atM <= b.edge.atM ? [a, b] : [b, a];
  if (late.from.atM >= early.edge.atM) return [early];
  return [early, { ...late, edge: early.edge, latest: late.edge.atM === early.edge.atM }];
}

const depotAt = (atM: number): Edge => ({
  kind: 'passing',
  id: 'depot',
  name: 'the depot',
  atM,
  detourM: 0,
  evidence: 'confirmed',
});

/**
 * The last place of a broken stretch that its beginning can be left for with the reserve intact on arrival, were all
 * detours to `foreign` on the way made; not near the end of the route, unless it may lie there.
 */
function latestPlace(
  side: CarrySide,
  stretch: BrokenStretch,
  { foreign, nearEnd }: LatestRule,
): DepotPlace | null {
  const { commodity } = side;
  const [from, to] = endsOf(side, stretch);
  const placeAfter = (steps: number): Edge => depotAt(from.atM + steps * STEP_M);
  const reaches = (steps: number) => isReached(side, stretch.from, placeAfter(steps), foreign);
  const keepsOffM = to.kind === 'end' && !nearEnd ? DAYS_WALK_M : 0;
  const most = Math.floor((to.atM - keepsOffM - from.atM) / STEP_M) - 1;
  const steps = mostSteps(most, reaches);
  if (steps === null) return null;
  const edge = placeAfter(steps);
  const latest = steps < most || keepsOffM === 0;
  return { commodity, edge, from, latest, leastCans: leastCansAt(side, stretch, edge) };
}

interface LatestRule {
  readonly foreign: readonly SupplyEdge[];
  readonly nearEnd: boolean;
}

/** The most steps that reach, of one to so many; null where not even one does. The more, the farther. */
function mostSteps(most: number, reaches: (steps: number) => boolean): number | null {
  if (most < 1 || !reaches(1)) return null;
  let low = 1;
  let high = most;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (reaches(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Whether a depot is reached with as many cans as there may be. */
function isReached(side: CarrySide, from: number, depot: Edge, foreign: readonly SupplyEdge[]): boolean {
  const { atM } = edgeAt(side, from);
  const trial = { ...side, edges: [...side.edges, depot] };
  const viaM = foreign
    .filter((edge) => edge.kind === 'passing' && edge.atM > atM && edge.atM <= depot.atM)
    .reduce((sum, { detourM }) => sum + 2 * detourM, 0);
  return fewestCans(trial, { from, to: side.edges.length, viaM }) !== null;
}

/**
 * The fewest cans with which the next supply is reached from a depot, come to with what the way to it leaves; no more
 * than can be taken aboard there.
 */
function leastCansAt(side: CarrySide, stretch: BrokenStretch, depot: Edge): number {
  const { course, canL, mostCans } = side;
  const [from, next] = endsOf(side, stretch);
  const { filledL } = fullDeparture(side, stretch.from, cansAllowed(side, stretch.from));
  const { arriveL } = reckon(course, leaving(from, filledL), depot, { departL: filledL });
  const { marginL, grades } = reckon(course, depot, next, { departL: arriveL });
  const roomL = drawableOf(side) + mostCans * canL - arriveL;
  return wholeCans(Math.min(roomL, -Math.min(marginL, grades?.drinking.marginL ?? marginL)), canL);
}

/** Whole cans that hold so much, one at the least. */
export const wholeCans = (litres: number, canL: number): number =>
  Math.max(1, Math.ceil(litres / canL - NOISE_L));
