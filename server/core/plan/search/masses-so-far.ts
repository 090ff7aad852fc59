import { at, numberIn } from '../../lists/at.ts';
import type { Cans } from '../question/can-limits.ts';
import type { MassLimit } from '../question/mass-room.ts';
import type { SearchLeg } from './side-table.ts';

/** As the solver's own: rows may be broken by so much. */
export const TOLERANCE = 1e-7;

/** What the permitted masses bear, and which cans are aboard. */
export interface Masses {
  readonly limits: readonly MassLimit[];
  /** All cans count as so many empty ones; where left out, only as many do as legs ever have full. */
  readonly aboard: Cans | null;
  readonly start: MassesSoFar;
}

/** What chosen legs leave of the permitted masses. */
export interface MassesSoFar {
  /** The most that a leg has full; nothing where it is told beforehand how many are aboard. */
  readonly cans: Cans;
  /** Of each permitted mass the least where two legs are under way, but for empty cans that are still to come; no more than those weigh at the most. */
  readonly leftKg: readonly number[];
}

const NO_CANS: Cans = { fuel: 0, water: 0 };

/** With so many cans at the most, all of them aboard or only those that are ever full. */
export function massesOf(limits: readonly MassLimit[], most: Cans, onlyFull: boolean): Masses {
  const leftKg = limits.map((limit) =>
    onlyFull ? emptyKg(limit, most) : limit.leftKg - emptyKg(limit, most) + TOLERANCE,
  );
  return { limits, aboard: onlyFull ? null : most, start: { cans: NO_CANS, leftKg } };
}

const emptyKg = ({ canKg }: MassLimit, { fuel, water }: Cans): number =>
  fuel * canKg.fuel.empty + water * canKg.water.empty;

/** What is left once two legs are gone on with together; null where it is less than nothing. */
export function withLegs(
  { limits, aboard }: Masses,
  soFar: MassesSoFar,
  { fuel, water }: { readonly fuel: SearchLeg; readonly water: SearchLeg },
): MassesSoFar | null {
  if (limits.length === 0) return soFar;
  const overlapM = Math.min(fuel.end.atM, water.end.atM) - Math.max(fuel.start.atM, water.start.atM);
  if (aboard !== null) {
    if (overlapM <= 0) return soFar;
    for (const [number, kg] of soFar.leftKg.entries())
      if (at(fuel.kg, number) + at(water.kg, number) > kg) return null;
    return soFar;
  }
  return withOwnCans(limits, soFar, { fuel, water, meet: overlapM > 0 });
}

interface TwoLegs {
  readonly fuel: SearchLeg;
  readonly water: SearchLeg;
  /** Whether both are under way at some place. */
  readonly meet: boolean;
}

function withOwnCans(
  limits: readonly MassLimit[],
  soFar: MassesSoFar,
  { fuel, water, meet }: TwoLegs,
): MassesSoFar | null {
  let { cans, leftKg } = soFar;
  if (fuel.hop.cans > cans.fuel || water.hop.cans > cans.water)
    cans = { fuel: Math.max(cans.fuel, fuel.hop.cans), water: Math.max(cans.water, water.hop.cans) };
  for (const [number, limit] of limits.entries()) {
    const beforeKg = numberIn(leftKg, number);
    const hereKg = meet
      ? limit.leftKg + TOLERANCE - numberIn(fuel.kg, number) - numberIn(water.kg, number)
      : Number.MAX_VALUE;
    if (Math.min(hereKg, beforeKg) < emptyKg(limit, cans)) return null;
    if (hereKg < beforeKg) leftKg = leftKg.map((kg, each) => (each === number ? hereKg : kg));
  }
  return cans === soFar.cans && leftKg === soFar.leftKg ? soFar : { cans, leftKg };
}

/** Whether one leaves as much as another. */
export function leaveAsMuch(one: MassesSoFar, than: MassesSoFar): boolean {
  if (one === than) return true;
  if (one.cans.fuel > than.cans.fuel || one.cans.water > than.cans.water) return false;
  for (let number = 0; number < one.leftKg.length; number += 1)
    if (numberIn(one.leftKg, number) < numberIn(than.leftKg, number)) return false;
  return true;
}
