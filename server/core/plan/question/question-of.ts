import type { Commodity } from '../../../contract/common.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { metresOf } from '../../quantity/rates.ts';
import type { CarrySide } from '../side/carry-side.ts';
import { byCommodity } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { loadKg, ownedCans } from './can-kg.ts';
import { type Cans, canLimits, takenCans } from './can-limits.ts';
import type { CarryQuestion } from './carry-question.ts';
import { massRoomOf } from './mass-room.ts';
import { withTerms } from './supply-terms.ts';
import { fewerSupplies, MOST_WAYS } from './thin-out.ts';

/** What a plan is asked for beyond what rig and trip say. */
export interface QuestionChanges {
  readonly mostCans?: Cans;
  /** Aboard at the start, litres. */
  readonly startL?: Partial<Record<Commodity, number>>;
  /** Further supplies, put in their place of the route. */
  readonly moreEdges?: Partial<Record<Commodity, readonly SupplyEdge[]>>;
  /** Any one stop may fail: not so many supplies can be looked at. */
  readonly failing?: boolean;
}

/** A question, and what had to be assumed to put it. */
export interface PutQuestion {
  readonly question: CarryQuestion;
  readonly cautions: readonly Caution[];
}

/** Trips once reckoned are never changed, and are asked of again and again: their questions, by what is changed. */
const put = new WeakMap<Reckoned, Map<string, PutQuestion>>();

/** The question that rig, trip and analysis put. */
export function questionOf(reckoned: Reckoned, changes: QuestionChanges = {}): PutQuestion {
  const { moreEdges, ...others } = changes;
  if (moreEdges !== undefined) return newQuestion(reckoned, changes);
  const ofTrip = put.get(reckoned) ?? new Map<string, PutQuestion>();
  put.set(reckoned, ofTrip);
  const name = JSON.stringify(others);
  const question = ofTrip.get(name) ?? newQuestion(reckoned, changes);
  ofTrip.set(name, question);
  return question;
}

function newQuestion(reckoned: Reckoned, changes: QuestionChanges): PutQuestion {
  const { rig, trip } = reckoned.analysis;
  const limits =
    changes.mostCans === undefined
      ? canLimits(rig, trip)
      : { cans: takenCans(rig, changes.mostCans), cautions: [] };
  const fuel = sideOf(reckoned, 'fuel', limits.cans, changes);
  const water = sideOf(reckoned, 'water', limits.cans, changes);
  return {
    question: {
      sides: { fuel: fuel.side, water: water.side },
      owned: byCommodity((commodity) => ownedCans(rig, commodity)),
      room: massRoomOf(rig),
      oneFailure: null,
      suppliesLeftOut: fuel.suppliesLeftOut || water.suppliesLeftOut,
    },
    cautions: eachOnce([...limits.cautions, ...fuel.cautions, ...water.cautions]),
  };
}

interface PutSide {
  readonly side: CarrySide;
  readonly cautions: readonly Caution[];
  readonly suppliesLeftOut: boolean;
}

function sideOf(reckoned: Reckoned, commodity: Commodity, mostCans: Cans, changes: QuestionChanges): PutSide {
  const moreEdges = changes.moreEdges?.[commodity] ?? [];
  const { rig, trip } = reckoned.analysis;
  const { edges, course } = reckoned.sides[commodity];
  const startL = changes.startL?.[commodity] ?? reckoned.sides[commodity].startL;
  const supplies = withTerms(reckoned, commodity, [...edges, ...moreEdges]);
  const usable = asAsked(supplies.edges, trip).sort(inRouteOrder);
  const store = course.rig[commodity];
  const side: CarrySide = {
    commodity,
    course: commodity === 'fuel' ? reckoned.fuelWithLoad(loadKg(rig, mostCans)) : course,
    edges: usable,
    ...startWith(trip, commodity, { startL, drawableL: store.drawableL }),
    canL: store.canL,
    cansDrinkable: commodity === 'fuel' || rig.water.cans?.grade !== 'washing',
    mostCans: mostCans[commodity],
  };
  const few = fewerSupplies(
    side,
    new Set(moreEdges),
    changes.failing === true ? MOST_WAYS.failing : MOST_WAYS.plain,
  );
  if (few.withinM === null) return { side, cautions: supplies.cautions, suppliesLeftOut: false };
  const passings = usable.length - ENDS;
  const facts = { commodity, passings, lookedAt: few.edges.length - ENDS, withinM: few.withinM };
  return {
    side: { ...side, edges: few.edges, counting: side.edges },
    cautions: [...supplies.cautions, { code: 'plan-supplies-left-out', facts }],
    suppliesLeftOut: true,
  };
}

/** Without those that the plan is to pass by, and with a mark on those at which it must stop. */
function asAsked(edges: readonly SupplyEdge[], { plan = {} }: TripFile): SupplyEdge[] {
  const { passBy = [], mustStop = [], stopWithinKm } = plan;
  const [passed, wanted] = [new Set(passBy), new Set(mustStop)];
  const withinM = stopWithinKm === undefined ? -1 : metresOf(stopWithinKm);
  return edges.flatMap((edge) => {
    const { id, kind, detourM } = edge;
    if (kind !== 'passing' || id === null) return [edge];
    if (passed.has(id)) return [];
    return wanted.has(id) || detourM <= withinM ? [{ ...edge, mustStop: true, ofUser: true }] : [edge];
  });
}

/** What a side leaves the start with: full where the trip says that it is filled there; cans only where they can be. */
export function startWith(
  trip: TripFile,
  commodity: Commodity,
  { startL, drawableL }: { readonly startL: number; readonly drawableL: number },
): Pick<CarrySide, 'startL' | 'cansAtStart'> {
  const fill = trip.plan?.fillAtStart?.[commodity];
  return { startL: fill === true ? drawableL : startL, cansAtStart: fill ?? startL >= drawableL };
}

/** Start and end are no passings. */
const ENDS = 2;

/** Stops of both commodities give one caution where they are the same. */
const eachOnce = (cautions: readonly Caution[]): Caution[] => [
  ...new Map(cautions.map((caution) => [JSON.stringify(caution), caution])).values(),
];

const inRouteOrder = (a: SupplyEdge, b: SupplyEdge): number =>
  RANKS[a.kind] - RANKS[b.kind] || a.atM - b.atM || a.detourM - b.detourM || byId(a, b);

const RANKS: Record<SupplyEdge['kind'], number> = { start: 0, passing: 1, end: 2 };

/** The same plan in whatever order extracts list their objects. */
const byId = (a: SupplyEdge, b: SupplyEdge): number => {
  const [x, y] = [a.id ?? '', b.id ?? ''];
  return x < y ? -1 : x > y ? 1 : 0;
};
