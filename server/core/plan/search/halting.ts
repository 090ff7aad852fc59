import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { halts } from './cost.ts';
import { TOLERANCE } from './masses-so-far.ts';
import { haltOnLegM, type SideTable } from './side-table.ts';
import { bearsHalts, type Ends, NO_HALTS, type StopHalts, type Way } from './way.ts';

type Tables = Readonly<Record<Commodity, SideTable>>;

/** What legs bear of further halts once those that end have ended; null where one does not bear the other's. */
export function spareAfterHalts(tables: Tables, { legs, spareM }: Way, ends: Ends): Way['spareM'] | null {
  const left = byCommodity((commodity) => {
    const other = otherOf(commodity);
    const halt = ends[other] ? at(tables[other].halts, legs[other].hop.to) : null;
    return halt === null ? spareM[commodity] : spareM[commodity] - haltOnLegM(legs[commodity], halt);
  });
  return COMMODITIES.every((commodity) => bearsHalts(legs[commodity], left[commodity]) >= -TOLERANCE)
    ? left
    : null;
}

/** The halts made at a stop with those where legs end. */
export function haltsWith(tables: Tables, { legs, stopHalts }: Way, ends: Ends): StopHalts | null {
  let all = stopHalts;
  for (const commodity of COMMODITIES) {
    const { stops, halting } = tables[commodity];
    const { to } = legs[commodity].hop;
    const stop = ends[commodity] ? at(stops, to) : null;
    if (stop === null) continue;
    const cost = all?.stop === stop ? all.cost : NO_HALTS;
    all = { stop, cost: { ...cost, [commodity]: halts(cost[commodity], at(halting, to)) } };
  }
  return all;
}
