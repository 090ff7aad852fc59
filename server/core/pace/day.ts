import type { Days as DaysTold, Day as DayTold } from '../../contract/pace.ts';

/** A night on the way: at a camp of the user's, or where the day's hours at the slow pace end. */
export interface Night {
  readonly atM: number;
  readonly name: string | null;
  readonly from: 'camp' | 'pace';
}

/** One day of the drive at the slow pace, from the halt before to the halt at its end; metres along the route. */
export interface Day extends Readonly<Omit<DayTold, 'fromKm' | 'toKm'>> {
  readonly fromM: number;
  readonly toM: number;
}

/** The days of the drive. Detours are left out: they depend on what is fetched. */
export interface Days extends Readonly<Omit<DaysTold, 'rows'>> {
  readonly rows: readonly Day[];
}
