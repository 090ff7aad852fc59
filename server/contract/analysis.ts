import { type Static, Type } from 'typebox';
import {
  Bbox,
  Caution,
  Commodity,
  Evidence,
  Parts,
  Reason,
  Span,
  Term,
  Verdict,
  WaterClass,
} from './common.ts';
import { GapGrades, WaterUse } from './crew.ts';
import { FuelUse } from './fuel-use.ts';
import { Arrival, Days } from './pace.ts';
import { RigFile } from './rig.ts';
import { TreatmentReport } from './treatment.ts';
import { TripFile } from './trip.ts';
import { MassReport } from './vehicle.ts';
import { CallFirst } from './whatif.ts';

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);

/** Map data that the answer rests on. */
export const Extract = Type.Object({
  /** The file as the user named it. */
  source: Type.String(),
  /** ISO time or date for which its content holds; null when nobody told, or what was told cannot be. */
  asOf: nullable(Type.String()),
  asOfBy: nullable(Type.Union([Type.Literal('file'), Type.Literal('user')])),
  /** ISO time of the newest edit among its supplies near the route; null when none is dated. */
  newestEdit: nullable(Type.String()),
  /** Whom to credit, and under what terms the data are; null when the file does not tell. */
  attribution: nullable(Type.String()),
  licence: nullable(Type.String()),
  /** It may have been cut off, and nobody vouches for it: it shows supplies, and says nothing of where there are none. */
  maybeCut: Type.Optional(Type.Literal(true)),
});
export type Extract = Static<typeof Extract>;

/** One place where the route comes by a supply point. */
export const Passing = Type.Object({
  /** "node/123", "way/45", "relation/6", "own/…" */
  id: Type.String(),
  alsoIds: Type.Array(Type.String()),
  name: nullable(Type.String()),
  commodity: Commodity,
  /** What it is, in plain words: "fuel station", "spring". */
  kind: Type.String(),
  lon: Type.Number(),
  lat: Type.Number(),
  atKm: Type.Number(),
  offRouteKm: Type.Number(),
  /** One way. */
  detourKm: Type.Number(),
  evidence: Evidence,
  counts: Type.Boolean(),
  /** Why it does not count, or what to know where it does. */
  reasons: Type.Array(Reason),
  waterClass: Type.Optional(WaterClass),
  /** Those of its tags by which it is a supply and counts or not: a note keeps them, to tell when they change. */
  tags: Type.Record(Type.String(), Type.String()),
  /** ISO date of the last edit or check on the spot; null where none is known. */
  seenOn: nullable(Type.String()),
  /** No more than this is to be had at one halt, where it was told. */
  mostL: Type.Optional(Type.Number()),
  /** Null where it has no mapped hours, and while date or hour of departure is not told. */
  arrival: Type.Optional(nullable(Arrival)),
  /** Number of the stop, along the route: passings of both commodities within 3 km have one number. */
  stop: Type.Integer(),
});
export type Passing = Static<typeof Passing>;

export const Edge = Type.Object({
  kind: Type.Union([Type.Literal('start'), Type.Literal('passing'), Type.Literal('end')]),
  id: nullable(Type.String()),
  name: nullable(Type.String()),
  atKm: Type.Number(),
  detourKm: Type.Number(),
  /** No more than this is to be had at one halt, where it was told. */
  mostL: Type.Optional(Type.Number()),
});
export type Edge = Static<typeof Edge>;

export { Term } from './common.ts';

/** A point off the corridor, or one that does not count, that could rescue a short gap. */
export const Rescue = Type.Object({
  id: Type.String(),
  name: nullable(Type.String()),
  kind: Type.String(),
  atKm: Type.Number(),
  offRouteKm: Type.Number(),
  detourKm: Type.Number(),
  evidence: Evidence,
  counts: Type.Boolean(),
  reasons: Type.Array(Reason),
});
export type Rescue = Static<typeof Rescue>;

/** The stretch between two successive passings that count, for one commodity. */
export const Gap = Type.Object({
  from: Edge,
  to: Edge,
  lengthKm: Type.Number(),
  wayKm: Type.Number(),
  days: Type.Number(),
  /** Aboard on leaving `from`. */
  departL: Type.Number(),
  needL: Type.Number(),
  reserveL: Type.Number(),
  arriveL: Type.Number(),
  marginL: Type.Number(),
  verdict: Verdict,
  acrossNoData: Type.Boolean(),
  /** What is not known of the way: a closed stretch, a jump of the line, a point led to straight, straight steps, what comes past the end. */
  doubt: nullable(
    Type.Object({
      of: Type.Union([
        Type.Literal('bridge'),
        Type.Literal('via'),
        Type.Literal('sparse'),
        Type.Literal('closed'),
        Type.Literal('onward'),
      ]),
      fromKm: Type.Number(),
      toKm: Type.Number(),
      /** False where the verdict stands all the same. */
      leavesUnknown: Type.Boolean(),
    }),
  ),
  weakest: nullable(Evidence),
  extraL: Type.Number(),
  extraCans: Type.Integer(),
  turnBackKm: nullable(Type.Number()),
  skipHelps: Type.Boolean(),
  ifToFails: nullable(
    Type.Object({
      verdict: Verdict,
      canReturn: Type.Boolean(),
      /** Aboard at the next passing less the reserve, having gone to `to` in vain. */
      marginL: Type.Number(),
    }),
  ),
  /** Where the level falls to the reserve, and to nothing; null when it does not inside the gap. */
  reserveFromKm: nullable(Type.Number()),
  runsDryKm: nullable(Type.Number()),
  /** The level along the gap: straight lines between these. */
  levels: Type.Array(Type.Object({ atKm: Type.Number(), litres: Type.Number() })),
  /** Only for a gap that is short: nearest points up to 50 km off the route. */
  rescue: Type.Array(Rescue),
  /** Of a water gap, where a crew tells the grades: both of them. The verdict is the worse of the gap's and drinking's. */
  grades: Type.Optional(nullable(GapGrades)),
  /** The terms that needL and reserveL were summed from. */
  working: Type.Object({ wayKm: Type.Array(Term), needL: Type.Array(Term), reserveL: Type.Array(Term) }),
});
export type Gap = Static<typeof Gap>;

