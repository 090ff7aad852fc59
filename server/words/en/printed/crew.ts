import type { WaterUse } from '../../../contract/crew.ts';
import { column } from './shared/columns.ts';

type Heat = NonNullable<WaterUse['heat']>;

/** One grade in one gap: what it needs, what is left of it and how that is judged. */
interface GradeInGap {
  readonly need: string;
  readonly margin: string;
  readonly verdict: string;
}

/** Words of the report of water use. Figures come in as they are set. */
export const CREW_WORDS = {
  columns: {
    use: column('use'),
    grade: column('grade'),
    low: column('low', 'l a day'),
    typical: column('typical', 'l a day'),
    high: column('high', 'l a day'),
  },
  head: 'Water use (low, typical, high use)',
  bounds: (low: string, typical: string, high: string) => `${low}, ${typical} or ${high}`,
  use: (perDay: string, { isOwn, aboard, days }: { isOwn: boolean; aboard: string; days: string }) =>
    `${perDay} l a day${isOwn ? ', your own figure' : ''}; the ${aboard} aboard at the start last ${days} days`,
  ofGrade: (grade: string, { perDay, aboard, days }: { perDay: string; aboard: string; days: string }) =>
    `${grade} grade: ${perDay} l a day; ${aboard} aboard can serve it, it lasts ${days} days`,
  grades: { drinking: 'drinking', washing: 'washing' },
  notCarried: (perDay: string) => `taken at the source, not carried: ${perDay} l a day`,
  source: (source: string) => `- source: ${source}`,
  taken: (litres: string) => `, ${litres} taken on the way`,
  gap: (number: number, drinking: GradeInGap, { taken, ...washing }: GradeInGap & { taken: string }) =>
    `gap ${number}: drinking grade needs ${drinking.need}, margin ${drinking.margin}, ${drinking.verdict}; washing grade needs ${washing.need}${taken}, margin ${washing.margin}, ${washing.verdict}`,
  heat: (
    { from, category, work }: Pick<Heat, 'from' | 'category' | 'work'>,
    told: Record<'wbgt' | 'rest' | 'perHour' | 'hours' | 'why', string>,
  ) =>
    `heat: WBGT ${told.wbgt} °C ${from === 'told' ? 'as told' : 'estimated'}, category ${category} of 5; drinking at rest × ${told.rest}, and ${told.perHour} l for each of ${told.hours} hours of ${work} work (${told.why})`,
  hoursToHelp: (hours: string) => `, ${hours} hours to help`,
  reserve: (
    litres: string,
    {
      days,
      help,
      safe,
      worst,
      holds,
    }: Record<'days' | 'help' | 'safe' | 'worst', string> & { holds: boolean },
  ) =>
    `reserve: ${litres}, ${days} days of drinking grade${help}; ${safe} are left when ${worst} is lost, ${holds ? 'which holds it' : 'which does not hold it'}`,
};
