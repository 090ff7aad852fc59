import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { DrivenPlan } from '../drive/driven-plan.ts';
import { supplyStops } from '../question/supply-stops.ts';
import { byCommodity } from '../side/other-of.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { haltSupply, type LegsAtHalt } from './halt-supply.ts';
import type { HaltSupply, SheetHalt } from './sheet-halt.ts';

type PlanDriven = Pick<DrivenPlan, 'question' | 'legs'>;

/** A halt of one commodity with its place, and the supply stop that it is part of; none for start and end. */
interface HaltOfOne {
  readonly commodity: Commodity;
  readonly edge: SupplyEdge;
  readonly stop: number | null;
  readonly legs: LegsAtHalt;
}

/**
 * All halts of a driven plan in the order of the road, start and end among them: what is filled there, what one leaves
 * with, until where it lasts. Both commodities of one supply stop stand in one row.
 */
export function sheetOf(reckoned: Reckoned, plan: PlanDriven): SheetHalt[] {
  const stops = supplyStops(reckoned.analysis.passings);
  const stopAt = (edge: SupplyEdge): number | null => {
    const index = stops.findIndex(({ fromM, toM }) => fromM <= edge.atM && edge.atM <= toM);
    return edge.kind !== 'passing' || index < 0 ? null : index;
  };
  const halts = COMMODITIES.flatMap((commodity) => haltsOfOne(plan, commodity, stopAt)).sort(inOrder);
  return groupsOf(halts).map((group) => sheetHalt(reckoned, plan, group));
}

/** Where each leg begins, and where the last one ends. */
function haltsOfOne(
  { legs }: PlanDriven,
  commodity: Commodity,
  stopAt: (edge: SupplyEdge) => number | null,
): HaltOfOne[] {
  const own = legs[commodity];
  const begins = own.map((leaving, index): HaltOfOne => {
    const arriving = own[index - 1] ?? null;
    return { commodity, edge: leaving.from, stop: stopAt(leaving.from), legs: { arriving, leaving } };
  });
  const last = own.at(-1);
  if (last === undefined) return begins;
  const end = { commodity, edge: last.to, stop: null, legs: { arriving: last, leaving: null } };
  return [...begins, end];
}

const RANKS: Record<SupplyEdge['kind'], number> = { start: 0, passing: 1, end: 2 };

const inOrder = (a: HaltOfOne, b: HaltOfOne): number =>
  RANKS[a.edge.kind] - RANKS[b.edge.kind] || a.edge.atM - b.edge.atM;

/** Halts of one row: of one stop or one end of the route, each commodity once. */
function groupsOf(halts: readonly HaltOfOne[]): HaltOfOne[][] {
  const groups: HaltOfOne[][] = [];
  for (const halt of halts) {
    const open = groups.at(-1);
    const joins = open?.every(
      ({ commodity, edge, stop }) =>
        commodity !== halt.commodity && edge.kind === halt.edge.kind && stop === halt.stop,
    );
    if (open !== undefined && joins === true) open.push(halt);
    else groups.push([halt]);
  }
  return groups;
}

function sheetHalt(reckoned: Reckoned, { question }: PlanDriven, group: readonly HaltOfOne[]): SheetHalt {
  const { edge } = at(group, 0);
  const supplies: Record<Commodity, HaltSupply | null> = byCommodity((commodity) => {
    const own = group.find((halt) => halt.commodity === commodity);
    return own === undefined ? null : haltSupply(reckoned, question.sides[commodity], own.legs);
  });
  return {
    kind: edge.kind === 'passing' ? 'stop' : edge.kind,
    atM: edge.atM,
    time: reckoned.timeThere(edge.atM),
    ...supplies,
  };
}
