import type { Commodity, Evidence } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { hangsOn } from '../legs/hangs-on.ts';
import type { Hop, Leg } from '../legs/leg.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, endsOf } from '../side/carry-side.ts';
import type { HaltColumns, LegColumns } from './columns.ts';

/** What is aimed at, the first before the next: metres of way, cans, metres of driving, can-metres, litres. */
export type Aim = 'doubtful-m' | 'implied-m' | 'stated-m' | 'cans' | 'driving-m' | 'can-m' | 'short-fill-l';

export interface AimCost {
  readonly aim: Aim;
  readonly cost: Float64Array;
  /** What one of the cost is: so many metres, or one of the aim's own unit. */
  readonly per: number;
  /** The value that the costs give is a whole number. */
  readonly whole: boolean;
}

/** One of the cost of a way, metres: the solver does best with costs of one size with those of cans and litres (ours). */
const COST_M = 1000;

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
  readonly owned: Readonly<Record<Commodity, number>>;
  readonly halts: HaltColumns;
}

/** In the order in which they are minimised; those that cost nothing whatever is chosen left out. */
export function aimsOf({ sides }: CarryQuestion, columns: AimColumns): AimCost[] {
  const { count, owned, halts } = columns;
  const weak = WEAK.map(([evidence, aim]) =>
    wayAim(
      aim,
      costOverLegs(columns, (commodity, { hops }) => weakWay(sides[commodity], hops, evidence)),
    ),
  );
  const cans = new Float64Array(count);
  cans[owned.fuel] = 1;
  cans[owned.water] = 1;
  const driving = new Float64Array(count);
  for (const { column, halt } of halts.all) driving[column] = halt.bothWaysM / COST_M;
  const carrying = costOverLegs(columns, (_commodity, { canM }) => canM / COST_M);
  return [
    ...weak.filter(costsSomething),
    { aim: 'cans', cost: cans, per: 1, whole: true },
    ...[wayAim('driving-m', driving), wayAim('can-m', carrying)].filter(costsSomething),
  ];
}

const wayAim = (aim: Aim, cost: Float64Array): AimCost => ({ aim, cost, per: COST_M, whole: false });

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

/** The cost of the way that hangs on an evidence. */
function weakWay(side: CarrySide, hops: readonly Hop[], evidence: Evidence): number {
  return hops.reduce((sum, hop) => {
    const [from, to] = endsOf(side, hop);
    return hangsOn(side, hop) === evidence ? sum + (to.atM - from.atM) / COST_M : sum;
  }, 0);
}
