import { type Static, Type } from 'typebox';
import { Term } from './common.ts';
import { Surface } from './surface.ts';

const closed = { additionalProperties: false } as const;
const factor = Type.Number({ minimum: 0.5, maximum: 10 });
const litresPerHour = Type.Number({ minimum: 0, maximum: 100 });
const hours = Type.Number({ minimum: 0, maximum: 24 });
const optional = <T extends Parameters<typeof Type.Optional>[0]>(schema: T) => Type.Optional(schema);

/** What a rig file may say of its fuel beyond kind, rate, tanks and reserve; each part is optional. */
export const FUEL_DETAIL = {
  /** Surface and mass at which `litresPer100Km` was observed. */
  observed: optional(
    Type.Object(
      {
        surface: optional(Surface),
        massKg: optional(Type.Number({ minimum: 100, maximum: 60_000 })),
      },
      closed,
    ),
  ),
  /** Use on each surface as a multiple of that on sealed road. */
  surfaceFactors: optional(
    Type.Object(
      {
        sealed: optional(factor),
        gravel: optional(factor),
        track: optional(factor),
        sand: optional(factor),
        rock: optional(factor),
        mud: optional(factor),
        salt: optional(factor),
        unknown: optional(factor),
      },
      closed,
    ),
  ),
  /** Litres per hour: engine idling, crawling along, standing with air conditioning on, heater or generator by night. */
  perHour: optional(
    Type.Object(
      {
        idling: optional(litresPerHour),
        crawling: optional(litresPerHour),
        airConditioning: optional(litresPerHour),
        heater: optional(litresPerHour),
      },
      closed,
    ),
  ),
  /** Hours of idling in a day of driving, of standing with air conditioning on in any day, of heater in a night. */
  hours: optional(
    Type.Object(
      {
        idlingPerDay: optional(hours),
        airConditioningPerDay: optional(hours),
        heaterPerNight: optional(hours),
      },
      closed,
    ),
  ),
  /** Share of the fuel's energy that lifts, share of a descent's energy that spares fuel, and metres of noise. */
  climb: optional(
    Type.Object(
      {
        efficiency: optional(Type.Number({ minimum: 0.05, maximum: 0.6 })),
        giveBack: optional(Type.Number({ minimum: 0, maximum: 1 })),
        thresholdM: optional(Type.Number({ minimum: 0, maximum: 200 })),
      },
      closed,
    ),
  ),
  /** By how many percent use rises for each 100 kg above the observed mass. */
  loadPercentPer100Kg: optional(Type.Number({ minimum: 0, maximum: 20 })),
  /** What the engine takes: lowest octane number (RON), most ethanol and most biodiesel, percent. */
  engine: optional(
    Type.Object(
      {
        octane: optional(Type.Number({ minimum: 70, maximum: 110 })),
        ethanolPercent: optional(Type.Number({ minimum: 0, maximum: 100 })),
        biodieselPercent: optional(Type.Number({ minimum: 0, maximum: 100 })),
      },
      closed,
    ),
  ),
  /** Urea solution for cleaning the exhaust, where the engine needs it. */
  urea: optional(
    Type.Object(
      {
        /** By the way, or by the fuel that is burnt, percent of it (makers say 2 to 6): one of the two. */
        litresPer1000Km: optional(Type.Number({ exclusiveMinimum: 0, maximum: 200 })),
        percentOfFuel: optional(Type.Number({ exclusiveMinimum: 0, maximum: 20 })),
        tankLitres: Type.Number({ exclusiveMinimum: 0, maximum: 1000 }),
        /** What must still be in the tank; left out: 10 % of it where it goes by the fuel, else none. */
        reserveLitres: optional(Type.Number({ minimum: 0, maximum: 1000 })),
      },
      closed,
    ),
  ),
  /** For the estimate from physics: drag coefficient times frontal area, and tyre pressure on sealed road. */
  physics: optional(
    Type.Object(
      {
        dragAreaM2: optional(Type.Number({ minimum: 0.3, maximum: 12 })),
        tyreBar: optional(Type.Number({ minimum: 0.5, maximum: 10 })),
      },
      closed,
    ),
  ),
};

const nullable = <T extends Parameters<typeof Type.Union>[0][number]>(schema: T) =>
  Type.Union([schema, Type.Null()]);
