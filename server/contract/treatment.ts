import { type Static, Type } from 'typebox';
import { IsoDate, ObjectThen, Parts, Reason, SAID_BY, Term } from './common.ts';

const closed = { additionalProperties: false } as const;
const optional = <T extends Parameters<typeof Type.Optional>[0]>(schema: T) => Type.Optional(schema);
const log = Type.Number({ minimum: 0, maximum: 12 });
/** Up to 12 log. */
const percent = Type.Number({ minimum: 0, maximum: 99.9999999999 });
const litresPerMinute = Type.Number({ exclusiveMinimum: 0, maximum: 500 });
const turbidityNtu = Type.Number({ minimum: 0, maximum: 10_000 });
const pressureKPa = Type.Number({ exclusiveMinimum: 0, maximum: 10_000 });
const litres = Type.Number({ minimum: 0, maximum: 10_000_000 });

/** The classes of germs that targets speak of. */
export const GERM_CLASSES = ['bacteria', 'viruses', 'protozoa'] as const;
export type GermClass = (typeof GERM_CLASSES)[number];

/** Log10 reductions, one for each class: 3 means one in a thousand is left. */
export const Logs = Type.Object({ bacteria: log, viruses: log, protozoa: log }, closed);
export type Logs = Static<typeof Logs>;

export const StageKind = Type.Union([
  Type.Literal('sediment'),
  Type.Literal('carbon'),
  Type.Literal('microfilter'),
  Type.Literal('ultrafilter'),
  Type.Literal('reverse-osmosis'),
  Type.Literal('uv'),
  Type.Literal('chlorine'),
  Type.Literal('boiling'),
]);
export type StageKind = Static<typeof StageKind>;

/** Pressure lost at a stated flow. */
const PressureDrop = Type.Object(
  { kPa: Type.Number({ minimum: 0, maximum: 10_000 }), atLPerMin: litresPerMinute },
  closed,
);
export type PressureDrop = Static<typeof PressureDrop>;

/** One stage of the line. What fits only some kinds is refused elsewhere. */
export const TreatmentStage = Type.Object(
  {
    kind: StageKind,
    name: optional(Type.String({ minLength: 1, maxLength: 80 })),
    /** Log reductions as the maker states them; for classes left out see `poreMicron` and the kind. */
    logs: optional(
      Type.Object({ bacteria: optional(log), viruses: optional(log), protozoa: optional(log) }, closed),
    ),
    /** The same in percent stopped, where the maker states that: 94 is 1.22 log. */
    stopsPercent: optional(
      Type.Object(
        { bacteria: optional(percent), viruses: optional(percent), protozoa: optional(percent) },
        closed,
      ),
    ),
    /** Absolute pore size of a filter, micrometres. */
    poreMicron: optional(Type.Number({ exclusiveMinimum: 0, maximum: 1000 })),
    /** Cloudiness of the water that the stage still works with. */
    standsNtu: optional(turbidityNtu),
    /** Cloudiness that a filter leaves. */
    leavesNtu: optional(turbidityNtu),
    drop: optional(PressureDrop),
    /** Litres until it is clogged or spent, and litres that went through before this trip. */
    lifeLitres: optional(Type.Number({ exclusiveMinimum: 0, maximum: 10_000_000 })),
    usedLitres: optional(litres),
    backwash: optional(Type.Boolean()),
    mayHaveFrozen: optional(Type.Boolean()),
    /** Reverse osmosis: share of the water that becomes clean. */
    recovery: optional(Type.Number({ exclusiveMinimum: 0, maximum: 1 })),
    /** The most that reverse osmosis makes, that a UV lamp gives its dose to, or that a filter is rated for. */
    flowLPerMin: optional(litresPerMinute),
    /** UV dose at 254 nm at the end of the lamp's life. */
    doseMJPerCm2: optional(Type.Number({ exclusiveMinimum: 0, maximum: 1000 })),
    /** Chlorine: free chlorine dosed. */
    mgPerLitre: optional(Type.Number({ exclusiveMinimum: 0, maximum: 100 })),
    /** Strength of the product, percent of free chlorine (weight by volume); left out: bleach of 6 %. */
    productPercent: optional(Type.Number({ exclusiveMinimum: 0, maximum: 100 })),
    /** Chlorine: contact; boiling: rolling boil. */
    minutes: optional(Type.Number({ exclusiveMinimum: 0, maximum: 1440 })),
  },
  closed,
);
export type TreatmentStage = Static<typeof TreatmentStage>;

