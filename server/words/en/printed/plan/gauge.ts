import { column } from '../shared/columns.ts';

/** Words of the gauge table. */
export const GAUGE_WORDS = {
  columns: {
    at: column('at', 'km'),
    place: column('place'),
    fuelOn: column('fuel to go on', 'l'),
    fuelBack: column('to go back', 'l'),
    fuelPlanned: column('planned', 'l'),
    waterOn: column('water to go on', 'l'),
    waterBack: column('to go back', 'l'),
    waterPlanned: column('planned', 'l'),
  },
  head: (which: string) => `Gauge: least to have aboard, cans and reserve included (${which})`,
  bases: { plan: 'the plan', gaps: 'there is no plan: full tanks at every supply that counts' },
  start: 'start',
  end: 'end',
  named: (place: string, name: string) => `${place}, ${name}`,
  unnamed: 'a supply',
  arriving: (place: string) => `to ${place}`,
  leaving: (place: string, what: string) => `from ${place}, ${what} filled`,
  turnBack: (what: string) => `last place to turn back for ${what}`,
};
