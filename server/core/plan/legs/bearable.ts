import { aboardOf } from '../../crew/needs/graded-store.ts';
import { drinkingShare } from '../../gaps/gap-grades.ts';
import { reserveOf } from '../../gaps/need.ts';
import { SLACK } from '../../quantity/slack.ts';
import { mostWaterPerDay } from '../../rig/rig.ts';
import { type CarrySide, cansAllowed, edgeAt } from '../side/carry-side.ts';
import { addedByHeatL, filledNeed, type LegNeed } from './leg-need.ts';
import { fullDeparture, type Stock } from './stock.ts';

/** Litres aboard of all, and of what may be drunk; null where no crew tells the grades of water. */
export function litresOf(
  side: CarrySide,
  { tankL, cans }: Stock,
): { allL: number; drinkableL: number | null } {
  const { course, canL, cansDrinkable } = side;
  const allL = tankL + cans * canL;
  const store = course.commodity === 'water' ? course.rig.water.grades : null;
  if (store === null) return { allL, drinkableL: null };
  const { drinkingL, anyL } = aboardOf(store, tankL);
  return { allL, drinkableL: drinkingL + anyL + (cansDrinkable ? cans * canL : 0) };
}

/**
 * The most that a leg to a place may need so that the reserve is intact on arrival there (metres along; null: at a place
 * where it is least), litres of all water: the reserve grows with the
 * need, and of drinking grade, where it is known, enough must be left as well.
 */
export function bearableL(side: CarrySide, stock: Stock, atM: number | null): number {
  const { rig, commodity } = side.course;
  const { shareOfNeed } = rig[commodity].reserve;
  const baseL = reserveOf(side.course, 0, atM).litres;
  const { allL, drinkableL } = litresOf(side, stock);
  const ofAllL = (allL - baseL) / (1 + shareOfNeed);
  if (drinkableL === null) return ofAllL;
  const share = drinkingShare(rig) + shareOfNeed;
  return share === 0 ? ofAllL : Math.min(ofAllL, (drinkableL - baseL) / share);
}

/** Metres of detours beyond the leg's own that what is aboard still bears; negative where the leg itself is too much. */
export function spareM(side: CarrySide, need: LegNeed, mostL: number): number {
  const { course } = side;
  if (course.commodity === 'fuel') return (mostL - need.needL + SLACK) / course.off.litres;
  const { high } = course.rig.water.litresPerDay;
  const mostDays = (mostL - addedByHeatL(side, need)) / high;
  return ((mostDays - need.days + SLACK) / course.off.days) * (high / mostWaterPerDay(course.rig));
}

/** What a leg has to bear. */
interface Burden {
  /** Indexes of the edges that it begins and ends at. */
  readonly from: number;
  readonly to: number;
  /** Metres of further detours. */
  readonly viaM: number;
}

/** Fewest cans, of those there may be, with which a leg bears its own way and further detours; null where none do. */
export function fewestCans(side: CarrySide, { from, to, viaM }: Burden): number | null {
  const most = cansAllowed(side, from);
  for (let cans = 0; cans <= most; cans += 1) {
    const departure = fullDeparture(side, from, cans);
    const need = filledNeed(side, { from, to }, departure.filledL);
    if (spareM(side, need, bearableL(side, departure, edgeAt(side, to).atM)) >= viaM) return cans;
  }
  return null;
}