const Bounds = Type.Object({ low: Type.Number(), typical: Type.Number(), high: Type.Number() });

/** How far one full load of the fixed tanks goes: to the last drop, and to the reserve. */
export const FuelRange = Type.Object({
  litresPer100Km: Type.Number(),
  beforeKm: Type.Number(),
  afterKm: Type.Number(),
});
export type FuelRange = Static<typeof FuelRange>;
const Ranges = Type.Object({ low: FuelRange, typical: FuelRange, high: FuelRange });

/** One row of the surfaces: what is reckoned with, and beside it what physics would say. */
export const SurfaceRow = Type.Object({
  surface: Surface,
  /** Of this route. */
  km: Type.Number(),
  allowancePercent: Type.Number(),
  /** Multiple of the use on sealed road, and who says so. */
  tableFactor: Type.Number(),
  from: Type.Union([Type.Literal('rig'), Type.Literal('ours')]),
  /** Multiple of the user's own rate: the table's factor over that of the surface where the rate was observed. */
  factor: Type.Number(),
  /** The same multiple from rolling resistance and air drag; null where the mass is not told. */
  estimate: nullable(Bounds),
  /** How far the estimate can be trusted, and its source. */
  trust: Type.String(),
});
export type SurfaceRow = Static<typeof SurfaceRow>;

/** Fuel use in full: what the litres were reckoned with and how far they go. */
export const FuelUse = Type.Object({
  /** `even`: one rate all the way, as nothing more was said. `full`: by surface, load, climb and hour. */
  model: Type.Union([Type.Literal('even'), Type.Literal('full')]),
  /** At the rig's own rate, on the surface and with the load at which it was observed. */
  range: Ranges,
  /** At the mean rate of this route, allowance and all terms included. `litres`: for the whole route. */
  onRoute: Ranges,
  routeL: Bounds,
  /** What the litres of the whole route were summed from, at the rate the verdict uses. */
  terms: Type.Array(Term),
  observed: Type.Object({ surface: Surface, massKg: nullable(Type.Number()) }),
  surfaces: Type.Array(SurfaceRow),
  /** Mass reckoned with against the mass at which the rate was observed; null where that was not told. */
  load: nullable(
    Type.Object({
      massKg: Type.Number(),
      observedKg: Type.Number(),
      percentPer100Kg: Type.Number(),
      factor: Type.Number(),
    }),
  ),
  /** Null where the route has no elevations. `litres` is null where the mass is not told: then no climb is reckoned. */
  climb: nullable(
    Type.Object({
      upM: Type.Number(),
      downM: Type.Number(),
      /** Before smoothing. */
      rawUpM: Type.Number(),
      thresholdM: Type.Number(),
      efficiency: Type.Number(),
      giveBack: Type.Number(),
      litres: nullable(Type.Number()),
    }),
  ),
  fuel: Type.Object({
    label: Type.String(),
    densityKgPerM3: Bounds,
    energyMJPerL: Bounds,
    source: Type.String(),
  }),
  /** Liquids only. How far each container may be filled cool so that it is not full when hot, and by how much its filling grows. */
  filling: Type.Array(
    Type.Object({
      name: Type.String(),
      litres: Type.Number(),
      /** As reckoned with. */
      fillPercent: Type.Number(),
      /** Highest filling at 15 °C for packagings of dangerous goods, by expansion (ADR 4.1.1.4 (b)). */
      safePercent: Type.Number(),
      /** The same by where the fuel begins to boil (ADR 4.1.1.4 (a)): either rule may be kept to. */
      boilingPercent: Type.Number(),
      /** Litres by which a full container's filling grows from 15 to 50 °C. */
      growsL: Type.Number(),
    }),
  ),
  urea: nullable(
    Type.Object({
      needL: Type.Number(),
      tankL: Type.Number(),
      reserveL: Type.Number(),
      rangeKm: Type.Number(),
      /** The longest way between places that sell it, start and end included; the start is taken as full. */
      longestKm: Type.Number(),
      /** Missing on that way. */
      shortL: Type.Number(),
      points: Type.Array(
        Type.Object({
          id: Type.String(),
          name: nullable(Type.String()),
          atKm: Type.Number(),
          detourKm: Type.Number(),
        }),
      ),
    }),
  ),
});
export type FuelUse = Static<typeof FuelUse>;
