import type { Commodity, Evidence } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type Leg, weakestEnd } from '../question/leg.ts';
import {
  type CarryProblem,
  type CarrySide,
  costOf,
  type Halt,
  haltsBetween,
  haltsOf,
  isBound,
  otherOf,
  placeKey,
} from '../question/problem.ts';
import { addFailureRows, cansAgainstFailure } from './failure-rows.ts';
import { addMassRows } from './mass-rows.ts';
import { type Mip, MipBuilder } from './mip.ts';
import { allLegs } from './tours.ts';

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
  /** By the key of the halt. */
  made: ReadonlyMap<string, MadeHalt>;
  /** Whether every plan there is can be made of its columns; else that none is better is known only of nothing at all. */
  complete: boolean;
  /** In the order in which they are minimised. */
  aims: AimedCost[];
}

interface MadeHalt {
  column: number;
  bothWaysM: number;
}

/**
 * A plan is a chain of legs for each commodity from start to end. Rows: the chains hang together; a halt that costs
 * something is made when either commodity uses it, and each leg of the other bears it; as many cans as any stretch has
 * full are owned; on every stretch the permitted masses hold with every can of the leg full and the tanks left as short
 * as the leg bears; how short they need be is settled afterwards (short-fill.ts). What the hops of one leg cost each
 * other is settled while it is solved (solve.ts).
 */
export function carryModel(problem: CarryProblem): CarryModel {
  const builder = new MipBuilder();
  const { sides } = problem;
  const halts = {
    fuel: haltsOf(sides.fuel, sides.water.course),
    water: haltsOf(sides.water, sides.fuel.course),
  };
  const owned = {
    fuel: builder.column(0, sides.fuel.mostCans, true),
    water: builder.column(0, sides.water.mostCans, true),
  };
  const made = new Map<string, MadeHalt>();
  // Made or not: no need to ask for whole numbers, since it costs to make one and the legs that need it are whole.
  for (const halt of [...halts.fuel, ...halts.water]) {
    if (!made.has(halt.key))
      made.set(halt.key, { column: builder.column(0, 1, false), bothWaysM: halt.bothWaysM });
  }

  const legs: CarryModel['legs'] = { fuel: [], water: [] };
  let complete = problem.thinned !== true;
  for (const commodity of COMMODITIES) {
    const side = sides[commodity];
    const foreign = halts[otherOf(commodity)];
    const { oneFailure } = problem;
    const more =
      oneFailure === null ? undefined : cansAgainstFailure(problem, commodity, oneFailure, foreign);
    const all = allLegs(side, foreign, more);
    complete &&= all.complete;
    const of = all.legs.map((leg) => ({ leg, column: builder.column(0, 1, true) }));
    legs[commodity] = of;
    addChainRows(builder, side, of, made);
    for (const { leg, column } of of) addSpareRows(builder, side, leg, column, foreign, made);
    for (let stretch = 0; stretch + 1 < side.edges.length; stretch += 1) {
      const full = of.flatMap(({ leg, column }): [number, number][] => {
        const hop = leg.hops.find(({ from, to }) => from <= stretch && to > stretch);
        return hop === undefined || hop.cans === 0 ? [] : [[column, -hop.cans]];
      });
      if (full.length > 0) builder.row(0, Number.POSITIVE_INFINITY, [[owned[commodity], 1], ...full]);
    }
  }
  if (problem.oneFailure !== null) addFailureRows(builder, problem, problem.oneFailure, halts, legs);
  if (problem.room !== null) addMassRows(builder, problem, problem.room, legs, owned);
  return { mip: builder, legs, owned, made, complete, aims: aimsOf(builder, problem, legs, owned, made) };
}

/** Legs hang together from start to end, and a supply that is used is a halt that is made. */
function addChainRows(
  builder: MipBuilder,
  side: CarrySide,
  legs: readonly { leg: Leg; column: number }[],
  made: CarryModel['made'],
): void {
  const last = side.edges.length - 1;
  side.edges.forEach((edge, index) => {
    const out = legs.filter(({ leg }) => leg.from === index);
    const into = legs.filter(({ leg }) => leg.to === index);
    const all = (of: typeof legs, value: number) => of.map(({ column }): [number, number] => [column, value]);
    if (index === 0) builder.row(1, 1, all(out, 1));
    else if (index === last) builder.row(1, 1, all(into, 1));
    else if (!isBound(edge)) builder.row(0, 0, [...all(into, 1), ...all(out, -1)]);
    const halt = made.get(placeKey(edge));
    if (halt === undefined || index === 0 || index === last) return;
    const using = legs.filter(({ leg }) => leg.hops.some(({ to }) => to === index));
    builder.row(0, 1, [[halt.column, 1], ...all(using, -1)]);
  });
}

/** A leg bears the halts of the other commodity that are made on each of its hops. */
function addSpareRows(
  builder: MipBuilder,
  { edges }: CarrySide,
  leg: Leg,
  column: number,
  foreign: readonly Halt[],
  made: CarryModel['made'],
): void {
  for (const { from, to, spareM } of leg.hops) {
    const between = haltsBetween(foreign, edges[from]!, edges[to]!);
    const allM = costOf(between);
    if (allM <= spareM) continue;
    builder.row(Number.NEGATIVE_INFINITY, allM, [
      ...between.map(({ key, costM }): [number, number] => [made.get(key)!.column, costM]),
      [column, allM - spareM],
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
  made: CarryModel['made'],
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
    overLegs(aim, (commodity, { hops }) => {
      const { edges } = sides[commodity];
      // What tags state is good enough, unless the user went and confirmed others.
      if (evidence === 'stated' && !edges.some((edge) => edge.evidence === 'confirmed')) return 0;
      return hops.reduce((sum, { from, to }) => {
        const weak = weakestEnd(edges[from]!, edges[to]!) === evidence;
        return weak ? sum + (edges[to]!.atM - edges[from]!.atM) / 1000 : sum;
      }, 0);
    });
  }
  const cans = fresh();
  cans[owned.fuel] = 1;
  cans[owned.water] = 1;
  aims.push({ aim: 'cans', cost: cans, whole: true });
  const driving = fresh();
  for (const { column, bothWaysM } of made.values()) driving[column] = bothWaysM / 1000;
  if (driving.some((value) => value !== 0)) aims.push({ aim: 'driving-km', cost: driving, whole: false });
  overLegs('can-km', (_commodity, { canM }) => canM / 1000);
  return aims;
}
