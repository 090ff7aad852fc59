import type { FuelKind, RigFile } from '../../../contract/rig.ts';

/** Kept under pressure or deep cold in tanks fixed to the vehicle: never in cans, wherever it could be carried. */
const GASES: readonly FuelKind[] = ['lpg', 'cng', 'lng'];

export const isGas = (kind: FuelKind): boolean => GASES.includes(kind);

/** A tank for LPG shuts off at this share of its water volume: UNECE Regulation 67, 80 % filling limit. */
export const LPG_FILL_PERCENT = 80;

type Tank = RigFile['fuel']['tanks'][number];

/** Fuel tanks with the filling limit of their fuel, where none is told. */
export function fuelTanksOf({ kind, tanks }: RigFile['fuel']): Tank[] {
  if (kind !== 'lpg') return tanks;
  return tanks.map((tank) => ({ fillPercent: LPG_FILL_PERCENT, ...tank }));
}
