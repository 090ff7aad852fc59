import { column } from '../shared/columns.ts';

/** Words of the page for somebody at home. Figures come in as they are set. */
export const HOME_WORDS = {
  route: (name: string, km: string) => `${name}, ${km}.`,
  from: (place: string) => `From ${place}`,
  to: (place: string) => `to ${place}`,
  vehicle: (name: string) => `Vehicle and crew: ${name}.`,
  leaves: (date: string) => `Leaves on ${date}.`,
  leavesUnknown: 'The day of leaving was not told: ____________________',
  arrives: (earliest: string, latest: string) =>
    earliest === latest
      ? `Expected at the end of the route on ${latest}.`
      : `Expected at the end of the route from ${earliest}, at the slow pace on ${latest}.`,
  takes: (days: string) => `The drive takes about ${days} days at the slow pace, stays and halts included.`,
  noPlan: 'There is no plan that keeps the reserve: ask them not to leave before there is one.',
  unsure: 'Not all of the plan is known to hold.',

  alarm: 'When to raise the alarm',
  alarmColumns: {
    stop: column('nothing heard since'),
    where: column('co-ordinates'),
    by: column('call for help by'),
  },
  by: (by: string) => by,
  after: (hours: string) => `${hours} h after leaving it`,
  tooLate: 'water does not last until help is there: call at once',
  agreed: (alarm: string | null, help: string | null) =>
    [
      ...(alarm === null ? [] : [`You raise the alarm ${alarm} h after the last message.`]),
      ...(help === null ? [] : [`Help is reckoned to take ${help} h.`]),
    ].join(' '),
  noHours:
    'By which hour help must be called was not reckoned: the trip does not tell how long help takes (helpHours). Agree on a day and an hour: ______________________________',
  times: 'Times are local and reckoned from the earliest that they may leave each place.',
  columns: {
    day: column('day'),
    date: column('date'),
    night: column('night at'),
    where: column('at, co-ordinates'),
  },
  nights: 'Where they are',
  more: (count: number) => `And ${count} more days.`,

  contacts: 'Whom to call',
  blanks: [
    'Crew, telephone: ________________________________',
    'Satellite telephone or tracker: ________________________________',
    'Police or rescue on the way: ________________________________',
    'Others who know the plan: ________________________________',
    'Vehicle, plate and colour: ________________________________',
    'Insurance, doctor, blood groups, illnesses: ________________________________',
  ],
  stops: 'Stops with a telephone',
  noStops: 'No telephone is listed for any stop.',
  telephone: (place: string, number: string) => `${place}: ${number}`,
};
