import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import type { Cans } from '../question/can-limits.ts';
import type { MassLimit } from '../question/mass-room.ts';
import type { SearchLeg } from './side-table.ts';

/** As the solver's own: rows may be broken by so much. */
export const TOLERANCE = 1e-7;

/** Whether what is left of each permitted mass bears two legs where both are under way. */
export function areBearable({ leftKg, kgOf }: MassesLeft, fuel: SearchLeg, water: SearchLeg): boolean {
  const overlapM = Math.min(fuel.end.atM, water.end.atM) - Math.max(fuel.start.atM, water.start.atM);
  if (overlapM <= 0) return true;
  const [fuelKg, waterKg] = [fuel[kgOf], water[kgOf]];
  return leftKg.every((kg, number) => at(fuelKg, number) + at(waterKg, number) <= kg);
}

/** What legs have of each permitted mass, and which of their masses that is held against. */
export interface MassesLeft {
  readonly leftKg: readonly number[];
  readonly kgOf: 'kg' | 'kgWithCans';
}

/** With so many empty cans aboard; null: only as many as legs have full. */
export const massesLeft = (limits: readonly MassLimit[], cans: Cans | null): MassesLeft => ({
  leftKg: limits.map(({ canKg, leftKg }) => {
    const emptyKg = cans === null ? 0 : cans.fuel * canKg.fuel.empty + cans.water * canKg.water.empty;
    return leftKg - emptyKg + TOLERANCE;
  }),
  kgOf: cans === null ? 'kgWithCans' : 'kg',
});

/** Whether the permitted masses bear a plan with so many cans aboard. */
export function isBearable(
  limits: readonly MassLimit[],
  legs: Readonly<Record<Commodity, readonly SearchLeg[]>>,
  cans: Cans,
): boolean {
  const masses = massesLeft(limits, cans);
  return legs.fuel.every((fuel) => legs.water.every((water) => areBearable(masses, fuel, water)));
}
