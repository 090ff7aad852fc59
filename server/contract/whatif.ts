import { type Static, Type } from 'typebox';
import { Caution, Commodity, Evidence, Parts, Verdict } from './common.ts';
import { Plan, PlanEdge } from './plan.ts';

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const closed = { additionalProperties: false } as const;

/** What of the what-ifs can be chosen; each has a default of ours. */
export const WhatIfAsk = Type.Object(
  {
    waitDays: Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 30 })),
    hotterByC: Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 20 })),
    /** Turn round here; left out, at the worst place. */
    turnRoundAtKm: Type.Optional(Type.Number({ minimum: 0, maximum: 100_000 })),
  },
  closed,
);
export type WhatIfAsk = Static<typeof WhatIfAsk>;

/** What a trip file may ask of the what-ifs. */
export const WHAT_IF_DETAIL = { whatIf: Type.Optional(WhatIfAsk) };

/** What everything is reckoned with: the plan, or, where there is none, full tanks at every passing and empty cans. */
export const Basis = Type.Union([Type.Literal('plan'), Type.Literal('gaps')]);
export type Basis = Static<typeof Basis>;

export const WhatIfKind = Type.Union([
  Type.Literal('stop-fails'),
  Type.Literal('container-lost'),
  Type.Literal('pump-fails'),
  Type.Literal('wait'),
  Type.Literal('low-use'),
  Type.Literal('typical-use'),
  Type.Literal('high-use'),
  Type.Literal('hotter'),
  Type.Literal('treatment-fails'),
  Type.Literal('turn-round'),
]);
export type WhatIfKind = Static<typeof WhatIfKind>;

/** One thing that goes wrong, for one commodity, where it does most harm; litres at the rate the verdict uses. */
export const WhatIfRow = Type.Object({
  kind: WhatIfKind,
  commodity: Commodity,
  /** What happens, in words. */
  text: Type.String(),
  parts: Type.Optional(Parts),
  /** The stop that fails. */
  id: nullable(Type.String()),
  /** Where it happens: the stop, or the worst place. Null for what holds all the way. */
  atKm: nullable(Type.Number()),
  /** Litres lost there, or used by waiting there. */
  lostL: nullable(Type.Number()),
  /** The stretch that it makes worst: from the supply behind to the next that is used. */
  from: PlanEdge,
  to: PlanEdge,
  /** What then does better: going on to `to`, or back to `from`. */
  next: Type.Union([Type.Literal('on'), Type.Literal('back')]),
  verdict: Verdict,
  /** On arrival by `next`; negative: missing. Of drinking grade, where that is less. */
  arriveL: Type.Number(),
  marginL: Type.Number(),
  /** Going back to `from` from there; null where the way cannot be driven back or there is no such place. */
  backMarginL: nullable(Type.Number()),
  /** Where nothing is left; null when it arrives. */
  endsAtKm: nullable(Type.Number()),
  /** What would have brought it there with nothing left, and with the reserve. */
  missingL: Type.Number(),
  coverL: Type.Number(),
  /** Cans that hold `coverL`. */
  coverCans: Type.Integer(),
  /** Up to here the supply behind can be regained with the reserve, if it has happened or happens here. */
  turnBackKm: nullable(Type.Number()),
  /** A supply that counts and the plan passes by, by way of which most is left; the figures are by way of it. */
  instead: nullable(Type.Object({ at: PlanEdge, marginL: Type.Number() })),
});
export type WhatIfRow = Static<typeof WhatIfRow>;

/** What one assumption does to the least margin of a commodity when it is moved by one step. */
export const Matter = Type.Object({
  assumption: Type.Union([
    Type.Literal('use'),
    Type.Literal('pace'),
    Type.Literal('allowance'),
    Type.Literal('heat'),
  ]),
  /** The step, in words. */
  step: Type.String(),
  stepParts: Type.Optional(Parts),
  commodity: Commodity,
  beforeL: Type.Number(),
  afterL: Type.Number(),
  /** Never invented odds: only what the step does. */
  changeL: Type.Number(),
  /** The change as a share of what the fixed tanks give. */
  ofTanks: Type.Number(),
});
export type Matter = Static<typeof Matter>;

