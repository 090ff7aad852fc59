import type { Rig } from '../../rig/rig.ts';

/** Hours until somebody raises the alarm and from then until help is there; null where not told. */
export interface HelpHours {
  alarmHours: number | null;
  helpHours: number | null;
}

/** Hours to help; what is not told counts nothing, null where neither is. */
export const hoursToHelp = ({ alarmHours, helpHours }: HelpHours): number | null =>
  alarmHours === null && helpHours === null ? null : (alarmHours ?? 0) + (helpHours ?? 0);

/** Litres of drinking grade in a day, at the rate the verdict uses; all water where no crew is told. */
export const drinkingPerDayL = ({ water }: Rig): number =>
  (water.grades?.drinkingPerDay ?? water.litresPerDay).high;

/** Litres that the water reserve comes to before any share of the need. */
export function reserveBaseL(rig: Rig): number {
  const { base } = rig.water.reserve;
  if (base.unit === 'days') return base.value * drinkingPerDayL(rig);
  if (base.unit === 'fraction') return base.value * rig.water.drawableL;
  return base.value;
}

/** The rig with a water reserve that lasts until help is there, where the trip tells the hours and it would not. */
export function withHelpHours(rig: Rig, trip: HelpHours): Rig {
  const hours = hoursToHelp(trip);
  if (hours === null || (hours / 24) * drinkingPerDayL(rig) <= reserveBaseL(rig)) return rig;
  const facts = { alarmHours: trip.alarmHours ?? 0, helpHours: trip.helpHours ?? 0 };
  const base = { unit: 'days', value: hours / 24, why: { phrase: 'hours-to-help', facts } } as const;
  return { ...rig, water: { ...rig.water, reserve: { ...rig.water.reserve, base } } };
}
