/** A fixed tank as its gauge shows it. */
export interface CabTank {
  readonly name: string;
  /** From empty to full on its gauge, litres. */
  readonly litres: number;
  /** As full as it may be filled, and what of it cannot be drawn. */
  readonly filledL: number;
  readonly unusableL: number;
}

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

/** Marks from empty to full. */
export const MARKS = 8;

/** Litres that a tank gives by what is read of it: above a mark, nothing is taken for granted. */
export function tankReadingL(tank: CabTank, reading: TankReading): number {
  const mostL = Math.max(0, tank.filledL - tank.unusableL);
  const litres =
    'eighths' in reading ? (reading.eighths / MARKS) * tank.litres - tank.unusableL : reading.litres;
  return Math.min(mostL, Math.max(0, litres));
}

/** Litres of all that can be used, as they are read. */
export const readingL = ({ tanks, canL }: CabStore, reading: CabReading): number =>
  tanks.reduce(
    (sum, tank, index) => sum + tankReadingL(tank, reading.tanks[index] ?? { litres: 0 }),
    reading.cans * canL,
  );
