import { type Static, Type } from 'typebox';
import { Commodity, IsoDate } from './common.ts';

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
