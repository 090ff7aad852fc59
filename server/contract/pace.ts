import { type Static, Type } from 'typebox';
import { IsoDate } from './common.ts';

const closed = { additionalProperties: false } as const;
const speed = Type.Number({ exclusiveMinimum: 0, maximum: 200 });
const hoursOfDay = Type.Number({ exclusiveMinimum: 0, maximum: 24 });
const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);

/** Pace on one surface; without `hoursPerDay` the rig's own hours hold. */
const PaceOn = Type.Optional(
  Type.Object(
    {
      hoursPerDay: Type.Optional(hoursOfDay),
      kmPerHour: Type.Object({ slow: speed, typical: speed, fast: speed }, closed),
    },
    closed,
  ),
);

/** What a rig file may say of its pace beyond hours and speed. */
export const PACE_DETAIL = {
  bySurface: Type.Optional(
    Type.Object(
      {
        sealed: PaceOn,
        gravel: PaceOn,
        track: PaceOn,
        sand: PaceOn,
        rock: PaceOn,
        mud: PaceOn,
        salt: PaceOn,
        unknown: PaceOn,
      },
      closed,
    ),
  ),
};

/** What a trip file may say of its days beyond departure, stays and the route's own camps. */
export const DAYS_DETAIL = {
  /** Local time at which each day's driving begins, the first day's too; untold, the trip starts with a driving day. */
  departureHour: Type.Optional(Type.Number({ minimum: 0, maximum: 24 })),
  /** Stop for the night after so many hours of driving. */
  campAfterHours: Type.Optional(hoursOfDay),
  /** Where nights are meant to be spent, beside the camps that the route file marks. */
  camps: Type.Optional(
    Type.Array(
      Type.Object(
        {
          atKm: Type.Number({ minimum: 0, maximum: 100_000 }),
          name: Type.Optional(Type.String({ maxLength: 120 })),
        },
        closed,
      ),
      { maxItems: 500 },
    ),
  ),
};

/** Local date and time to the minute, no time zone: "2027-05-03T14:05". */
export const LocalTime = Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}$' });

/**
 * When a supply is reached: at the fast pace, and at the slow one. `open`: true when its mapped hours have it open all
 * that time, false when it is shut at some of it, null when that cannot be told. `waitHours`: the longest wait for it
 * to open; 0 when open, null when unknown or longer than is looked ahead.
 */
export const Arrival = Type.Object({
  earliest: LocalTime,
  latest: LocalTime,
  open: nullable(Type.Boolean()),
  waitHours: nullable(Type.Number()),
  /** What to know of it, in words. */
  text: nullable(Type.String()),
});
export type Arrival = Static<typeof Arrival>;

/** One day of the drive at the slow pace, from the halt before to the halt at its end. */
export const Day = Type.Object({
  /** From 1. */
  day: Type.Integer(),
  date: nullable(IsoDate),
  fromKm: Type.Number(),
  toKm: Type.Number(),
  /** Hours driven. */
  hours: Type.Number(),
  /**
   * Where the day ends: at a camp of the user's, where its hours end, at a stay (a rest day, waiting), or at the end of
   * the route.
   */
  halt: Type.Object({
    kind: Type.Union([Type.Literal('camp'), Type.Literal('pace'), Type.Literal('stay'), Type.Literal('end')]),
    name: nullable(Type.String()),
  }),
  /** When its end is reached at the fast and at the slow pace; null while date or hour of departure is not told, and for a day without driving. */
  arrive: nullable(Type.Object({ earliest: LocalTime, latest: LocalTime })),
  /** Left on reaching the day's end, at the rates the verdict uses, detours to supplies on the way included. */
  fuelL: Type.Number(),
  waterL: Type.Number(),
  /** Of `waterL`, what is left for each grade; null where no crew tells the grades. */
  waterByGrade: nullable(Type.Object({ drinkingL: Type.Number(), washingL: Type.Number() })),
});
export type Day = Static<typeof Day>;

const Paces = Type.Object({ slow: Type.Number(), typical: Type.Number(), fast: Type.Number() });

/** The days of the drive. Detours are left out: they depend on what is fetched. */
export const Days = Type.Object({
  /** At the slow pace, that of the verdicts. */
  rows: Type.Array(Day),
  /** False when the drive has more days than are listed one by one. */
  allListed: Type.Boolean(),
  drivingHours: Paces,
  /** From departure to the end of the route, nights and stays included. */
  elapsedDays: Paces,
  /** How water of a gap is charged: by the time that passes. */
  waterCharge: Type.Literal('elapsed'),
});
export type Days = Static<typeof Days>;
