import { type Static, Type } from 'typebox';

/** What is carried and used up: fuel goes by distance, water by time. */
export const Commodity = Type.Union([Type.Literal('fuel'), Type.Literal('water')]);
export type Commodity = Static<typeof Commodity>;

/** How well a supply point is known, strongest first. */
export const Evidence = Type.Union([
  Type.Literal('confirmed'),
  Type.Literal('stated'),
  Type.Literal('implied'),
  Type.Literal('doubtful'),
]);
export type Evidence = Static<typeof Evidence>;

/** What a water may be used for. `treatable`: fit after the rig's treatment line; `washing`: skin-safe only. */
export const WaterClass = Type.Union([
  Type.Literal('drinking'),
  Type.Literal('treatable'),
  Type.Literal('washing'),
  Type.Literal('none'),
]);
export type WaterClass = Static<typeof WaterClass>;

export const Verdict = Type.Union([
  Type.Literal('enough'),
  Type.Literal('into-reserve'),
  Type.Literal('short'),
  Type.Literal('unknown'),
]);
export type Verdict = Static<typeof Verdict>;

/** Units of figures inside sentences. `count`: a bare number that no unit goes with. */
export const Unit = Type.Union([
  Type.Literal('km'),
  Type.Literal('m'),
  Type.Literal('l'),
  Type.Literal('kg'),
  Type.Literal('l/100 km'),
  Type.Literal('km/h'),
  Type.Literal('°C'),
  Type.Literal('days'),
  Type.Literal('h'),
  Type.Literal('min'),
  Type.Literal('%'),
  Type.Literal('count'),
]);
export type Unit = Static<typeof Unit>;

/**
 * A sentence in parts, so that each reader sets quantities in their own units and language: words (stressed where
 * `strong`; tags as mapped, in their brackets, where `exact`: a traveller's screen leaves them out), figures in metric units (`bare`: the unit follows later, or not at all; `fixed`: with just so many
 * decimals; `difference`: between two figures of the unit), and places, km along the route.
 */
export const Part = Type.Union([
  Type.Object({
    text: Type.String(),
    strong: Type.Optional(Type.Literal(true)),
    verdict: Type.Optional(Verdict),
    exact: Type.Optional(Type.Literal(true)),
  }),
  Type.Object({
    figure: Type.Number(),
    unit: Unit,
    decimals: Type.Optional(Type.Integer()),
    fixed: Type.Optional(Type.Literal(true)),
    bare: Type.Optional(Type.Literal(true)),
    difference: Type.Optional(Type.Literal(true)),
  }),
  Type.Object({
    place: Type.Number(),
    decimals: Type.Optional(Type.Integer()),
    fixed: Type.Optional(Type.Literal(true)),
  }),
]);
export const Parts = Type.Array(Part);
export type Parts = Static<typeof Parts>;

/** One term of a sum: what it is, how much, in which unit. */
export const Term = Type.Object({
  label: Type.String(),
  labelParts: Type.Optional(Parts),
  value: Type.Number(),
  unit: Type.String(),
});
export type Term = Static<typeof Term>;

/** A reason or caution with a stable code; the text is for people, in metric units, with parts where it has figures. */
export const Reason = Type.Object({ code: Type.String(), text: Type.String(), parts: Type.Optional(Parts) });
export type Reason = Static<typeof Reason>;

/** A caution, with the stretch of the route it speaks of where it has one (km along the route). */
export const Caution = Type.Object({
  code: Type.String(),
  text: Type.String(),
  parts: Type.Optional(Parts),
  fromKm: Type.Optional(Type.Number()),
  toKm: Type.Optional(Type.Number()),
});
export type Caution = Static<typeof Caution>;

/** A stretch of the route, km along it. */
export const Span = Type.Object({ fromKm: Type.Number(), toKm: Type.Number() });
export type Span = Static<typeof Span>;

/** [west, south, east, north] in degrees; west > east when it crosses the 180th meridian (RFC 7946, 5.2). */
export const Bbox = Type.Tuple([Type.Number(), Type.Number(), Type.Number(), Type.Number()]);
export type Bbox = Static<typeof Bbox>;

/** A calendar date, YYYY-MM-DD. */
export const IsoDate = Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}$' });

const closed = { additionalProperties: false } as const;
const lon = Type.Number({ minimum: -180, maximum: 180 });
const lat = Type.Number({ minimum: -90, maximum: 90 });

/** What a mapped object was when something was noted of it: its place, and the tags by which it was judged. */
export const ObjectThen = Type.Object(
  {
    lon,
    lat,
    tags: Type.Optional(
      Type.Record(Type.String({ maxLength: 255 }), Type.String({ maxLength: 1000 }), { maxProperties: 200 }),
    ),
    /** Ids of the other supplies that stood within 200 m. */
    near: Type.Optional(Type.Array(Type.String({ minLength: 1, maxLength: 200 }), { maxItems: 200 })),
  },
  closed,
);
export type ObjectThen = Static<typeof ObjectThen>;

/** Who said it, how they are asked again, and what they said. */
export const SAID_BY = {
  by: Type.Optional(Type.String({ minLength: 1, maxLength: 120 })),
  phone: Type.Optional(Type.String({ minLength: 1, maxLength: 60 })),
  words: Type.Optional(Type.String({ minLength: 1, maxLength: 500 })),
};
