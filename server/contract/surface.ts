import { type Static, Type } from 'typebox';

const closed = { additionalProperties: false } as const;

/** What is under the wheels, as far as it matters for fuel and pace; `unknown` where nothing is said. */
export const Surface = Type.Union([
  Type.Literal('sealed'),
  Type.Literal('gravel'),
  Type.Literal('track'),
  Type.Literal('sand'),
  Type.Literal('rock'),
  Type.Literal('mud'),
  Type.Literal('salt'),
  Type.Literal('unknown'),
]);
export type Surface = Static<typeof Surface>;

/** The surfaces in the order in which they are shown, best first. */
export const SURFACES = [
  'sealed',
  'gravel',
  'track',
  'sand',
  'rock',
  'mud',
  'salt',
  'unknown',
] as const satisfies readonly Surface[];

const kmAlong = Type.Number({ minimum: 0, maximum: 100_000 });

/**
 * A stretch of the route whose surface the user names, km along it. Where stretches overlap the later entry holds.
 * `allowancePercent` stands for that of the surface where the line is known to follow every bend, or not.
 */
export const SurfaceEntry = Type.Object(
  {
    fromKm: kmAlong,
    toKm: kmAlong,
    surface: Surface,
    allowancePercent: Type.Optional(Type.Number({ minimum: 0, maximum: 300 })),
  },
  closed,
);
export type SurfaceEntry = Static<typeof SurfaceEntry>;
