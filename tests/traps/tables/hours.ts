import { fuel, STATION, TAP, type Trap, water } from './trap.ts';

const HOURS = 'Key:opening_hours';
const CONDITION = 'Conditional restrictions';
const BARE = { amenity: 'fuel' };
const COUNTS = { evidence: 'stated', counts: true } as const;
const july = { trip: 'july' } as const;
const timed = { trip: 'july at eight' } as const;
const WELL = { man_made: 'water_well', drinking_water: 'yes' };

/** What keeps a supply shut on every day, dated or not. */
const NEVER = [
  'closed',
  'off',
  'Off',
  '24/7 off',
  '24/7 closed',
  'Mo-Su off',
  'no',
  'closed "for good"',
  '2019 Mo-Su 08:00-18:00',
];

/** Shut in July and long after. */
const WINTER = [
  'Nov-Mar',
  'Nov-Mar 08:00-18:00',
  'Oct 15-Apr 15: 09:00-17:00',
  'Dec-Feb Mo-Fr 08:00-12:00',
  'week 45-52 08:00-18:00; week 01-10 08:00-18:00',
];

const inAllTrips = (make: (more: { trip: Trap['trip'] }) => Trap): Trap[] =>
  (['undated', 'july', 'july at eight'] as const).map((trip) => make({ trip }));

export const HOURS_TRAPS: readonly Trap[] = [
  ...NEVER.flatMap((hours) => [
    ...inAllTrips((more) => fuel({ ...STATION, opening_hours: hours }, 'closed', HOURS, more)),
    water({ ...TAP, opening_hours: hours }, 'closed', HOURS),
    water({ ...TAP, opening_hours: hours }, 'closed', HOURS, july),
  ]),
  ...WINTER.flatMap((hours) => [
    fuel({ ...STATION, opening_hours: hours }, 'out-of-season', HOURS, july),
    fuel({ ...STATION, opening_hours: hours }, 'out-of-season', HOURS, timed),
    water({ ...TAP, opening_hours: hours }, 'out-of-season', HOURS, july),
    water({ ...TAP, opening_hours: hours }, 'out-of-season', HOURS, timed),
    fuel({ ...BARE, opening_hours: hours }, 'season-unknown', HOURS),
    fuel({ ...STATION, opening_hours: hours }, 'season-unknown', HOURS, {
      evidence: 'implied',
      counts: true,
    }),
    water({ ...TAP, opening_hours: hours }, 'season-unknown', HOURS, { evidence: 'implied' }),
  ]),
  fuel({ ...STATION, 'opening_hours:fuel': 'off' }, 'closed', 'Key:opening_hours:fuel'),
  fuel(
    { ...STATION, opening_hours: '24/7', 'opening_hours:fuel': 'Nov-Mar' },
    'out-of-season',
    'Key:opening_hours:fuel',
    july,
  ),
  water({ ...WELL, 'opening_hours:drinking_water': 'Nov-Mar' }, 'out-of-season', HOURS, july),
  fuel({ ...STATION, opening_hours: 'Aug 15-Sep 30' }, 'out-of-season', HOURS, july),
  fuel({ ...STATION, seasonal: 'winter' }, 'out-of-season', 'Key:seasonal', july),
  water({ ...TAP, seasonal: 'winter' }, 'out-of-season', 'Key:seasonal', july),
  water({ ...TAP, seasonal: 'Winter' }, 'out-of-season', 'Key:seasonal', timed),
  fuel({ ...STATION, seasonal: 'yes' }, 'season-unknown', 'Key:seasonal'),
  water({ ...TAP, seasonal: 'summer' }, 'season-unknown', 'Key:seasonal'),
  water({ ...TAP, seasonal: 'wet_season' }, 'season-unknown', 'Key:seasonal', july),
  water({ ...TAP, drinking_water: 'seasonal' }, 'season-unknown', 'Key:drinking_water', july),
  fuel({ ...STATION, 'access:conditional': 'no @ (Jun-Sep)' }, 'out-of-season', CONDITION, july),
  fuel(
    { ...STATION, access: 'yes', 'access:conditional': 'private @ (Jun-Sep)' },
    'out-of-season',
    CONDITION,
    timed,
  ),
  fuel({ ...STATION, 'access:conditional': 'yes @ (Nov-Mar)' }, 'out-of-season', CONDITION, july),
  fuel({ ...STATION, 'motor_vehicle:conditional': 'no @ (May-Oct)' }, 'out-of-season', CONDITION, july),
  fuel({ ...STATION, 'fuel:diesel:conditional': 'no @ (Jun-Aug)' }, 'out-of-season', CONDITION, july),
  water({ ...TAP, 'drinking_water:conditional': 'no @ (May-Oct)' }, 'out-of-season', CONDITION, july),
  fuel({ ...BARE, 'access:conditional': 'no @ (Jun-Sep)' }, 'season-unknown', CONDITION),
  fuel({ ...BARE, 'access:conditional': 'no @ wet' }, 'hours-unread', CONDITION),
  fuel({ ...BARE, opening_hours: 'whenever Joe is in' }, 'hours-unread', HOURS),
  fuel({ ...BARE, opening_hours: 'whenever Joe is in' }, 'hours-unread', HOURS, timed),
  fuel({ ...STATION, opening_hours: 'ask at the shop' }, 'hours-unread', HOURS, {
    evidence: 'implied',
    counts: true,
  }),
  water({ ...TAP, opening_hours: 'ask at the shop' }, 'hours-unread', HOURS, { evidence: 'implied' }),
  water({ ...TAP, opening_hours: '"by appointment"' }, 'hours-unread', HOURS, { evidence: 'implied' }),
  water({ ...TAP, opening_hours: `Mo ${'08:00-09:00,'.repeat(40)}` }, 'hours-unread', HOURS, {
    evidence: 'implied',
  }),
  fuel({ ...BARE, opening_hours: '2000000 ;Su ' }, 'hours-unread', HOURS),
  // Open when they are come by, or soon after.
  fuel({ ...STATION, opening_hours: 'Mo-Su 08:00-18:00' }, 'opening-hours', HOURS, COUNTS),
  fuel({ ...STATION, opening_hours: '24/7' }, null, HOURS, { ...COUNTS, ...july }),
  fuel({ ...STATION, opening_hours: 'May-Sep' }, 'opening-hours', HOURS, { ...COUNTS, ...july }),
  fuel({ ...STATION, opening_hours: 'May-Sep' }, 'opening-hours', HOURS, { ...COUNTS, ...timed }),
  fuel(
    { ...STATION, opening_hours: 'Nov-Mar', 'opening_hours:fuel': '24/7' },
    null,
    'Key:opening_hours:fuel',
    { ...COUNTS, ...july },
  ),
  fuel({ ...STATION, opening_hours: 'Jan-Dec Mo-Su 06:00-22:00' }, 'opening-hours', HOURS, COUNTS),
  water({ ...TAP, opening_hours: 'Apr-Oct' }, 'opening-hours', HOURS, { ...COUNTS, ...july }),
  water({ ...TAP, opening_hours: 'sunrise-sunset' }, 'opening-hours', HOURS, COUNTS),
  water({ ...TAP, seasonal: 'summer' }, 'in-season', 'Key:seasonal', { ...COUNTS, ...july }),
  fuel({ ...STATION, 'access:conditional': 'no @ (Nov-Mar)' }, null, CONDITION, { ...COUNTS, ...july }),
];
