import { type Static, Type } from 'typebox';
import { Edge, Extract } from '../analysis.ts';
import { Caution, Reason, Verdict } from '../common.ts';
import { RigFile } from '../rig.ts';
import { TripFile } from '../trip.ts';
import { AxleLoad, MassState } from '../vehicle.ts';

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);

/** Rigs that one comparison takes at most: each is an analysis of its own. */
export const MAX_COMPARED = 12;

const words = (expected: string) => ({
  'x-words': {
    expected,
    remedy: 'Send { "rigs": [ … ], "trip": … } as JSON; the trip may be left out',
  },
});

/** Body of POST /api/analyses/{id}/compare. */
export const CompareRequest = Type.Object(
  {
    rigs: Type.Array(RigFile, { minItems: 1, maxItems: MAX_COMPARED, ...words(`1 to ${MAX_COMPARED} rigs`) }),
    trip: Type.Optional(TripFile),
  },
  { additionalProperties: false, ...words('rigs and trip') },
);
export type CompareRequest = Static<typeof CompareRequest>;

/** A gap in short, as for a bar of a picture. */
export const ComparedGap = Type.Object({
  fromKm: Type.Number(),
  toKm: Type.Number(),
  verdict: Verdict,
  acrossNoData: Type.Boolean(),
  marginL: Type.Number(),
});
export type ComparedGap = Static<typeof ComparedGap>;

/** How one rig fares with one commodity. */
export const ComparedCommodity = Type.Object({
  /** Drawable litres of the fixed tanks. */
  capacityL: Type.Number(),
  canL: Type.Number(),
  cansOwned: Type.Integer(),
  /** The gap of the worst verdict (short, unknown, into-reserve, enough), of these the one of least margin. */
  worst: Type.Object({
    /** Index in `gaps`. */
    index: Type.Integer(),
    from: Edge,
    to: Edge,
    lengthKm: Type.Number(),
    verdict: Verdict,
    acrossNoData: Type.Boolean(),
    needL: Type.Number(),
    reserveL: Type.Number(),
    marginL: Type.Number(),
  }),
  /** The most that any one gap lacks, the cans that hold it, and those of them that are not owned. */
  extraL: Type.Number(),
  extraCans: Type.Integer(),
  cansMissing: Type.Integer(),
  /** How many gaps have each verdict. */
  verdicts: Type.Object({
    enough: Type.Integer(),
    'into-reserve': Type.Integer(),
    short: Type.Integer(),
    unknown: Type.Integer(),
  }),
  gaps: Type.Array(ComparedGap),
});
export type ComparedCommodity = Static<typeof ComparedCommodity>;

/** Of which state of the mass report a figure is; `atKm` for a place along the route. */
const When = { when: MassState.properties.kind, atKm: nullable(Type.Number()) };
const Figure = Type.Object({ value: Type.Number(), ...When });
const Axle = Type.Object({ ...AxleLoad.properties, ...When });

/** The loaded vehicle at its worst, over departure, all full, all empty and the worst places along the route. */
export const ComparedMass = Type.Object({
  departure: MassState,
  totalKg: Figure,
  /** Least permitted less total; null where not told. */
  payloadLeftKg: nullable(Figure),
  front: nullable(Axle),
  rear: nullable(Axle),
  /** On the right wheels less on the left ones, the greatest either way. */
  sideKg: nullable(Figure),
  cgHeightM: nullable(Figure),
  /** The least. */
  stabilityFactor: nullable(Figure),
});
export type ComparedMass = Static<typeof ComparedMass>;

/** One rig's row. */
export const ComparedRig = Type.Object({
  /** As its file names it, made unlike the others' where two are alike. */
  name: Type.String(),
  fuel: ComparedCommodity,
  water: ComparedCommodity,
  /** From departure to the end of the route, nights and stays included. */
  days: Type.Object({ slow: Type.Number(), typical: Type.Number(), fast: Type.Number() }),
  /** Null for a rig that does not tell its vehicle's mass. */
  mass: nullable(ComparedMass),
  /** Those of its own analysis that not every rig shares. */
  cautions: Type.Array(Caution),
});
export type ComparedRig = Static<typeof ComparedRig>;

/** Several rigs on one route: reply to POST /api/analyses/{id}/compare and `drystage compare --json`. */
export const Comparison = Type.Object({
  route: Type.Object({ name: Type.String(), lengthKm: Type.Number() }),
  /** Set when the land is invented and must not be driven by. */
  notice: nullable(Type.String()),
  extracts: Type.Array(Extract),
  rigs: Type.Array(ComparedRig),
  /** Cautions that every rig's analysis has, and those of the comparison itself. */
  cautions: Type.Array(Caution),
  standing: Type.Array(Reason),
});
export type Comparison = Static<typeof Comparison>;
