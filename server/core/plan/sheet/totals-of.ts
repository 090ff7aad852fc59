import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { HOURS_PER_DAY } from '../../gaps/course/standing.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { DrivenLegs } from '../drive/drive.ts';
import type { DrivenPlan } from '../drive/driven-plan.ts';
import { hoursPerOffM } from '../side/lost-time.ts';
import { byCommodity } from '../side/other-of.ts';
import type { SheetHalt } from './sheet-halt.ts';

/** Litres of one commodity that are filled in all. */
export interface FilledInAll {
  /** Before leaving, and at the stops. */
  readonly startL: number;
  readonly stopsL: number;
  /** Of both; null where the price of some of it is not told. */
  readonly cost: number | null;
}

/** What a whole plan takes; hours at the slow pace, that of the verdicts. */
export interface PlanTotals {
  readonly filled: Readonly<Record<Commodity, FilledInAll>>;
  /** Of the prices, as the user names it. */
  readonly currency: string | null;
  /** Off the route, there and back; a place where both are filled counts once. */
  readonly drivingM: number;
  readonly drivingHours: number;
  readonly detourHours: number;
  readonly waitHours: number;
  readonly fillHours: number;
  /** From departure to the end of the route, nights and stays included; hours of halts go off the hours of driving. */
  readonly days: number;
}

/** Sums up the halts of a driven plan. */
export function totalsOf(
  { analysis }: Reckoned,
  { question, legs }: Pick<DrivenPlan, 'question' | 'legs'>,
  halts: readonly SheetHalt[],
): PlanTotals {
  const { water } = question.sides;
  const { hoursPerDay } = water.course.rig.pace;
  const places = placesOf(halts);
  const drivingM = offRouteM(legs);
  const waitHours = places.reduce((sum, place) => sum + place.waitHours, 0);
  const fillHours = places.reduce((sum, place) => sum + place.fillHours, 0);
  const standingDays = places.reduce(
    (sum, place) => sum + daysOfHalt(place.waitHours + place.fillHours, hoursPerDay),
    0,
  );
  return {
    filled: byCommodity((commodity) => filledInAll(commodity, halts)),
    currency: analysis.trip.plan?.currency ?? null,
    drivingM,
    drivingHours: analysis.days.drivingHours.slow,
    detourHours: drivingM * hoursPerOffM(water),
    waitHours,
    fillHours,
    days: analysis.days.elapsedDays.slow + drivingM * water.course.off.days + standingDays,
  };
}

/** Whole days as they are, and what is over as hours that are not driven. */
const daysOfHalt = (hours: number, hoursPerDay: number): number =>
  Math.floor(hours / HOURS_PER_DAY) + Math.min(1, (hours % HOURS_PER_DAY) / hoursPerDay);

/** Driven off the route, there and back, metres; a place where both commodities are filled counts once. */
export function offRouteM(legs: DrivenLegs): number {
  const places = new Map<string, number>();
  for (const commodity of COMMODITIES)
    for (const { to } of legs[commodity])
      if (to.kind === 'passing') places.set(`${to.id} ${to.atM}`, 2 * to.detourM);
  return [...places.values()].reduce((sum, metres) => sum + metres, 0);
}

interface Place {
  readonly waitHours: number;
  readonly fillHours: number;
}

/** Where one halts: the same object for both commodities is one place, where one waits once and fills one after the other. */
function placesOf(halts: readonly SheetHalt[]): Place[] {
  const places = new Map<string, Place>();
  for (const halt of halts) {
    for (const commodity of COMMODITIES) {
      const supply = halt[commodity];
      if (supply === null || supply.at.kind !== 'passing') continue;
      const key = `${supply.at.id} ${supply.at.atM}`;
      const { waitHours, fillHours } = supply;
      const known = places.get(key);
      places.set(key, {
        waitHours: Math.max(waitHours, known?.waitHours ?? 0),
        fillHours: fillHours + (known?.fillHours ?? 0),
      });
    }
  }
  return [...places.values()];
}

function filledInAll(commodity: Commodity, halts: readonly SheetHalt[]): FilledInAll {
  const filled = halts.flatMap(({ kind, [commodity]: supply }) =>
    supply === null || supply.fillL <= 0 ? [] : [{ kind, litres: supply.fillL, cost: supply.cost }],
  );
  const litresOf = (kind: SheetHalt['kind']) =>
    filled.filter((one) => one.kind === kind).reduce((sum, { litres }) => sum + litres, 0);
  const costs = filled.map(({ cost }) => cost);
  return {
    startL: litresOf('start'),
    stopsL: litresOf('stop'),
    cost: costs.reduce<number | null>((sum, cost) => (sum === null || cost === null ? null : sum + cost), 0),
  };
}