/** The kinds of source whose hazards differ. */
export const SourceKind = Type.Union([
  Type.Literal('piped-tap'),
  Type.Literal('village-well'),
  Type.Literal('bore'),
  Type.Literal('spring'),
  Type.Literal('river'),
  Type.Literal('rain-tank'),
  Type.Literal('unknown'),
]);
export type SourceKind = Static<typeof SourceKind>;

const Presence = Type.Union([Type.Literal('no'), Type.Literal('unknown'), Type.Literal('yes')]);
export type Presence = Static<typeof Presence>;

/** What may be in the water of a kind of source. */
export const Hazard = Type.Object(
  {
    /** Germs that must be taken out before drinking. */
    microbial: Type.Boolean(),
    /** `unknown`: only a dated note on salt makes it treatable. */
    salt: Presence,
    chemicals: Presence,
    turbidityNtu,
    why: Type.String({ maxLength: 300 }),
  },
  closed,
);
export type Hazard = Static<typeof Hazard>;

const HazardEntry = Type.Partial(Hazard, closed);

export const TapUse = Type.Union([Type.Literal('drinking'), Type.Literal('kitchen'), Type.Literal('shower')]);
export type TapUse = Static<typeof TapUse>;

export const NamedTarget = Type.Union([
  Type.Literal('purifier'),
  Type.Literal('two-star'),
  Type.Literal('three-star'),
]);
export type NamedTarget = Static<typeof NamedTarget>;

/** The treatment line of a rig: stages in the order in which water runs through them. */
export const TreatmentFile = Type.Object(
  {
    stages: Type.Array(TreatmentStage, { minItems: 1, maxItems: 20 }),
    /** Where it works: while the tank is filled, or between tank and tap. */
    at: optional(Type.Union([Type.Literal('filling'), Type.Literal('tap')])),
    /** All membranes of the line. */
    mayHaveFrozen: optional(Type.Boolean()),
    /** Pressure at no flow and at the rated flow. */
    pump: optional(
      Type.Object(
        {
          noFlowKPa: pressureKPa,
          ratedKPa: Type.Number({ minimum: 0, maximum: 10_000 }),
          ratedLPerMin: litresPerMinute,
        },
        closed,
      ),
    ),
    taps: optional(
      Type.Array(
        Type.Object(
          {
            name: Type.String({ minLength: 1, maxLength: 80 }),
            /** Number of the last stage before it, from 1; 0 taps the line before all. */
            afterStage: Type.Integer({ minimum: 0, maximum: 20 }),
            use: TapUse,
            measuredLPerMin: optional(Type.Number({ minimum: 0, maximum: 500 })),
            drop: optional(PressureDrop),
          },
          closed,
        ),
        { maxItems: 20 },
      ),
    ),
    /** Smooth hoses, each before the stage that follows `afterStage`. */
    hoses: optional(
      Type.Array(
        Type.Object(
          {
            afterStage: Type.Integer({ minimum: 0, maximum: 20 }),
            lengthM: Type.Number({ exclusiveMinimum: 0, maximum: 100 }),
            boreMm: Type.Number({ minimum: 2, maximum: 100 }),
          },
          closed,
        ),
        { maxItems: 40 },
      ),
    ),
    target: optional(Type.Union([NamedTarget, Logs])),
    /** The most that the stages together are credited with for a class. */
    maximumLog: optional(Type.Number({ minimum: 1, maximum: 12 })),
    /** Treat every source that is not confirmed, also those that others drink from untreated. */
    treatEverything: optional(Type.Boolean()),
    hazards: optional(
      Type.Object(
        {
          'piped-tap': optional(HazardEntry),
          'village-well': optional(HazardEntry),
          bore: optional(HazardEntry),
          spring: optional(HazardEntry),
          river: optional(HazardEntry),
          'rain-tank': optional(HazardEntry),
          unknown: optional(HazardEntry),
        },
        closed,
      ),
    ),
  },
  closed,
);
export type TreatmentFile = Static<typeof TreatmentFile>;

