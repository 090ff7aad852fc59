import type { Day } from '../../../contract/pace.ts';
import { column } from './shared/columns.ts';

/** A stay is more often a rest than a wait, but may be either. */
const HALTS: Record<Day['halt']['kind'], string> = {
  camp: 'camp',
  pace: "the day's hours end",
  stay: 'stay',
  end: 'end of the route',
};

/** Words of the table of days. Figures come in as they are set. */
export const DAYS_WORDS = {
  columns: {
    day: column('day'),
    date: column('date'),
    from: column('from', 'km'),
    to: column('to', 'km'),
    drive: column('drive', 'h'),
    night: column('night at'),
    arrive: column('arrive'),
    fuel: column('fuel left', 'l'),
    water: column('water left', 'l'),
    drinking: column('drinking', 'l'),
    washing: column('washing', 'l'),
  },
  halts: HALTS,
  head: ({ hours, slow, typical, fast }: Record<'hours' | 'slow' | 'typical' | 'fast', string>) =>
    `Days at the slow pace: ${hours} h of driving in ${slow} days (typical ${typical}, fast ${fast}). Water goes by the time that passes, nights included.`,
  notAllListed: (count: number) => `The drive goes on for more days than the ${count} listed.`,
  between: (earliest: string, latest: string) => `${earliest} to ${latest}`,
};
