import { at } from '../../lists/at.ts';
import { endOf } from '../side/carry-side.ts';
import { type Cost, compareCosts, NO_COST, sumOf } from './cost.ts';
import type { FailureTable } from './failure-table.ts';
import type { SearchLeg, SideTable } from './side-table.ts';

/**
 * What one commodity costs at the least, whatever the other does, with at most so many cans: from the start, and from a
 * leg that is chosen with its own halt; null where no chain leads to the end.
 */
export interface ToGo {
  readonly start: Cost | null;
  readonly after: (leg: SearchLeg) => Cost | null;
}

/** A table is one question's: what is known already, by the number of cans. */
const known = new WeakMap<SideTable, Map<number, ToGo>>();

/** `failures` are those of the table. */
export function toGoOf(table: SideTable, mostCans: number, failures: FailureTable | null): ToGo {
  const ofTable = known.get(table) ?? new Map<number, ToGo>();
  known.set(table, ofTable);
  const toGo =
    ofTable.get(mostCans) ??
    (failures === null ? toGoFromEdges(table, mostCans) : toGoFromLegs(table, mostCans, failures));
  ofTable.set(mostCans, toGo);
  return toGo;
}

function toGoFromEdges(table: SideTable, mostCans: number): ToGo {
  const costs: (Cost | null)[] = table.side.edges.map(() => null);
  const end = endOf(table.side);
  costs[end] = NO_COST;
  const after = ({ hop }: SearchLeg): Cost | null => {
    const rest = costs[hop.to] ?? null;
    return rest === null ? null : sumOf(at(table.leastHalting, hop.to), rest);
  };
  for (let index = end - 1; index >= 0; index -= 1)
    costs[index] = leastOf(at(table.legsFrom, index), mostCans, { after });
  return { start: costs[0] ?? null, after };
}

/** Where stops may fail, what goes on from a leg hangs on the leg. */
function toGoFromLegs(table: SideTable, mostCans: number, failures: FailureTable): ToGo {
  const end = endOf(table.side);
  const costs: (Cost | null)[] = table.legs.map(() => null);
  const after = ({ number }: SearchLeg): Cost | null => costs[number] ?? null;
  const afterLeg = (leg: SearchLeg): Cost | null => {
    if (leg.hop.to === end) return NO_COST;
    const places = failures.foundBy(leg);
    const mustGoOn = places.length > 0 && !failures.bearsBack(leg);
    const rest = leastOf(at(table.legsFrom, leg.hop.to), mostCans, {
      after,
      allows: (next) => !mustGoOn || places.every((place) => failures.bearsOn(leg, next, place)),
    });
    return rest === null ? null : sumOf(at(table.leastHalting, leg.hop.to), rest);
  };
  for (let index = end - 1; index >= 0; index -= 1)
    for (const leg of at(table.legsFrom, index))
      if (leg.hop.cans <= mostCans) costs[leg.number] = afterLeg(leg);
  return { start: leastOf(at(table.legsFrom, 0), mostCans, { after }), after };
}

interface GoingOn {
  readonly after: (leg: SearchLeg) => Cost | null;
  /** Asked only of what would be the best so far. */
  readonly allows?: (leg: SearchLeg) => boolean;
}

function leastOf(legs: readonly SearchLeg[], mostCans: number, { after, allows }: GoingOn): Cost | null {
  let least: Cost | null = null;
  for (const leg of legs) {
    if (leg.hop.cans > mostCans) continue;
    const rest = after(leg);
    if (rest === null) continue;
    const cost = sumOf(leg.cost, rest);
    if (least !== null && compareCosts(cost, least) >= 0) continue;
    if (allows === undefined || allows(leg)) least = cost;
  }
  return least;
}
