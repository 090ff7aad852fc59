import type { Commodity } from '../../../contract/common.ts';
import { pairsOf } from '../../lists/pairs.ts';
import { type DrivenLegs, drive } from '../drive/drive.ts';
import type { DrivenPlan } from '../drive/driven-plan.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { questionOf } from '../question/question-of.ts';
import { planEdge } from '../side/plan-edge.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import { type DepotPlace, type DepotRule, depotPlaces, wholeCans } from './depot-places.ts';
import { isOver, planWith, type WaysOutContext } from './try-change.ts';
import { type Depot, WAY_OUT, type WayOut } from './way-out.ts';

/** Which is tried first: one place to drive to, then the latest, then what leaves the way to all supplies of the other. */
const PLACE_RULES: readonly Omit<DepotRule, 'nearEnd'>[] = [
  { together: true, allHalts: false },
  { together: false, allHalts: false },
  { together: true, allHalts: true },
  { together: false, allHalts: true },
];

/** Near the end of the route only where nothing else helps. */
const RULES: readonly DepotRule[] = [false, true].flatMap((nearEnd) =>
  PLACE_RULES.map((rule) => ({ ...rule, nearEnd })),
);

/**
 * Supplies laid beforehand, one in each broken stretch in turn: as late as the reserve lets the vehicle come to it, in
 * whole cans.
 */
export function depotWay(context: WaysOutContext): WayOut[] {
  const { question } = questionOf(context.reckoned);
  for (const rule of RULES) {
    if (isOver(context)) return [];
    const { nearEnd } = rule;
    const separate = depotPlaces(question, { together: false, allHalts: false, nearEnd });
    if (separate !== null && separate.length === 0) return [];
    const places = depotPlaces(question, rule);
    // One place for both is no help where it takes more depots.
    if (places === null || (rule.together && separate !== null && places.length > separate.length)) continue;
    const way = wayOver(context, question, places);
    if (way !== null) return [way];
  }
  return [];
}

/** A depot with what is laid there. */
interface Laying extends DepotPlace {
  readonly cans: number;
}

/** The way out that the depots make, planned with no more in each than is laid; null where they make none. */
function wayOver(
  context: WaysOutContext,
  question: CarryQuestion,
  places: readonly DepotPlace[],
): WayOut | null {
  const least = places.map((place): Laying => ({ ...place, cans: place.leastCans }));
  const laid = planOver(context, question, least) ?? asFilled(context, question, places);
  if (laid === null) return null;
  const used = usedOf(laid);
  const depots = used.map((laying) => depotOf(question, laying));
  const [first] = depots;
  if (first === undefined) return null;
  const facts = {
    depots: used.map((laying) => ({
      ...depotOf(question, laying),
      latestFrom: laying.latest ? planEdge(laying.from) : null,
    })),
  };
  return {
    ...WAY_OUT,
    kind: 'depot',
    text: { phrase: 'with-depots', facts },
    cans: laid.plan.choice.cans,
    amount: first.litres,
    unit: 'l',
    atM: first.atM,
    commodity: first.commodity,
    depots,
  };
}

interface LaidPlan {
  readonly plan: DrivenPlan;
  readonly layings: readonly Laying[];
}

/** The depots that the plan stops at, in route order. The latest place from one that it passes by is the latest from nowhere. */
function usedOf({ plan, layings }: LaidPlan): Laying[] {
  const isUsed = (laying: Laying): boolean => fillingAt(plan.legs, laying) !== null;
  const passedBy = layings.filter((laying) => !isUsed(laying));
  return layings
    .filter(isUsed)
    .map((laying) => ({
      ...laying,
      latest:
        laying.latest &&
        !passedBy.some(
          ({ commodity, edge }) => commodity === laying.commodity && isSamePlace(edge, laying.from),
        ),
    }))
    .sort((a, b) => a.edge.atM - b.edge.atM);
}

/** The plan with so many cans laid at each place and no more than they hold to be had there. */
function planOver(
  context: WaysOutContext,
  { sides }: CarryQuestion,
  layings: readonly Laying[],
): LaidPlan | null {
  const edges = (of: Commodity): SupplyEdge[] =>
    layings
      .filter(({ commodity }) => commodity === of)
      .map(({ edge, cans }) => ({
        ...edge,
        terms: { mostL: cans * sides[of].canL, fillsCans: true, daysPerLitre: 0 },
      }));
  const plan = planWith(context.reckoned, context, {
    moreEdges: { fuel: edges('fuel'), water: edges('water') },
  });
  return plan === null ? null : { plan, layings };
}

/** Where the least that each stretch asks for will not do: as much as a plan takes that may fill all it has there. */
function asFilled(
  context: WaysOutContext,
  question: CarryQuestion,
  places: readonly DepotPlace[],
): LaidPlan | null {
  const edges = (of: Commodity) => places.filter(({ commodity }) => commodity === of).map(({ edge }) => edge);
  const free = planWith(context.reckoned, context, {
    moreEdges: { fuel: edges('fuel'), water: edges('water') },
  });
  if (free === null) return null;
  const legs = drive(free.heaviest, free.choice);
  const layings = places.map((place): Laying => {
    const filling = fillingAt(legs, place);
    if (filling === null) return { ...place, cans: place.leastCans };
    const { canL } = question.sides[place.commodity];
    // A litre less at the depot is a litre less above the reserve at the next supply, and no more.
    return { ...place, cans: wholeCans(filling.fillL - filling.marginL, canL) };
  });
  return planOver(context, question, layings);
}

/** What is filled in at a place, and what is left above the reserve at the next supply; null where it is passed by. */
function fillingAt(
  legs: DrivenLegs,
  { commodity, edge }: DepotPlace,
): { fillL: number; marginL: number } | null {
  const halt = pairsOf(legs[commodity]).find(([, { from }]) => isSamePlace(from, edge));
  if (halt === undefined) return null;
  const [arriving, leaving] = halt;
  return { fillL: leaving.figures.departL - arriving.figures.arriveL, marginL: leaving.marginL };
}

const depotOf = ({ sides }: CarryQuestion, { commodity, edge, cans, latest }: Laying): Depot => ({
  atM: edge.atM,
  commodity,
  cans,
  litres: cans * sides[commodity].canL,
  latest,
});
