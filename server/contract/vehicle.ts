import { type Static, Type } from 'typebox';
import { Parts, Term } from './common.ts';

const closed = { additionalProperties: false } as const;
const optional = <T extends Parameters<typeof Type.Optional>[0]>(schema: T) => Type.Optional(schema);
const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const kg = Type.Number({ minimum: 0, maximum: 60_000 });
const limitKg = Type.Number({ exclusiveMinimum: 0, maximum: 60_000 });
const itemKg = Type.Number({ exclusiveMinimum: 0, maximum: 10_000 });
const name = Type.String({ minLength: 1, maxLength: 80 });

/** Where something's own centre of gravity is: metres. */
export const Position = Type.Object(
  {
    /** Behind the front axle; negative ahead of it. */
    behindFrontAxleM: Type.Number({ minimum: -4, maximum: 20 }),
    /** Above the ground. */
    heightM: Type.Number({ minimum: 0, maximum: 4.5 }),
    /** From the middle: left negative, right positive; 0 when left out. */
    sideM: optional(Type.Number({ minimum: -2, maximum: 2 })),
  },
  closed,
);
export type Position = Static<typeof Position>;

/** What a tank of the rig may say of its mass. */
export const TANK_MASS = {
  /**
   * Mass of the empty tank where it was fitted after the kerb mass was taken. Left out, the tank is part of the kerb
   * mass, and so is as much in it as the kerb mass includes.
   */
  emptyKg: optional(Type.Number({ minimum: 0, maximum: 1000 })),
  position: optional(Position),
  /** What is written on it: approval, age, grade. */
  marking: optional(Type.String({ maxLength: 200 })),
};

/** What the cans of the rig may say of their mass. */
export const CAN_MASS = {
  /** Mass of one empty can. */
  emptyKg: optional(Type.Number({ minimum: 0, maximum: 100 })),
  /** Of all of them together. */
  position: optional(Position),
  marking: optional(Type.String({ maxLength: 200 })),
};

/**
 * What the kerb mass includes. `running-order`: tanks at 90 % and a driver of 75 kg, as "mass in running order" of EU
 * type approval has it. `full-fuel-no-driver`: as "curb weight" of US papers has it.
 */
export const KerbIncludes = Type.Union([
  Type.Literal('running-order'),
  Type.Literal('full-fuel-no-driver'),
  Type.Object(
    {
      fuelPercent: Type.Number({ minimum: 0, maximum: 100 }),
      driverKg: Type.Number({ minimum: 0, maximum: 200 }),
      waterPercent: optional(Type.Number({ minimum: 0, maximum: 100 })),
    },
    closed,
  ),
]);
export type KerbIncludes = Static<typeof KerbIncludes>;

const Load = Type.Object({ name, kg: itemKg, position: optional(Position) }, closed);
const Being = Type.Object({ name: optional(name), kg: itemKg, position: optional(Position) }, closed);
const metres = (minimum: number, maximum: number) => Type.Number({ minimum, maximum });

/** The vehicle as it stands: masses, measures, what rides in it. All but the kerb mass may be left out. */
export const Vehicle = Type.Object(
  {
    kerbKg: Type.Number({ minimum: 100, maximum: 60_000 }),
    includes: optional(KerbIncludes),
    /** Loads of both axles at kerb mass, from a weighbridge or the papers. */
    axleKg: optional(Type.Object({ front: limitKg, rear: limitKg }, closed)),
    wheelbaseM: optional(metres(1, 12)),
    trackM: optional(metres(0.5, 3)),
    /** Height of the centre of gravity at kerb mass. */
    cgHeightM: optional(metres(0.1, 3)),
    /**
     * In place of `cgHeightM`: one axle lifted at kerb mass, in steps, and what then rests on the other. Springs
     * blocked, gears in neutral, wheels free, tank full.
     */
    axleLift: optional(
      Type.Object(
        {
          lifted: Type.Union([Type.Literal('front'), Type.Literal('rear')]),
          wheelRadiusM: metres(0.1, 1),
          steps: Type.Array(
            Type.Object({ degrees: Type.Number({ minimum: 1, maximum: 45 }), groundAxleKg: limitKg }, closed),
            { minItems: 1, maxItems: 20 },
          ),
        },
        closed,
      ),
    ),
    /** From the middle to the centre of gravity at kerb mass, left negative. */
    cgSideM: optional(metres(-0.5, 0.5)),
    /** From the rear axle to the rear of the body, racks and carriers not counted. */
    bodyRearOverhangM: optional(metres(0, 6)),
    /** The room that people sit or sleep in, for the caution on fuel in it, and where the roof begins. */
    cabin: optional(
      Type.Object(
        {
          fromM: metres(-4, 20),
          toM: metres(-4, 20),
          floorHeightM: metres(0, 3),
          roofHeightM: metres(0.5, 4.5),
        },
        closed,
      ),
    ),
    /** The most that the makers or the papers permit. */
    permitted: optional(
      Type.Object(
        {
          totalKg: optional(limitKg),
          frontKg: optional(limitKg),
          rearKg: optional(limitKg),
          roofKg: optional(kg),
        },
        closed,
      ),
    ),
    /** The first is the driver. */
    people: optional(Type.Array(Being, { maxItems: 60 })),
    pets: optional(Type.Array(Being, { maxItems: 60 })),
    gear: optional(Type.Array(Load, { maxItems: 300 })),
    /** How several tanks of one commodity empty: in the order listed, or all alike; left out, the worse is taken. */
    tanksEmpty: optional(Type.Union([Type.Literal('in-order'), Type.Literal('together')])),
  },
  closed,
);
export type Vehicle = Static<typeof Vehicle>;

