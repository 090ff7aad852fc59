import type { Commodity, Evidence } from '../../contract/common.ts';
import { type Leg, weakestEnd } from './leg.ts';
import { legsOf } from './legs.ts';
import type { MassRoom } from './mass-room.ts';
import { type Mip, MipBuilder } from './mip.ts';
import { type CarryProblem, COMMODITIES, haltsBetween, haltsOf, otherOf, placeKey } from './problem.ts';
import { shortFillsOf } from './short-fill.ts';

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
  legs: Record<Commodity, { leg: Leg; column: number; shortFill: number | null }[]>;
  owned: Record<Commodity, number>;
  /** In the order in which they are minimised. */
  aims: AimedCost[];
}

/**
 * A plan is a chain of legs for each commodity from start to end. Rows: the chains hang together; a halt off the route is
 * made when either commodity uses it, and each leg of the other bears it; as many cans as any stretch has full are owned;
 * on every stretch the permitted masses hold with the tanks as they are left and every can of the leg full.
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
  for (const halt of [...halts.fuel, ...halts.water]) {
    if (!made.has(halt.key))
      made.set(halt.key, { column: builder.column(0, 1, true), bothWaysM: halt.bothWaysM });
  }

  const legs: CarryModel['legs'] = { fuel: [], water: [] };
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const foreign = halts[otherOf(commodity)];
    legs[commodity] = legsOf(side, foreign).map((leg) => ({
      leg,
      column: builder.column(0, 1, true),
      shortFill: null,
    }));
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

function addMassRows(
  builder: MipBuilder,
  problem: CarryProblem,
  room: MassRoom,
  legs: CarryModel['legs'],
  owned: CarryModel['owned'],
): void {
  for (const commodity of COMMODITIES) {
    for (const one of legs[commodity]) {
      const mostL = shortFillsOf(problem, commodity, one.leg);
      if (mostL <= 0) continue;
      one.shortFill = builder.column(0, mostL, false);
      builder.row(Number.NEGATIVE_INFINITY, 0, [
        [one.shortFill, 1],
        [one.column, -mostL],
      ]);
    }
  }
  const places = COMMODITIES.flatMap((commodity) => problem.sides[commodity].edges.map((edge) => edge.atM));
  const cuts = [...new Set(places)].sort((a, b) => a - b);
  for (let index = 0; index + 1 < cuts.length; index += 1) {
    const middleM = (cuts[index]! + cuts[index + 1]!) / 2;
    for (const { leftKg, canKg, perLitreKg } of room.limits) {
      const entries: [number, number][] = [];
      for (const commodity of COMMODITIES) {
        const { edges, course, startL } = problem.sides[commodity];
        const { empty, filling } = canKg[commodity];
        entries.push([owned[commodity], empty]);
        for (const { leg, column, shortFill } of legs[commodity]) {
          if (edges[leg.from]!.atM > middleM || edges[leg.to]!.atM < middleM) continue;
          const lessL = leg.from === 0 ? course.rig[commodity].drawableL - startL : 0;
          const kg = leg.cans * filling - lessL * Math.max(0, perLitreKg[commodity]);
          if (kg !== 0) entries.push([column, kg]);
          if (shortFill !== null) entries.push([shortFill, -Math.max(0, perLitreKg[commodity])]);
        }
      }
      builder.row(
        Number.NEGATIVE_INFINITY,
        leftKg,
        entries.filter(([, kg]) => kg !== 0),
      );
    }
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
  { sides, room }: CarryProblem,
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
  if (room !== null) {
    const short = fresh();
    for (const commodity of COMMODITIES)
      for (const { shortFill } of legs[commodity]) if (shortFill !== null) short[shortFill] = 1;
    if (short.some((value) => value !== 0)) aims.push({ aim: 'short-fill-l', cost: short, whole: false });
  }
  return aims;
}