/** The last place from which the supply behind can be regained with the reserve. */
export const TurnBack = Type.Object({
  atKm: Type.Number(),
  commodity: Commodity,
  backTo: PlanEdge,
  backToKm: Type.Number(),
  /** Where the way leads on to. */
  towards: PlanEdge,
  /** No turn-back point of the other commodity was passed before on the same stretch: this is the one to mind. */
  first: Type.Boolean(),
  text: Type.String(),
  parts: Type.Optional(Parts),
});
export type TurnBack = Static<typeof TurnBack>;

/** A stop to check before leaving: the first are those without which most fails. */
export const CallFirst = Type.Object({
  id: Type.String(),
  name: nullable(Type.String()),
  kind: Type.String(),
  atKm: Type.Number(),
  lon: Type.Number(),
  lat: Type.Number(),
  /** What it is and where: "drinking-water tap, km 87, 1.2 km N of Ollin". */
  where: Type.String(),
  whereParts: Type.Optional(Parts),
  evidence: Evidence,
  /** ISO date of the last edit or check on the spot; null where none is known. */
  seenOn: nullable(Type.String()),
  /** What the user confirmed of it and it counts by; null where nothing is confirmed, or no longer. */
  confirmation: nullable(
    Type.Object({
      on: Type.String(),
      by: Type.Optional(Type.String()),
      phone: Type.Optional(Type.String()),
      words: Type.Optional(Type.String()),
      /** The first day on which it is to be confirmed again before leaving; null where that is not needed. */
      againFrom: nullable(Type.String()),
    }),
  ),
  /** The user's own, on no map: laid, or noted at its place. */
  isOwn: Type.Boolean(),
  /** The worst verdict when it fails. */
  verdict: Verdict,
  fails: Type.Array(
    Type.Object({
      commodity: Commodity,
      verdict: Verdict,
      to: PlanEdge,
      marginL: Type.Number(),
      coverL: Type.Number(),
    }),
  ),
  /** As its tags say; null where they do not. */
  phone: nullable(Type.String()),
  website: nullable(Type.String()),
  openingHours: nullable(Type.String()),
});
export type CallFirst = Static<typeof CallFirst>;

export const WhatIf = Type.Object({
  basis: Basis,
  rows: Type.Array(WhatIfRow),
  /** Most harm first. */
  matters: Type.Array(Matter),
  turnBacks: Type.Array(TurnBack),
  callFirst: Type.Array(CallFirst),
  /** What was left out, and why. */
  cautions: Type.Array(Caution),
});
export type WhatIf = Static<typeof WhatIf>;

/** The least to have aboard of one commodity at a place, litres of all that can be used. */
export const GaugeSide = Type.Object({
  /** To go on to the next supply that is used, with the reserve. */
  onL: Type.Number(),
  /** To go back to the supply behind, with the reserve; null where the way cannot be driven back. */
  backL: nullable(Type.Number()),
  /** Aboard there by the plan. */
  plannedL: Type.Number(),
  from: PlanEdge,
  to: PlanEdge,
});
export type GaugeSide = Static<typeof GaugeSide>;

/** One line of the gauge table. At a stop there are two: on arriving, and on leaving with what is filled there. */
export const GaugeRow = Type.Object({
  atKm: Type.Number(),
  at: Type.Union([
    Type.Literal('start'),
    Type.Literal('step'),
    Type.Literal('arriving'),
    Type.Literal('leaving'),
    Type.Literal('turn-back'),
    Type.Literal('end'),
  ]),
  /** Of the stop, or of what the turn-back point leads back to. */
  name: nullable(Type.String()),
  /** Whose stop or turn-back point it is. */
  commodities: Type.Array(Commodity),
  fuel: GaugeSide,
  water: GaugeSide,
});
export type GaugeRow = Static<typeof GaugeRow>;

export const Gauge = Type.Object({ basis: Basis, stepKm: Type.Number(), rows: Type.Array(GaugeRow) });
export type Gauge = Static<typeof Gauge>;

/** Reply to POST /api/analyses/{id}/plan. */
export const PlanReply = Type.Object({ plan: Plan, whatIf: WhatIf, gauge: Gauge });
export type PlanReply = Static<typeof PlanReply>;
