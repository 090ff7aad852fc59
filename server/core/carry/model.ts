import type { Commodity, Evidence } from '../../contract/common.ts';
import { reachesBack, reachesOn } from './failure.ts';
import { type Leg, weakestEnd } from './leg.ts';
import { legsOf } from './legs.ts';
import { addMassRows } from './mass-rows.ts';
import { type Mip, MipBuilder } from './mip.ts';
import {
  type CarryProblem,
  type CarrySide,
  COMMODITIES,
  type Halt,
  haltsBetween,
  haltsOf,
  otherOf,
  placeKey,
} from './problem.ts';

/** What is aimed at, the first before the next. */
export type Aim =
  | 'doubtful-km'
  | 'implied-km'
  | 'stated-km'
  | 'cans'
  | 'driving-km'
  | 'can-km'
  | 'short-fill-l';

export interface AimedCost {
  aim: Aim;
  cost: Float64Array;
  /** The value that the costs give is a whole number. */
  whole: boolean;
}

/** The model of a carry plan, and which of its columns mean what. */
export interface CarryModel {
  mip: Mip;
  legs: Record<Commodity, { leg: Leg; column: number }[]>;
  owned: Record<Commodity, number>;
  /** In the order in which they are minimised. */
  aims: AimedCost[];
}

/**
 * A plan is a chain of legs for each commodity from start to end. Rows: the chains hang together; a halt off the route is
 * made when either commodity uses it, and each leg of the other bears it; as many cans as any stretch has full are owned;
 * on every stretch the permitted masses hold with every can of the leg full and the tanks left as short as the leg bears;
 * how short they need be is settled afterwards (short-fill.ts).
 */
export function carryModel(problem: CarryProblem): CarryModel {
  const builder = new MipBuilder();
  const { sides } = problem;
  const halts = { fuel: haltsOf(sides.fuel), water: haltsOf(sides.water) };
  const owned = {
    fuel: builder.column(0, sides.fuel.mostCans, true),
    water: builder.column(0, sides.water.mostCans, true),
  };
  const made = new Map<string, { column: number; bothWaysM: number }>();
  // Made or not: no need to ask for whole numbers, since it costs to make one and the legs that need it are whole.
  for (const halt of [...halts.fuel, ...halts.water]) {
    if (!made.has(halt.key))
      made.set(halt.key, { column: builder.column(0, 1, false), bothWaysM: halt.bothWaysM });
  }

  const legs: CarryModel['legs'] = { fuel: [], water: [] };
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const foreign = halts[otherOf(commodity)];
    legs[commodity] = legsOf(side, foreign, problem.oneFailure === null ? undefined : upTo(side)).map(
      (leg) => ({
        leg,
        column: builder.column(0, 1, true),
      }),
    );
    const of = legs[commodity];
    side.edges.forEach((edge, index) => {
      const into = of.filter(({ leg }) => leg.to === index);
      const out = of.filter(({ leg }) => leg.from === index);
      const one = (column: number): [number, number] => [column, 1];
      if (index === 0)
        builder.row(
          1,
          1,
          out.map(({ column }) => one(column)),
        );
      else if (index === side.edges.length - 1)
        builder.row(
          1,
          1,
          into.map(({ column }) => one(column)),
        );
      else {
        builder.row(0, 0, [
          ...into.map(({ column }) => one(column)),
          ...out.map(({ column }): [number, number] => [column, -1]),
        ]);
        const halt = made.get(placeKey(edge));
        if (halt !== undefined && edge.detourM > 0)
          builder.row(0, 1, [[halt.column, 1], ...into.map(({ column }): [number, number] => [column, -1])]);
      }
    });
    if (problem.oneFailure !== null) addFailureRows(builder, side, foreign, of, problem.oneFailure);
    for (const { leg, column } of of) {
      const between = haltsBetween(foreign, side.edges[leg.from]!, side.edges[leg.to]!);
      const allM = between.reduce((sum, halt) => sum + halt.bothWaysM, 0);
      if (allM <= leg.spareM) continue;
      builder.row(Number.NEGATIVE_INFINITY, allM, [
        ...between.map(({ key, bothWaysM }): [number, number] => [made.get(key)!.column, bothWaysM]),
        [column, allM - leg.spareM],
      ]);
    }
    for (let stretch = 0; stretch + 1 < side.edges.length; stretch += 1) {
      const full = of.filter(({ leg }) => leg.from <= stretch && leg.to > stretch && leg.cans > 0);
      if (full.length === 0) continue;
      builder.row(0, Number.POSITIVE_INFINITY, [
        [owned[commodity], 1],
        ...full.map(({ leg, column }): [number, number] => [column, -leg.cans]),
      ]);
    }
  }
  if (problem.room !== null) addMassRows(builder, problem, problem.room, legs, owned);
  return { mip: builder, legs, owned, aims: aimsOf(builder, problem, legs, owned, made) };
}

