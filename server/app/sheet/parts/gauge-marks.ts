import type { Commodity } from '../../../contract/common.ts';
import type { GaugeRow } from '../../../contract/whatif.ts';
import { type CabTank, cabTank, leastEighths } from '../../../core/cab/aboard.ts';
import { printed } from '../../../words/printed.ts';
import type { PlannedTrip } from '../../plan-trip.ts';

const words = () => printed().paper.tables.gauge;

/** The gauge of a single tank, and what a can beside it holds. */
export interface GaugeDial {
  readonly tank: CabTank;
  readonly canL: number;
}

/** Null where several tanks or none hold it: no one gauge shows what is aboard then. */
export function dialOf({ analysis }: PlannedTrip, commodity: Commodity): GaugeDial | null {
  const { capacityL, canL } = analysis[commodity];
  const [tank, ...more] = analysis.rig[commodity].tanks;
  return tank !== undefined && more.length === 0 && capacityL > 0 ? { tank: cabTank(tank), canL } : null;
}

/** Full cans by the plan at a line of the gauge: before what is filled there, or after; none without a plan. */
export function cansAt(
  { plan, gauge }: PlannedTrip,
  commodity: Commodity,
  { at, atKm, commodities }: Pick<GaugeRow, 'at' | 'atKm' | 'commodities'>,
): number {
  if (gauge.basis !== 'plan') return 0;
  const isFilled = at === 'leaving' && commodities.includes(commodity);
  const levels = plan.levels[commodity];
  const level =
    isFilled || at === 'start'
      ? levels.findLast((one) => one.atKm <= atKm + SAME_KM)
      : (levels.findLast((one) => one.atKm < atKm - SAME_KM) ?? levels[0]);
  return level === undefined ? 0 : level.cansL.filter((litres) => litres > SAME_L).length;
}

const SAME_KM = 1e-6;
const SAME_L = 1e-6;

/**
 * What the gauge must show at least beside so many full cans: litres that the cans do not hold, rounded up to the next
 * mark. Where even a full tank is not enough it says so.
 */
export function markText(litres: number, { tank, canL }: GaugeDial, cans: number): string {
  const eighths = leastEighths(tank, litres - cans * canL);
  return eighths === null ? words().beyond : words().withCans(words().mark(eighths), cans);
}
