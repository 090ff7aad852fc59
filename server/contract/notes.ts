import { type Static, Type } from 'typebox';
import { Commodity, IsoDate, ObjectThen, SAID_BY } from './common.ts';
import { Heat } from './crew.ts';
import { FuelKind } from './rig.ts';

const closed = { additionalProperties: false } as const;
const id = Type.String({ minLength: 1, maxLength: 200 });
const litres = Type.Number({ exclusiveMinimum: 0, maximum: 10_000 });
/** As OpenStreetMap writes them: "Mo-Sa 08:00-17:00". */
const hours = Type.String({ minLength: 1, maxLength: 255 });
const fuels = Type.Array(FuelKind, { minItems: 1, maxItems: 7 });
/** What a water is fit for: as it is, after treatment, or for washing only. */
const grade = Type.Union([Type.Literal('drinking'), Type.Literal('treatable'), Type.Literal('washing')]);
const kmAlong = Type.Number({ minimum: 0, maximum: 100_000 });

/**
 * What the user found out of one point: telephoned, asked, been there. `works: false` strikes it out; `words` say why.
 * Left out, `from` is the day of asking, and `until` goes by the departure.
 */
export const Confirmation = Type.Object(
  {
    id: Type.String({ minLength: 1 }),
    on: IsoDate,
    works: Type.Boolean(),
    commodity: Type.Optional(Commodity),
    ...SAID_BY,
    /** The first and the last day for which it holds. */
    from: Type.Optional(IsoDate),
    until: Type.Optional(IsoDate),
    was: Type.Optional(ObjectThen),
  },
  closed,
);
export type Confirmation = Static<typeof Confirmation>;

/**
 * What the map has wrong of one point. Salt, depth and flow of a water stand in `waterNotes`, litres, waiting and price
 * in `plan.stops`.
 */
export const Correction = Type.Object(
  {
    id,
    on: IsoDate,
    /** What is sold there, and nothing else. */
    fuels: Type.Optional(fuels),
    grade: Type.Optional(grade),
    openingHours: Type.Optional(hours),
    ...SAID_BY,
    was: Type.Optional(ObjectThen),
  },
  closed,
);
export type Correction = Static<typeof Correction>;

/**
 * A supply that no map has: a farm that agreed, a known seep, a depot off the road, a person who brings cans. It is
 * passed, and counts, like a point of the map. Its id among supplies is "own/noted/" and `id`.
 */
export const OwnPoint = Type.Object(
  {
    id: Type.String({ minLength: 1, maxLength: 80 }),
    name: Type.Optional(Type.String({ minLength: 1, maxLength: 120 })),
    /** Its co-ordinates in any usual notation: "33°52.1'S 84°12.4'E", "-33.8683, 84.2067". */
    at: Type.String({ minLength: 3, maxLength: 100 }),
    /** What is to be had: kinds of fuel, or water of a grade, or both. */
    fuels: Type.Optional(fuels),
    grade: Type.Optional(grade),
    /** No more than this. */
    litres: Type.Optional(Type.Object({ fuel: Type.Optional(litres), water: Type.Optional(litres) }, closed)),
    /** The first and the last day on which it is there. */
    from: Type.Optional(IsoDate),
    until: Type.Optional(IsoDate),
    openingHours: Type.Optional(hours),
    website: Type.Optional(Type.String({ minLength: 1, maxLength: 500 })),
    /** The day on which it was noted. */
    on: IsoDate,
    ...SAID_BY,
  },
  closed,
);
export type OwnPoint = Static<typeof OwnPoint>;

/** A stretch of the route on which nobody may drive, km along it, and between which days. */
export const ClosedStretch = Type.Object(
  {
    fromKm: kmAlong,
    toKm: kmAlong,
    from: Type.Optional(IsoDate),
    until: Type.Optional(IsoDate),
    on: IsoDate,
    ...SAID_BY,
  },
  closed,
);
export type ClosedStretch = Static<typeof ClosedStretch>;

/**
 * The heat on a stretch of the route, km along it: there the crew drinks by it, where that is more. Sun, work and its
 * hours are those of the crew's own heat where they are left out. Where stretches overlap the hotter one holds.
 */
export const HeatStretch = Type.Object(
  { fromKm: kmAlong, toKm: kmAlong, ...Heat.properties, on: IsoDate, ...SAID_BY },
  closed,
);
export type HeatStretch = Static<typeof HeatStretch>;

/** What a trip file may note of supplies and of the road, beyond what is told elsewhere in it. */
export const NOTES_DETAIL = {
  /** What the user found out about single points: telephoned, asked, been there. */
  confirmations: Type.Optional(Type.Array(Confirmation, { maxItems: 5000 })),
  /** What the map has wrong of single points. */
  corrections: Type.Optional(Type.Array(Correction, { maxItems: 5000 })),
  /** Supplies of the user's own at any place. */
  ownPoints: Type.Optional(Type.Array(OwnPoint, { maxItems: 1000 })),
  /** Stretches on which nobody may drive. */
  closed: Type.Optional(Type.Array(ClosedStretch, { maxItems: 500 })),
  /** Stretches on which it is hotter than the crew's own heat. */
  heat: Type.Optional(Type.Array(HeatStretch, { maxItems: 500 })),
};
