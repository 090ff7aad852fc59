import type { RigFile } from '../../contract/rig.ts';
import { filledL } from '../quantity/drawable.ts';
import { SLACK } from '../quantity/slack.ts';

/** A fixed tank as its gauge shows it. */
export interface CabTank {
  readonly name: string;
  /** As full as it may be filled, and what of that cannot be drawn, litres. */
  readonly filledL: number;
  readonly unusableL: number;
}

/** A tank of a rig. */
export const cabTank = (tank: RigFile['fuel']['tanks'][number]): CabTank => ({
  name: tank.name,
  filledL: filledL(tank),
  unusableL: tank.unusableLitres ?? 0,
});

/** What of one commodity can be aboard. */
export interface CabStore {
  readonly tanks: readonly CabTank[];
  /** Of one full can. */
  readonly canL: number;
  /** Cans there may be. */
  readonly cans: number;
}

/** What is read of a tank: marks of its gauge, or litres that can be used. */
export type TankReading = { readonly eighths: number } | { readonly litres: number };

/** What is read of one commodity: each tank in the order of the rig, and the full cans; one that is begun counts as empty. */
export interface CabReading {
  readonly tanks: readonly TankReading[];
  readonly cans: number;
}

/** Marks from empty to full (ours): what most gauges are read to. */
export const MARKS = 8;

/**
 * Litres that a tank gives by what is read of it. From empty to full a gauge is taken to show all that is filled in, also
 * what cannot be drawn: where it begins above that, or is made for more, a mark is worth more than is said here, never less.
 */
export function tankReadingL(tank: CabTank, reading: TankReading): number {
  const mostL = Math.max(0, tank.filledL - tank.unusableL);
  const litres =
    'eighths' in reading ? (reading.eighths / MARKS) * tank.filledL - tank.unusableL : reading.litres;
  return Math.min(mostL, Math.max(0, litres));
}

/** The lowest mark at which a tank gives so much; null where it never does. */
export function leastEighths(tank: CabTank, litres: number): number | null {
  for (let eighths = 0; eighths <= MARKS; eighths += 1)
    if (tankReadingL(tank, { eighths }) >= litres - SLACK) return eighths;
  return null;
}

/** Litres of all that can be used, as they are read. */
export const readingL = ({ tanks, canL }: CabStore, reading: CabReading): number =>
  tanks.reduce(
    (sum, tank, index) => sum + tankReadingL(tank, reading.tanks[index] ?? { litres: 0 }),
    reading.cans * canL,
  );