/** An axle's load against its limit; negative `leftKg`: over it. */
export const AxleLoad = Type.Object({
  kg: Type.Number(),
  limitKg: nullable(Type.Number()),
  leftKg: nullable(Type.Number()),
});
export type AxleLoad = Static<typeof AxleLoad>;

/** For what a state is the worst. `side`: left against right. */
export const WorstFor = Type.Union([
  Type.Literal('total'),
  Type.Literal('front'),
  Type.Literal('rear'),
  Type.Literal('side'),
  Type.Literal('stability'),
]);
export type WorstFor = Static<typeof WorstFor>;

/** The loaded vehicle at one moment. What is null could not be told from what the rig says. */
export const MassState = Type.Object({
  /** `departure`; `full`: all tanks and all owned cans; `empty`: nothing usable left; `along`: a worst place on the way. */
  kind: Type.Union([
    Type.Literal('departure'),
    Type.Literal('full'),
    Type.Literal('empty'),
    Type.Literal('along'),
  ]),
  /** Among all places of the route; only of `along`. */
  worstFor: Type.Array(WorstFor),
  atKm: nullable(Type.Number()),
  /** Usable litres aboard, cans included. */
  fuelL: Type.Number(),
  waterL: Type.Number(),
  totalKg: Type.Number(),
  /** Permitted less total; negative: over it. */
  payloadLeftKg: nullable(Type.Number()),
  front: nullable(AxleLoad),
  rear: nullable(AxleLoad),
  /** On the right wheels less on the left ones. */
  sideKg: nullable(Type.Number()),
  cgHeightM: nullable(Type.Number()),
  /** Static stability factor: track / (2 × height of the centre of gravity). */
  stabilityFactor: nullable(Type.Number()),
});
export type MassState = Static<typeof MassState>;

/** What one tank, or the cans of one commodity together, do to the vehicle. */
export const ContainerEffect = Type.Object({
  /** In the rig file: "/fuel/tanks/0", "/water/cans". */
  path: Type.String(),
  name: Type.String(),
  nameParts: optional(Parts),
  commodity: Type.Union([Type.Literal('fuel'), Type.Literal('water')]),
  fixed: Type.Boolean(),
  /** When filled as far as it may be. */
  litres: Type.Number(),
  unusableLitres: Type.Number(),
  /** Mass added to the vehicle's own by the container itself; 0 for a tank that the kerb mass includes. */
  emptyKg: Type.Number(),
  kgPerLitre: Type.Number(),
  position: nullable(Position),
  marking: nullable(Type.String()),
  /** Added by one litre. */
  perLitre: nullable(
    Type.Object({ frontKg: Type.Number(), rearKg: Type.Number(), sideKg: nullable(Type.Number()) }),
  ),
  /** Added by it and a filling, to the vehicle with all containers empty and without this one. */
  whenFull: Type.Object({
    totalKg: Type.Number(),
    frontKg: nullable(Type.Number()),
    rearKg: nullable(Type.Number()),
    sideKg: nullable(Type.Number()),
    cgHeightM: nullable(Type.Number()),
    stabilityFactor: nullable(Type.Number()),
  }),
});
export type ContainerEffect = Static<typeof ContainerEffect>;

/** A rule of some country on fuel that is carried: an example, the rules of the place come first. */
export const FuelLimit = Type.Object({
  code: Type.String(),
  text: Type.String(),
  parts: optional(Parts),
  carried: Type.Number(),
  limit: Type.Number(),
  unit: Type.Union([Type.Literal('l'), Type.Literal('kg')]),
  over: Type.Boolean(),
  source: Type.String(),
});
export type FuelLimit = Static<typeof FuelLimit>;

/** What the loaded vehicle weighs, and where. */
export const MassReport = Type.Object({
  /** Departure, full, empty, then the worst places along the route in its order. */
  states: Type.Array(MassState),
  containers: Type.Array(ContainerEffect),
  roof: nullable(Type.Object({ kg: Type.Number(), limitKg: nullable(Type.Number()) })),
  /** Behind the rear axle when full: its mass, and what it does to the axles. */
  behindRearAxle: nullable(Type.Object({ kg: Type.Number(), frontKg: Type.Number(), rearKg: Type.Number() })),
  fuelLimits: Type.Array(FuelLimit),
  /** What a litre is taken to weigh, and who says so. */
  densities: Type.Array(
    Type.Object({
      what: Type.String(),
      kgPerLitre: Type.Number(),
      source: Type.String(),
      sourceParts: optional(Parts),
    }),
  ),
  /** Paths in the rig of what is missing for a figure that is null. */
  missing: Type.Array(Type.String()),
  /** What the figures at departure were summed from. */
  working: Type.Object({
    totalKg: Type.Array(Term),
    frontKg: Type.Array(Term),
    rearKg: Type.Array(Term),
  }),
});
export type MassReport = Static<typeof MassReport>;
