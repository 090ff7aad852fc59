import { type Static, Type } from 'typebox';
import { CONTAINER_GRADE, Crew, TANK_GRADE } from './crew.ts';
import type { FileKind } from './file-kind.ts';
import { FUEL_DETAIL } from './fuel-use.ts';
import { PACE_DETAIL } from './pace.ts';
import { TreatmentFile } from './treatment.ts';
import { CAN_MASS, TANK_MASS, Vehicle } from './vehicle.ts';

const closed = { additionalProperties: false } as const;
const litres = (maximum: number) => Type.Number({ exclusiveMinimum: 0, maximum });
const share = Type.Number({ minimum: 0, maximum: 1 });
const fillPercent = Type.Number({ exclusiveMinimum: 0, maximum: 100 });

/** A range of use: one number is the typical value, from which the file's reader takes the bounds. */
const rangeOfUse = (maximum: number) =>
  Type.Union([
    Type.Number({ exclusiveMinimum: 0, maximum }),
    Type.Object({ low: litres(maximum), typical: litres(maximum), high: litres(maximum) }, closed),
  ]);

const TANK = {
  name: Type.String({ minLength: 1, maxLength: 80 }),
  litres: litres(5000),
  unusableLitres: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
  /** How full it is filled at most. */
  fillPercent: Type.Optional(fillPercent),
  ...TANK_MASS,
};
const Tank = Type.Object(TANK, closed);
const WaterTank = Type.Object({ ...TANK, ...TANK_GRADE }, closed);

const CANS = {
  litres: litres(250),
  owned: Type.Integer({ minimum: 0, maximum: 200 }),
  fillPercent: Type.Optional(fillPercent),
  ...CAN_MASS,
};
const Cans = Type.Object(CANS, closed);
const WaterCans = Type.Object({ ...CANS, ...CONTAINER_GRADE }, closed);

export const FuelKind = Type.Union([
  Type.Literal('diesel'),
  Type.Literal('petrol'),
  Type.Literal('lpg'),
  Type.Literal('cng'),
  Type.Literal('lng'),
  Type.Literal('e85'),
  Type.Literal('kerosene'),
]);
export type FuelKind = Static<typeof FuelKind>;

const FuelReserve = Type.Object(
  {
    km: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
    litres: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
    fraction: Type.Optional(share),
    shareOfNeed: Type.Optional(share),
  },
  closed,
);

const WaterReserve = Type.Object(
  {
    days: Type.Optional(Type.Number({ minimum: 0, maximum: 100 })),
    litres: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
    fraction: Type.Optional(share),
    shareOfNeed: Type.Optional(share),
  },
  closed,
);

const speed = Type.Number({ exclusiveMinimum: 0, maximum: 200 });

/** The rig file as a person writes it: litres, km, hours. What it leaves out gets a stated default. */
export const RigFile = Type.Object(
  {
    name: Type.Optional(Type.String({ maxLength: 120 })),
    fuel: Type.Object(
      {
        kind: FuelKind,
        litresPer100Km: rangeOfUse(200),
        tanks: Type.Array(Tank, { minItems: 1, maxItems: 20 }),
        cans: Type.Optional(Cans),
        reserve: Type.Optional(FuelReserve),
        ...FUEL_DETAIL,
      },
      closed,
    ),
    water: Type.Object(
      {
        /** Of all aboard; may be left out where a crew is told. */
        litresPerDay: Type.Optional(rangeOfUse(1000)),
        /** None where all water is in cans. */
        tanks: Type.Array(WaterTank, { maxItems: 20 }),
        cans: Type.Optional(WaterCans),
        reserve: Type.Optional(WaterReserve),
      },
      closed,
    ),
    pace: Type.Object(
      {
        hoursPerDay: Type.Number({ exclusiveMinimum: 0, maximum: 24 }),
        kmPerHour: Type.Union([speed, Type.Object({ slow: speed, typical: speed, fast: speed }, closed)]),
        ...PACE_DETAIL,
      },
      closed,
    ),
    /** Who drinks from the tanks, how much, in what heat. */
    crew: Type.Optional(Crew),
    /** What makes water fit to drink, stage by stage. */
    treatment: Type.Optional(TreatmentFile),
    /** What it weighs, what it may weigh, who and what rides in it. */
    vehicle: Type.Optional(Vehicle),
    /** Paths of figures outside their usual range that are meant so, like "/pace/kmPerHour". */
    sure: Type.Optional(Type.Array(Type.String({ minLength: 2, maxLength: 200 }), { maxItems: 200 })),
    equipment: Type.Optional(Type.Object({ ropeAndBucket: Type.Optional(Type.Boolean()) }, closed)),
  },
  { ...closed, 'x-file': 'rig' satisfies FileKind },
);
export type RigFile = Static<typeof RigFile>;
