import { type Static, Type } from 'typebox';
import { Bbox } from '../common.ts';

/** Map data of a route's corridor, asked of an Overpass server. Nothing is sent before a user has seen what. */

const closed = { additionalProperties: false } as const;
const told = (expected: string, remedy: string) => ({ 'x-words': { expected, remedy } });

/** A corridor wider than this is no corridor: an extract serves better. Ours. */
export const WIDEST_CORRIDOR_KM = 50;

/** Kilometres on either side of the route. */
const AskedCorridorKm = Type.Number({
  exclusiveMinimum: 0,
  maximum: WIDEST_CORRIDOR_KM,
  examples: [5],
  ...told(`kilometres above 0 and at most ${WIDEST_CORRIDOR_KM}`, 'Ask for a narrower corridor'),
});

/** GET /api/trips/{id}/overpass: what would be asked. */
export const OverpassQuestion = Type.Object({
  /** Whom, and who asks. */
  address: Type.String(),
  userAgent: Type.String(),
  corridorKm: Type.Number(),
  /** Queries, one for each box along the route, sent one at a time. */
  requests: Type.Integer(),
  /** Those of them that were answered in the last days, and are not sent again. */
  answered: Type.Integer(),
  boxes: Type.Array(Bbox),
  /** The text of the first query; the others have another box in it. */
  query: Type.String(),
  /** Names all of this. */
  digest: Type.String(),
});
export type OverpassQuestion = Static<typeof OverpassQuestion>;

/** Body of POST /api/trips/{id}/overpass: asks what the question said, and keeps the answer as an extract. */
export const OverpassAsk = Type.Object(
  {
    /** The question's: nothing else than what was seen is sent. */
    digest: Type.String({ maxLength: 100 }),
    corridorKm: AskedCorridorKm,
    name: Type.String({
      minLength: 1,
      maxLength: 120,
      pattern: '\\S',
      ...told('a name of 1 to 120 characters', 'Give it a name'),
    }),
  },
  { ...closed, examples: [{ digest: '5f4e4d559d0c3b1f', corridorKm: 5, name: 'Corridor of the demo' }] },
);
export type OverpassAsk = Static<typeof OverpassAsk>;
