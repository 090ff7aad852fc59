import { column } from './shared/columns.ts';

/** Words of what a log teaches. Figures come in as they are set. */
export const LEARNT_WORDS = {
  fuelColumns: {
    lines: column('lines'),
    from: column('from', 'km'),
    to: column('to', 'km'),
    way: column('way', 'km'),
    filled: column('filled', 'l'),
    use: column('use', 'l/100 km'),
    surface: column('surface'),
    mass: column('mass', 'kg'),
    note: column('note'),
  },
  waterColumns: {
    line: column('line'),
    date: column('date'),
    used: column('used', 'l'),
    people: column('people'),
    time: column('time', 'days'),
    use: column('use', 'l/person/day'),
    note: column('note'),
  },
  units: { fuel: 'l/100 km', person: 'l for a person and day', day: 'l a day' },
  howCome: 'How it was come by',
  cautions: 'Cautions',
  unread: (columns: readonly string[]) => `Columns not looked at: ${columns.join(', ')}`,
  forRig: 'For the rig file',
  rates: ({ low, typical, high }: Record<'low' | 'typical' | 'high', string>, unit: string) =>
    `low ${low}, typical ${typical}, high ${high} ${unit}`,
  source: (name: string, rates: string) => `${name}: ${rates}`,
  fuelOverAll: (
    intervals: number,
    { km, litres, use, units }: Record<'km' | 'litres' | 'use', string> & { units: string | null },
  ) =>
    `${intervals} intervals from full tank to full tank, ${km} km, ${litres} l, ${use} l/100 km over all${units === null ? '' : ` (the log is in ${units})`}`,
  logUnits: (distance: string, volume: string) => `${distance} and ${volume}`,
  intervals: 'Intervals',
  leftOut: 'Left out',
  observed: (surface: string | null, mass: number | null) =>
    `observed on ${surface ?? 'no one surface that the log tells'}, ${mass === null ? 'mass not told' : `at ${mass} kg`}`,
  tooFew: 'too few for rates of their own',
  onSurface: (
    surface: string | null,
    { intervals, km, use }: { intervals: number; km: string; use: string },
  ) =>
    `- ${surface ?? 'surface mixed or not told'}: ${intervals === 1 ? '1 interval' : `${intervals} intervals`}, ${km} km; ${use}`,
  leftOutLine: (from: number, to: number, text: string) =>
    `- ${from === to ? `line ${from}` : `lines ${from} to ${to}`}: ${text}`,
  forPeople: (people: number, rates: string) => `for ${people} people: ${rates}`,
  waterOverAll: (lines: number, { days, litres, use }: Record<'days' | 'litres' | 'use', string>) =>
    `${lines} lines, ${days} days of a person, ${litres} l, ${use} l for a person and day over all`,
  linesByDate: 'Lines by date',
  outlier: 'outlier',
};