/** What the user found out about the water of one point. */
export const WaterNote = Type.Object(
  {
    id: Type.String({ minLength: 1, maxLength: 120 }),
    on: IsoDate,
    /** What it is, where the map does not tell or is wrong. */
    source: optional(SourceKind),
    /** Tested or tasted: no more salt than people drink. */
    saltOk: Type.Boolean(),
    /** From the ground to the water. */
    depthM: optional(Type.Number({ minimum: 0, maximum: 500 })),
    litresPerMinute: optional(litresPerMinute),
    turbidityNtu: optional(turbidityNtu),
    ph: optional(Type.Number({ minimum: 0, maximum: 14 })),
    temperatureC: optional(Type.Number({ minimum: 0, maximum: 100 })),
    /** Dissolved salts, or the conductivity that tells them: without one reverse osmosis counts for nothing against salt. */
    tdsMgPerLitre: optional(Type.Number({ minimum: 0, maximum: 300_000 })),
    conductivityMicroSPerCm: optional(Type.Number({ minimum: 0, maximum: 400_000 })),
    ...SAID_BY,
    was: optional(ObjectThen),
  },
  closed,
);
export type WaterNote = Static<typeof WaterNote>;

/** What the treatment line does, as reckoned with. */
export const TreatmentReport = Type.Object({
  at: Type.Union([Type.Literal('filling'), Type.Literal('tap')]),
  target: Type.Object({ name: Type.String(), logs: Logs }),
  maximumLog: Type.Number(),
  /** Sum of the stages before the drinking tap, capped, in clear water. */
  logs: Logs,
  meetsTarget: Type.Boolean(),
  /** Which classes fall short, and by how many log. */
  lacks: Type.Array(Type.Object({ germs: Type.String(), log: Type.Number() })),
  /** Takes out salt and chemicals. */
  desalts: Type.Boolean(),
  stages: Type.Array(
    Type.Object({
      name: Type.String(),
      kind: StageKind,
      /** In clear water. */
      logs: Logs,
      /** Where each figure comes from, or why it counts for nothing. */
      why: Type.Array(Type.String()),
      whyParts: optional(Type.Array(Parts)),
    }),
  ),
  taps: Type.Array(
    Type.Object({
      name: Type.String(),
      use: TapUse,
      afterStage: Type.Integer(),
      /** Null where neither measured nor to be estimated. */
      flowLPerMin: Type.Union([Type.Number(), Type.Null()]),
      flowFrom: Type.Union([Type.Literal('measured'), Type.Literal('estimate'), Type.Literal('unknown')]),
      logs: Logs,
      grade: Type.Union([Type.Literal('drinking'), Type.Literal('washing')]),
      starves: Type.Boolean(),
      /** Pressure of the pump at that flow, and what each part of the line takes of it. */
      working: Type.Array(Term),
    }),
  ),
  cartridges: Type.Array(
    Type.Object({
      name: Type.String(),
      /** On this trip. */
      litres: Type.Number(),
      lifeLitres: Type.Union([Type.Number(), Type.Null()]),
      /** Left at the end of the trip; negative when it does not last. */
      leftLitres: Type.Union([Type.Number(), Type.Null()]),
      backwash: Type.Boolean(),
      working: Type.Array(Term),
    }),
  ),
  /** For each kind of source, without a note of the user's on it. */
  sources: Type.Array(
    Type.Object({
      kind: SourceKind,
      treatable: Type.Boolean(),
      hazard: Hazard,
      logs: Logs,
      reasons: Type.Array(Type.String()),
      reasonsParts: optional(Type.Array(Parts)),
    }),
  ),
  cautions: Type.Array(Reason),
});
export type TreatmentReport = Static<typeof TreatmentReport>;