export const Report = Type.Object({
  /** Drawable litres of the fixed tanks. */
  capacityL: Type.Number(),
  /** Litres in one can, and how many are owned. */
  canL: Type.Number(),
  cansOwned: Type.Integer(),
  /** False for gases (LPG, CNG, LNG): they go in no can, so that `extraCans` is 0 whatever is missing. */
  takesCans: Type.Boolean(),
  cover: Type.Array(Span),
  gaps: Type.Array(Gap),
  /** Index of the gap of greatest lengthKm, the first of ties. */
  longest: Type.Integer(),
  /** Index of the gap of least marginL, the first of ties. */
  tightest: Type.Integer(),
});
export type Report = Static<typeof Report>;

/** A sentence in parts, so that each reader sets quantities in their own units. */
export const SentencePart = Type.Union([
  Type.String(),
  Type.Object({
    quantity: Type.Number(),
    unit: Type.Union([Type.Literal('km'), Type.Literal('l'), Type.Literal('days'), Type.Literal('count')]),
    /** `at`: a place along the route ("km 212"); `much`: a distance or amount ("212 km"). */
    as: Type.Union([Type.Literal('at'), Type.Literal('much')]),
  }),
  Type.Object({ strong: Type.String(), verdict: Type.Optional(Verdict) }),
]);
export type SentencePart = Static<typeof SentencePart>;
export const Sentence = Type.Array(SentencePart);
export type Sentence = Static<typeof Sentence>;

/** The answer in words: one set of sentences for each commodity, and what to do. */
export const Answer = Type.Object({
  fuel: Type.Array(Sentence),
  water: Type.Array(Sentence),
  todo: Type.Array(Sentence),
});
export type Answer = Static<typeof Answer>;

/** A night on the way: at a camp of the user's, or where the day's hours at the slow pace end. */
export const Night = Type.Object({
  atKm: Type.Number(),
  name: nullable(Type.String()),
  from: Type.Union([Type.Literal('camp'), Type.Literal('pace')]),
});
export type Night = Static<typeof Night>;

/** A default that stood in for something the user did not say. */
export const Assumption = Type.Object({
  path: Type.String(),
  value: Type.String(),
  valueParts: Type.Optional(Parts),
  why: Type.String(),
  whyParts: Type.Optional(Parts),
});
export type Assumption = Static<typeof Assumption>;

export const Analysis = Type.Object({
  route: Type.Object({
    name: Type.String(),
    lengthKm: Type.Number(),
    vertices: Type.Integer(),
    parts: Type.Integer(),
    bbox: Bbox,
    longestStepKm: Type.Number(),
  }),
  extracts: Type.Array(Extract),
  /** Commodities of which no extract tells anything on this route: neither a supply nor that there is none. */
  noData: Type.Array(Commodity),
  passings: Type.Array(Passing),
  fuel: Report,
  water: Report,
  nights: Type.Array(Night),
  days: Days,
  /** What the fuel's litres were reckoned with, and how far they go. */
  fuelUse: FuelUse,
  /** What the water's litres were reckoned with, and how long they last. */
  waterUse: WaterUse,
  /** What the treatment line does; null for a rig without one. */
  treatment: nullable(TreatmentReport),
  /** What the loaded vehicle weighs; null for a rig that does not tell its vehicle's mass. */
  mass: nullable(MassReport),
  answer: Answer,
  /** Rig and trip as reckoned with, every default filled in, and which those were. */
  rig: RigFile,
  trip: TripFile,
  assumptions: Type.Array(Assumption),
  cautions: Type.Array(Caution),
  /** The stops to check before leaving, that first without which most fails; given by the command line. */
  callFirst: Type.Optional(Type.Array(CallFirst)),
  /** Cautions that every answer carries. */
  standing: Type.Array(Reason),
  skipped: Type.Array(Type.Object({ id: Type.String(), reason: Type.String() })),
});
export type Analysis = Static<typeof Analysis>;
