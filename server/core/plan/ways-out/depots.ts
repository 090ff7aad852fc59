import type { Commodity } from '../../../contract/common.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { reckon } from '../../gaps/reckon.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type Driven, drive } from '../drive/drive.ts';
import type { HeldPlan } from '../drive/drive-actual.ts';
import { cansAllowed, fewestCans, leaving, legNeed, tanksL } from '../question/leg.ts';
import { planEdge } from '../question/plan-edge.ts';
import { type CarryProblem, type CarrySide, otherOf, type SupplyEdge } from '../question/problem.ts';
import { problemOf } from '../question/problem-of.ts';
import { brokenStretches } from './breaks.ts';
import { heldWith, type WaysOutContext, withEdges } from './try-change.ts';
import { type Depot, WAY_OUT, type WayOut } from './way-out.ts';

/** The latest place is sought to this, metres. */
const STEP_M = 100;
/** More depots than this nobody should be told to lay (ours). */
const MOST_DEPOTS = 4;
/** Float noise, litres. */
const NOISE_L = 1e-9;

/** A depot of one commodity; those of both at one place have one id. */
interface Place {
  commodity: Commodity;
  edge: EdgeM;
  /** What it is the latest place from. */
  from: EdgeM;
  latest: boolean;
  /** What the stretch that is broken asks for at the least. */
  leastCans: number;
}

/** How places for depots are chosen. */
interface Choosing {
  /** Where both commodities are missing at one place, both are laid there. */
  together: boolean;
  /** All halts of the other commodity may be made on the way there. */
  allHalts: boolean;
}

/** Which is tried first: one place to drive to, then the latest, then what leaves the way to all supplies of the other. */
const TRIED: readonly Choosing[] = [
  { together: true, allHalts: false },
  { together: false, allHalts: false },
  { together: true, allHalts: true },
  { together: false, allHalts: true },
];

/**
 * Supplies laid beforehand, one in each broken stretch in turn: as late as the reserve lets the vehicle come to it, in
 * whole cans.
 */
export function depotWaysOut(context: WaysOutContext): WayOut[] {
  const { problem } = problemOf(context.reckoned);
  const separate = depotsFor(problem, { together: false, allHalts: false });
  if (separate !== null && separate.length === 0) return [];
  for (const choosing of TRIED) {
    if (context.clock() >= context.until) return [];
    const places = depotsFor(problem, choosing);
    // One place for both is no help where it takes more depots.
    if (places === null || (choosing.together && separate !== null && places.length > separate.length))
      continue;
    const way = wayWith(context, problem, places);
    if (way !== null) return [way];
  }
  return [];
}

/** A depot for each broken stretch, gone on from there as supplied; null where so many as may be are not enough. */
function depotsFor(problem: CarryProblem, choosing: Choosing): Place[] | null {
  const places: Place[] = [];
  const sides = { ...problem.sides };
  for (;;) {
    const next = COMMODITIES.flatMap((commodity) => {
      const [broken] = brokenStretches(sides[commodity]);
      return broken === undefined ? [] : [{ commodity, broken }];
    });
    if (next.length === 0) return places;
    const found: Place[] = [];
    for (const { commodity, broken } of next) {
      const side = sides[commodity];
      const foreign = choosing.allHalts ? sides[otherOf(commodity)].edges : [];
      const atM = latestPlace(side, broken.from, broken.to, foreign);
      if (atM === null) return null;
      const from = side.edges[broken.from]!;
      const edge = depotAt(atM);
      const leastCans = leastCansAt(side, broken.from, edge, side.edges[broken.to]!);
      found.push({ commodity, edge, from, latest: true, leastCans });
    }
    const [first, second] = found;
    const laid = choosing.together && second !== undefined ? atOnePlace(first!, second) : found;
    places.push(...laid);
    if (places.length > MOST_DEPOTS) return null;
    for (const { commodity, edge } of laid) sides[commodity] = withEdges(sides[commodity], [edge]);
  }
}

/** Both at the earlier place, where the other stretch is on the way there; else the earlier alone, and then looked again. */
function atOnePlace(a: Place, b: Place): Place[] {
  const [early, late] = a.edge.atM <= b.edge.atM ? [a, b] : [b, a];
  if (late.from.atM >= early.edge.atM) return [early];
  return [early, { ...late, edge: early.edge, latest: late.edge.atM === early.edge.atM }];
}

const depotAt = (atM: number): EdgeM => ({
  kind: 'passing',
  id: `depot/${atM}`,
  name: 'the depot',
  atM,
  detourM: 0,
  evidence: 'confirmed',
});

