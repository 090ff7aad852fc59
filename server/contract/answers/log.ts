import { type Static, Type } from 'typebox';
import { IsoDate, Reason } from '../common.ts';
import { Surface } from '../surface.ts';

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);

/** 10th, 50th and 90th percentile; `method` of the result says by which definition. */
export const LogRates = Type.Object({ low: Type.Number(), typical: Type.Number(), high: Type.Number() });
export type LogRates = Static<typeof LogRates>;

/** How far rates may stray before they are listed as outliers: `below` and `above` these. They still count. */
export const LogFences = Type.Object({ below: Type.Number(), above: Type.Number() });
export type LogFences = Static<typeof LogFences>;

/** What of the log gave no rate, and why: lines as in the file, from 1 (the header is line 1). */
export const LogLeftOut = Type.Object({
  fromLine: Type.Integer(),
  toLine: Type.Integer(),
  code: Type.Union([
    /** Filled before the first full tank, or after the last one: what was used of it is not known. */
    Type.Literal('before-first-full'),
    Type.Literal('after-last-full'),
    /** From full to full, but a fill-up in it is missing or has no litres. */
    Type.Literal('fill-missing'),
    /** From full to full, but not on the surface that was asked for. */
    Type.Literal('other-surface'),
  ]),
  text: Type.String(),
});
export type LogLeftOut = Static<typeof LogLeftOut>;

/** From one full tank to the next. Distances in km and volumes in litres, whatever the log's units. */
export const FuelInterval = Type.Object({
  fromLine: Type.Integer(),
  toLine: Type.Integer(),
  fromKm: Type.Number(),
  toKm: Type.Number(),
  km: Type.Number(),
  litres: Type.Number(),
  litresPer100Km: Type.Number(),
  /** The fill-ups that `litres` was summed from: all after the first full tank, the last one included. */
  fills: Type.Array(Type.Object({ line: Type.Integer(), litres: Type.Number() })),
  /** What all its fill-ups say; null where they do not say it, or not the same. */
  surface: nullable(Surface),
  /** Mean by distance of its fill-ups' mass; null where one does not tell. */
  massKg: nullable(Type.Number()),
  notes: Type.Array(Type.String()),
  outlier: Type.Boolean(),
});
export type FuelInterval = Static<typeof FuelInterval>;

const shared = {
  /** The file as the user named it. */
  source: Type.String(),
  /** Lines of the log that were read, header and blank ones not counted. */
  lines: Type.Integer(),
  fences: LogFences,
  /** How the figures were come by, in sentences. */
  method: Type.Array(Type.String()),
  cautions: Type.Array(Reason),
  /** Columns that were not looked at, as the header has them. */
  unreadColumns: Type.Array(Type.String()),
  /** Lines to paste into a rig file: low rounded down, typical to the nearest, high up, two decimals. */
  yaml: Type.String(),
};

/** What a log of fill-ups tells of fuel use. */
export const FuelLog = Type.Object({
  kind: Type.Literal('fuel'),
  ...shared,
  units: Type.Object({
    distance: Type.Union([Type.Literal('km'), Type.Literal('mi')]),
    volume: Type.Union([Type.Literal('l'), Type.Literal('gal (US)'), Type.Literal('gal (imp)')]),
  }),
  intervals: Type.Array(FuelInterval),
  leftOut: Type.Array(LogLeftOut),
  litresPer100Km: LogRates,
  /** All intervals together. */
  total: Type.Object({ km: Type.Number(), litres: Type.Number(), litresPer100Km: Type.Number() }),
  /** What the rates were observed on; null where the log does not say, or not all of it the same. */
  observed: Type.Object({ surface: nullable(Surface), massKg: nullable(Type.Number()) }),
  /** Intervals by the surface that they name; rates are null for fewer than five. */
  bySurface: Type.Array(
    Type.Object({
      surface: nullable(Surface),
      intervals: Type.Integer(),
      km: Type.Number(),
      litresPer100Km: nullable(LogRates),
    }),
  ),
});
export type FuelLog = Static<typeof FuelLog>;

/** One line of a water log: what so many people used in so many days. */
export const WaterEntry = Type.Object({
  line: Type.Integer(),
  /** The first of its days. */
  date: IsoDate,
  litres: Type.Number(),
  people: Type.Integer(),
  days: Type.Number(),
  litresPerPersonDay: Type.Number(),
  note: nullable(Type.String()),
  outlier: Type.Boolean(),
});
export type WaterEntry = Static<typeof WaterEntry>;

/** What a water log tells of water use. */
export const WaterLog = Type.Object({
  kind: Type.Literal('water'),
  ...shared,
  units: Type.Object({
    volume: Type.Union([Type.Literal('l'), Type.Literal('gal (US)'), Type.Literal('gal (imp)')]),
  }),
  /** By date. */
  entries: Type.Array(WaterEntry),
  litresPerPersonDay: LogRates,
  /** The same for the crew of `people`: asked for, else the most that the log has. */
  crew: Type.Object({
    people: Type.Integer(),
    from: Type.Union([Type.Literal('asked'), Type.Literal('log')]),
    litresPerDay: LogRates,
  }),
  total: Type.Object({
    litres: Type.Number(),
    personDays: Type.Number(),
    litresPerPersonDay: Type.Number(),
  }),
});
export type WaterLog = Static<typeof WaterLog>;

/** Reply to POST /api/logs and `drystage learn --json`: what a log teaches, by `kind`. */
export const LogResult = Type.Union([FuelLog, WaterLog]);
export type LogResult = Static<typeof LogResult>;
