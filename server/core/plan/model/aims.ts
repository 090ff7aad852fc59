import type { Commodity, Evidence } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { hangsOn } from '../legs/hangs-on.ts';
import type { Hop, Leg } from '../legs/leg.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, edgeAt, endsOf } from '../side/carry-side.ts';
import { fillingM, hoursPerOffM } from '../side/lost-time.ts';
import type { LegColumns } from './columns.ts';
import { COST_M, type StopColumns } from './stop-columns.ts';

/** What is aimed at, the first before the next: metres of way, cans beyond those owned, hours lost, metres of driving, can-metres, metres that the tightest leg still bears, litres. */
export type Aim =
  | 'doubtful-m'
  | 'implied-m'
  | 'stated-m'
  | 'cans-to-get'
  | 'lost-h'
  | 'driving-m'
  | 'can-m'
  | 'least-margin-m'
  | 'short-fill-l';

export interface AimCost {
  readonly aim: Aim;
  readonly cost: Float64Array;
  /** What one of the cost is: so many metres, or one of the aim's own unit. */
  readonly per: number;
  /** The value that the costs give is a whole number. */
  readonly whole: boolean;
}

/** Evidence that a leg may hang on, weakest first, with the aim that counts its metres. */
const WEAK: readonly [Evidence, Aim][] = [
  ['doubtful', 'doubtful-m'],
  ['implied', 'implied-m'],
  ['stated', 'stated-m'],
];

/** The columns of a model that aims are counted by. */
interface AimColumns {
  /** Of all the model. */
  readonly count: number;
  readonly legs: LegColumns;
  /** Of cans that are still to be got. */
  readonly toGet: readonly number[];
  readonly stops: StopColumns;
}

/** In the order in which they are minimised; those that cost nothing whatever is chosen left out. */
export function aimsOf({ sides }: CarryQuestion, columns: AimColumns): AimCost[] {
  const { count, toGet, stops } = columns;
  const weak = WEAK.map(([evidence, aim]) =>
    wayAim(
      aim,
      costOverLegs(columns, (commodity, { hops }) => weakWay(sides[commodity], hops, evidence)),
    ),
  );
  const cans = new Float64Array(count);
  for (const column of toGet) cans[column] = 1;
  const lost = costOverLegs(columns, (commodity, { hops }) => fillingCost(sides[commodity], hops));
  for (const column of stops.lost) lost[column] = 1;
  const driving = new Float64Array(count);
  for (const column of stops.driving) driving[column] = 1;
  const carrying = costOverLegs(columns, (_commodity, { canM }) => canM / COST_M);
  return [
    ...weak.filter(costsSomething),
    { aim: 'cans-to-get', cost: cans, per: 1, whole: true },
    ...[lostAim(sides.fuel, lost), wayAim('driving-m', driving), wayAim('can-m', carrying)].filter(
      costsSomething,
    ),
  ];
}

const wayAim = (aim: Aim, cost: Float64Array): AimCost => ({ aim, cost, per: COST_M, whole: false });

/** Time is told as the way off the route that takes as long. */
const lostAim = (side: CarrySide, cost: Float64Array): AimCost => ({
  aim: 'lost-h',
  cost,
  per: COST_M * hoursPerOffM(side),
  whole: false,
});

const costsSomething = ({ cost }: AimCost): boolean => cost.some((value) => value !== 0);

function costOverLegs(
  { count, legs }: AimColumns,
  of: (commodity: Commodity, leg: Leg) => number,
): Float64Array {
  const cost = new Float64Array(count);
  for (const commodity of COMMODITIES)
    for (const { leg, column } of legs[commodity]) cost[column] = of(commodity, leg);
  return cost;
}

/** The cost of filling where each hop begins. */
const fillingCost = (side: CarrySide, hops: readonly Hop[]): number =>
  hops.reduce((sum, { from, filledL }) => sum + fillingM(side, edgeAt(side, from), filledL) / COST_M, 0);

/** The cost of the way that hangs on an evidence. */
function weakWay(side: CarrySide, hops: readonly Hop[], evidence: Evidence): number {
  return hops.reduce((sum, hop) => {
    const [from, to] = endsOf(side, hop);
    return hangsOn(side, hop) === evidence ? sum + (to.atM - from.atM) / COST_M : sum;
  }, 0);
}