/** The way out that the depots make, planned with no more in each than is laid; null where they make none. */
function wayWith(context: WaysOutContext, problem: CarryProblem, places: readonly Place[]): WayOut | null {
  const least = places.map(({ leastCans }) => leastCans);
  const held = heldWithLaid(context, problem, places, least) ?? asFilled(context, problem, places);
  if (held === null) return null;
  const depots = places
    .map((place, index) => ({ place, cans: held.cans[index]! }))
    .filter(({ place }) => fillingAt(held.plan.driven, place) !== null)
    .sort((a, b) => a.place.edge.atM - b.place.edge.atM)
    .map(({ place, cans }) => ({ depot: laidAt(problem, place, cans), from: place.from }));
  const [first] = depots;
  if (first === undefined) return null;
  const { atM, commodity, litres } = first.depot;
  const facts = {
    depots: depots.map(({ depot, from }) => ({ ...depot, latestFrom: depot.latest ? planEdge(from) : null })),
  };
  return {
    ...WAY_OUT,
    kind: 'depot',
    text: { phrase: 'with-depots', facts },
    cans: held.plan.choice.cans,
    amount: litres,
    unit: 'l',
    atM,
    commodity,
    depots: depots.map(({ depot }) => depot),
  };
}

interface HeldLaid {
  plan: HeldPlan;
  /** Laid at each place. */
  cans: readonly number[];
}

/** The plan with so many cans laid at each place and no more than they hold to be had there. */
function heldWithLaid(
  context: WaysOutContext,
  { sides }: CarryProblem,
  places: readonly Place[],
  cans: readonly number[],
): HeldLaid | null {
  const edges = (of: Commodity): SupplyEdge[] =>
    places.flatMap(({ commodity, edge }, index): SupplyEdge[] => {
      if (commodity !== of) return [];
      const mostL = cans[index]! * sides[of].canL;
      return [{ ...edge, terms: { mostL, fillsCans: true, daysPerLitre: 0 } }];
    });
  const plan = heldWith(context.reckoned, context, {
    moreEdges: { fuel: edges('fuel'), water: edges('water') },
  });
  return plan === null ? null : { plan, cans };
}

/** Where the least that each stretch asks for will not do: as much as a plan takes that may fill all it has there. */
function asFilled(context: WaysOutContext, problem: CarryProblem, places: readonly Place[]): HeldLaid | null {
  const edges = (of: Commodity) => places.filter(({ commodity }) => commodity === of).map(({ edge }) => edge);
  const free = heldWith(context.reckoned, context, {
    moreEdges: { fuel: edges('fuel'), water: edges('water') },
  });
  if (free === null) return null;
  const driven = drive(free.heaviest, free.choice);
  const cans = places.map((place) => {
    const filling = fillingAt(driven, place);
    if (filling === null) return place.leastCans;
    // A litre less at the depot is a litre less above the reserve at the next supply, and no more.
    return wholeCans(filling.fillL - filling.marginL, problem.sides[place.commodity].canL);
  });
  return heldWithLaid(context, problem, places, cans);
}

const wholeCans = (litres: number, canL: number): number => Math.max(1, Math.ceil(litres / canL - NOISE_L));

/** What is filled in at a place, and what is left above the reserve at the next supply; null where it is passed by. */
function fillingAt(driven: Driven, { commodity, edge }: Place): { fillL: number; marginL: number } | null {
  const legs = driven[commodity];
  const out = legs.findIndex(({ from }) => from.id === edge.id);
  if (out < 1) return null;
  const fillL = legs[out]!.figures.departL - legs[out - 1]!.figures.arriveL;
  return { fillL, marginL: legs[out]!.marginL };
}

function laidAt({ sides }: CarryProblem, { commodity, edge, latest }: Place, cans: number): Depot {
  return { atM: edge.atM, commodity, cans, litres: cans * sides[commodity].canL, latest };
}

/**
 * The fewest cans with which the next supply is reached from a depot, come to with what the way to it leaves; no more
 * than can be taken aboard there.
 */
function leastCansAt(side: CarrySide, from: number, depot: EdgeM, next: EdgeM): number {
  const { course, canL, mostCans } = side;
  const departL = tanksL(side, from) + cansAllowed(side, from) * canL;
  const { arriveL } = reckon(course, leaving(side.edges[from]!, departL), depot, departL);
  const { marginL, grades } = reckon(course, depot, next, arriveL);
  const roomL = course.rig[course.commodity].drawableL + mostCans * canL - arriveL;
  return wholeCans(Math.min(roomL, -Math.min(marginL, grades?.drinking.marginL ?? marginL)), canL);
}

/**
 * Metres along to the last place between two edges that the first can be left for with the reserve intact on arrival,
 * were all detours to `foreign` on the way made.
 */
function latestPlace(side: CarrySide, from: number, to: number, foreign: readonly EdgeM[]): number | null {
  const { edges, mostCans } = side;
  const fromM = edges[from]!.atM;
  const reaches = (steps: number): boolean => {
    const atM = fromM + steps * STEP_M;
    const trial = { ...side, edges: [...edges, depotAt(atM)] };
    const viaM = foreign
      .filter((edge) => edge.kind === 'passing' && edge.atM > fromM && edge.atM <= atM)
      .reduce((sum, { detourM }) => sum + 2 * detourM, 0);
    return fewestCans(side, from, legNeed(trial, from, edges.length), viaM, mostCans) !== null;
  };
  let low = 1;
  let high = Math.floor((edges[to]!.atM - fromM) / STEP_M) - 1;
  if (high < 1 || !reaches(1)) return null;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (reaches(middle)) low = middle;
    else high = middle - 1;
  }
  return fromM + low * STEP_M;
}