/** Against a failure a leg may carry any number of cans. */
const upTo =
  ({ mostCans }: CarrySide) =>
  (_from: number, _to: number, fewest: number): number[] =>
    Array.from({ length: mostCans - fewest + 1 }, (_, index) => fewest + index);

/**
 * A leg whose end may fail is taken only together with a leg on from there to where it still reaches, unless it bears the
 * way back.
 */
function addFailureRows(
  builder: MipBuilder,
  side: CarrySide,
  foreign: readonly Halt[],
  legs: readonly { leg: Leg; column: number }[],
  { spendReserve }: NonNullable<CarryProblem['oneFailure']>,
): void {
  for (const { leg, column } of legs) {
    if (leg.to === side.edges.length - 1 || reachesBack(side, leg, foreign, spendReserve)) continue;
    const reached = new Map<number, boolean>();
    const on = legs.filter((next) => {
      if (next.leg.from !== leg.to) return false;
      const known = reached.get(next.leg.to);
      if (known !== undefined) return known;
      const reaches = reachesOn(side, leg, next.leg.to, foreign, spendReserve);
      reached.set(next.leg.to, reaches);
      return reaches;
    });
    builder.row(Number.NEGATIVE_INFINITY, 0, [
      [column, 1],
      ...on.map((next): [number, number] => [next.column, -1]),
    ]);
  }
}

/** Evidence that a leg may hang on, weakest first, with the aim that counts its kilometres. */
const WEAK: [Evidence, Aim][] = [
  ['doubtful', 'doubtful-km'],
  ['implied', 'implied-km'],
  ['stated', 'stated-km'],
];

function aimsOf(
  { columns }: Mip,
  { sides }: CarryProblem,
  legs: CarryModel['legs'],
  owned: CarryModel['owned'],
  made: ReadonlyMap<string, { column: number; bothWaysM: number }>,
): AimedCost[] {
  const fresh = () => new Float64Array(columns.length);
  const aims: AimedCost[] = [];
  const overLegs = (aim: Aim, of: (commodity: Commodity, leg: Leg) => number) => {
    const cost = fresh();
    for (const commodity of COMMODITIES)
      for (const { leg, column } of legs[commodity]) cost[column] = of(commodity, leg);
    if (cost.some((value) => value !== 0)) aims.push({ aim, cost, whole: false });
  };
  for (const [evidence, aim] of WEAK) {
    overLegs(aim, (commodity, { from, to }) => {
      const { edges } = sides[commodity];
      // What tags state is good enough, unless the user went and confirmed others.
      if (evidence === 'stated' && !edges.some((edge) => edge.evidence === 'confirmed')) return 0;
      const weak = weakestEnd(edges[from]!, edges[to]!) === evidence;
      return weak ? (edges[to]!.atM - edges[from]!.atM) / 1000 : 0;
    });
  }
  const cans = fresh();
  cans[owned.fuel] = 1;
  cans[owned.water] = 1;
  aims.push({ aim: 'cans', cost: cans, whole: true });
  const driving = fresh();
  for (const { column, bothWaysM } of made.values()) driving[column] = bothWaysM / 1000;
  if (made.size > 0) aims.push({ aim: 'driving-km', cost: driving, whole: false });
  overLegs('can-km', (_commodity, { canM }) => canM / 1000);
  return aims;
}
