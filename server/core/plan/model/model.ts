import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { callsAt } from '../legs/leg.ts';
import type { LegSearch } from '../legs/tours.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import { type CarrySide, endOf, endsOf } from '../side/carry-side.ts';
import { costOf, type Halt, haltsBetween, haltsOf } from '../side/halts.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { isBound } from '../side/supply-edge.ts';
import { type AimCost, aimsOf } from './aims.ts';
import {
  columnOf,
  entriesOf,
  type HaltColumns,
  haltColumns,
  type LegColumn,
  type LegColumns,
} from './columns.ts';
import { addFailureRows } from './failure-rows.ts';
import { legSearches } from './leg-searches.ts';
import { addMassRows } from './mass-rows.ts';
import { type Mip, MipBuilder, type MipEntry } from './mip.ts';
import { stopColumns } from './stop-columns.ts';

/** The model of a carry plan, and which of its columns mean what. */
export interface CarryModel {
  readonly mip: Mip;
  readonly legs: LegColumns;
  /** Columns of the cans that are aboard. */
  readonly aboard: Readonly<Record<Commodity, number>>;
  readonly halts: HaltColumns;
  /** Whether every plan there is can be made of its columns; else that none is better is known only of nothing at all. */
  readonly complete: boolean;
  /** In the order in which they are minimised. */
  readonly aims: readonly AimCost[];
}

/**
 * A plan is a chain of legs for each commodity from start to end. Rows: the chains hang together; a halt that costs
 * something is made when either commodity uses it, and each leg of the other bears it; as many cans as any stretch has
 * full are aboard; on every stretch the permitted masses hold with every can of the leg full and the tanks left as short
 * as the leg bears; how short they need be is settled afterwards (short-fill.ts). What the hops of one leg cost each
 * other is settled while it is solved (broken-tours.ts).
 */
export function carryModel(question: CarryQuestion): CarryModel {
  const builder = new MipBuilder();
  const { sides, oneFailure, room } = question;
  const foreign = byCommodity((commodity) => haltsOf(sides[otherOf(commodity)], sides[commodity].course));
  const aboard = byCommodity((commodity) => builder.column(0, sides[commodity].mostCans, true));
  const toGet = COMMODITIES.map((commodity) =>
    addToGet(builder, aboard[commodity], question.owned[commodity]),
  );
  const halts = haltColumns(
    builder,
    [...foreign.water, ...foreign.fuel],
    COMMODITIES.flatMap((commodity) => sides[commodity].edges),
  );
  const columns = { aboard, halts };
  const searches = legSearches(question);
  const legs = byCommodity((commodity) => {
    const facts = { ...columns, foreign: foreign[commodity] };
    return addSide(builder, sides[commodity], searches[commodity], facts);
  });
  const stops = stopColumns(builder, sides, legs);
  if (oneFailure !== null) addFailureRows(builder, { question, rule: oneFailure, foreign, legs });
  if (room !== null) addMassRows(builder, { question, room, legs, aboard });
  return {
    mip: builder,
    legs,
    aboard,
    halts,
    complete: question.suppliesLeftOut !== true && searches.fuel.complete && searches.water.complete,
    aims: aimsOf(question, { count: builder.columns.length, legs, toGet, stops }),
  };
}

interface SideColumns {
  readonly aboard: CarryModel['aboard'];
  readonly halts: HaltColumns;
  /** Halts of the other commodity. */
  readonly foreign: readonly Halt[];
}

/** The legs of one commodity as columns, with the rows that hold for it alone. */
function addSide(
  builder: MipBuilder,
  side: CarrySide,
  search: LegSearch,
  { aboard, halts, foreign }: SideColumns,
): readonly LegColumn[] {
  const legs = search.legs.map((leg): LegColumn => ({ leg, column: builder.column(0, 1, true) }));
  addChainRows(builder, side, legs, halts);
  for (const leg of legs) addSpareRows(builder, side, leg, { foreign, halts });
  addAboardRows(builder, side, legs, aboard[side.commodity]);
  return legs;
}

/** Legs hang together from start to end, and a supply that is used is a halt that is made. */
function addChainRows(
  builder: MipBuilder,
  side: CarrySide,
  legs: readonly LegColumn[],
  halts: HaltColumns,
): void {
  const end = endOf(side);
  for (const [index, edge] of side.edges.entries()) {
    const out = legs.filter(({ leg }) => leg.from === index);
    const into = legs.filter(({ leg }) => leg.to === index);
    if (index === 0) builder.row(1, 1, entriesOf(out, 1));
    else if (index === end) builder.row(1, 1, entriesOf(into, 1));
    else if (!isBound(edge)) builder.row(0, 0, [...entriesOf(into, 1), ...entriesOf(out, -1)]);
    const halt = halts.at.get(edge);
    if (halt === undefined || index === 0 || index === end) continue;
    const calling = legs.filter(({ leg }) => callsAt(leg, index));
    builder.row(0, 1, [[halt.column, 1], ...entriesOf(calling, -1)]);
  }
}

/** A leg bears the halts of the other commodity that are made on each of its hops. */
function addSpareRows(
  builder: MipBuilder,
  side: CarrySide,
  { leg, column }: LegColumn,
  { foreign, halts }: Pick<SideColumns, 'foreign' | 'halts'>,
): void {
  for (const hop of leg.hops) {
    const between = haltsBetween(foreign, ...endsOf(side, hop));
    const allM = costOf(between);
    if (allM <= hop.spareM) continue;
    builder.atMost(allM, [
      ...between.map((halt): MipEntry => [columnOf(halts, halt), halt.costM]),
      [column, allM - hop.spareM],
    ]);
  }
}

/** The column of the cans that are still to be got, of those aboard. */
function addToGet(builder: MipBuilder, aboard: number, owned: number): number {
  // Whole where those aboard are.
  const toGet = builder.column(0, Number.POSITIVE_INFINITY, false);
  builder.atMost(owned, [
    [aboard, 1],
    [toGet, -1],
  ]);
  return toGet;
}

/** As many cans as any stretch has full are aboard. */
function addAboardRows(
  builder: MipBuilder,
  side: CarrySide,
  legs: readonly LegColumn[],
  aboard: number,
): void {
  for (let stretch = 0; stretch < endOf(side); stretch += 1) {
    const full = legs.flatMap(({ leg, column }): MipEntry[] => {
      const hop = leg.hops.find(({ from, to }) => from <= stretch && to > stretch);
      return hop === undefined || hop.cans === 0 ? [] : [[column, -hop.cans]];
    });
    if (full.length > 0) builder.row(0, Number.POSITIVE_INFINITY, [[aboard, 1], ...full]);
  }
}
