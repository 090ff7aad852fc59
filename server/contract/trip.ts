import { type Static, Type } from 'typebox';
import { Commodity, Evidence, IsoDate } from './common.ts';
import { WATER_TRIP_DETAIL } from './crew.ts';
import type { FileKind } from './file-kind.ts';
import { NOTES_DETAIL } from './notes.ts';
import { DAYS_DETAIL } from './pace.ts';
import { PLAN_DETAIL } from './plan.ts';
import { SurfaceEntry } from './surface.ts';
import { WaterNote } from './treatment.ts';
import { WHAT_IF_DETAIL } from './whatif.ts';

const closed = { additionalProperties: false } as const;
const kmAlong = Type.Number({ minimum: 0, maximum: 100_000 });

/** Litres that wait at a place of the route, or come there: laid beforehand, brought, in a second vehicle. Water is fit to drink. */
export const LaidSupply = Type.Object(
  {
    name: Type.Optional(Type.String({ maxLength: 120 })),
    commodity: Commodity,
    litres: Type.Number({ exclusiveMinimum: 0, maximum: 10_000 }),
    /** The one passing of the route at which it is taken. */
    atKm: kmAlong,
    /** Off the route, one way, as it is driven. */
    detourKm: Type.Optional(Type.Number({ minimum: 0, maximum: 200 })),
    by: Type.Optional(
      Type.Union([Type.Literal('depot'), Type.Literal('others'), Type.Literal('second-vehicle')]),
    ),
    /** The first day on which it is there; left out: before the trip begins. */
    from: Type.Optional(IsoDate),
  },
  closed,
);
export type LaidSupply = Static<typeof LaidSupply>;

/** What belongs to this journey, not to the vehicle. What it leaves out gets a stated default. */
export const TripFile = Type.Object(
  {
    name: Type.Optional(Type.String({ maxLength: 120 })),
    /** Aboard at the start: litres that can be used, or distance and time since all was full. */
    aboard: Type.Optional(
      Type.Object(
        {
          fuelLitres: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
          fuelKmSinceFill: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
          waterLitres: Type.Optional(Type.Number({ minimum: 0, maximum: 5000 })),
          waterDaysSinceFill: Type.Optional(Type.Number({ minimum: 0, maximum: 100 })),
        },
        closed,
      ),
    ),
    /** From the end of the route to the next supply; 0 when it is there. Hours are hours of driving. */
    onward: Type.Optional(
      Type.Object(
        {
          km: Type.Number({ minimum: 0, maximum: 5000 }),
          hours: Type.Optional(Type.Number({ minimum: 0, maximum: 1000 })),
        },
        closed,
      ),
    ),
    corridorKm: Type.Optional(Type.Number({ exclusiveMinimum: 0, maximum: 50 })),
    /** The lowest evidence that counts. */
    counting: Type.Optional(
      Type.Object({ fuel: Type.Optional(Evidence), water: Type.Optional(Evidence) }, closed),
    ),
    allowancePercent: Type.Optional(Type.Number({ minimum: 0, maximum: 300 })),
    detourFactor: Type.Optional(Type.Number({ minimum: 1, maximum: 10 })),
    /** `all`, the number of a track or route in the file (from 1), or its name. */
    part: Type.Optional(
      Type.Union([Type.Integer({ minimum: 1, maximum: 10_000 }), Type.String({ minLength: 1 })]),
    ),
    /** Judge seasons and the age of tags for this day. */
    departure: Type.Optional(IsoDate),
    /** What is under the wheels, by stretch; the rest is unknown. */
    surfaces: Type.Optional(Type.Array(SurfaceEntry, { maxItems: 2000 })),
    /** The coldest night expected, °C: diesel may not stand it. */
    coldestNightC: Type.Optional(Type.Number({ minimum: -70, maximum: 50 })),
    /** Straight steps longer than this are taken for a sketch, not a road line. */
    sparseStepKm: Type.Optional(Type.Number({ minimum: 1, maximum: 1000 })),
    /** The user vouches that long straight steps of the route are straight roads. Breaks of the line stay what they are. */
    routeIsRoad: Type.Optional(Type.Boolean()),
    /** Days that each camp waypoint of the route adds to its gap. */
    campDays: Type.Optional(Type.Number({ minimum: 0, maximum: 30 })),
    ...DAYS_DETAIL,
    ...WATER_TRIP_DETAIL,
    ...PLAN_DETAIL,
    ...WHAT_IF_DETAIL,
    /** Further halts: rest days, waiting. */
    stays: Type.Optional(
      Type.Array(
        Type.Object(
          {
            atKm: kmAlong,
            days: Type.Number({ minimum: 0, maximum: 100 }),
            name: Type.Optional(Type.String({ maxLength: 120 })),
          },
          closed,
        ),
        { maxItems: 500 },
      ),
    ),
    /** Supplies of the user's own: depots, what others bring, a second vehicle's cans. */
    laid: Type.Optional(Type.Array(LaidSupply, { maxItems: 100 })),
    /** Stretches that cannot be driven back. */
    oneWay: Type.Optional(
      Type.Array(Type.Object({ fromKm: kmAlong, toKm: kmAlong }, closed), { maxItems: 500 }),
    ),
    ...NOTES_DETAIL,
    /** What the user found out about the water of single points: salt, depth, flow. */
    waterNotes: Type.Optional(Type.Array(WaterNote, { maxItems: 5000 })),
    /** Paths of figures outside their usual range that are meant so, like "/pace/kmPerHour". */
    sure: Type.Optional(Type.Array(Type.String({ minLength: 2, maxLength: 200 }), { maxItems: 200 })),
    /** What the user vouches for of single extracts, by the file as it is given or its name alone. */
    extracts: Type.Optional(
      Type.Array(
        Type.Object(
          {
            file: Type.String({ minLength: 1, maxLength: 500 }),
            /** The day for which its content holds, where the file does not tell. */
            asOf: Type.Optional(IsoDate),
            /** The area between its outermost objects is all on the map, though the file does not say so. */
            hull: Type.Optional(Type.Boolean()),
            /** The file was not cut off, though it looks so. */
            whole: Type.Optional(Type.Boolean()),
            /**
             * What it covers of a commodity (of both where none is named), in place of what is made out from the file:
             * rings of [lon, lat], or on the command line a file of them (.poly, GeoJSON).
             */
            boundaries: Type.Optional(
              Type.Array(
                Type.Object(
                  {
                    commodity: Type.Optional(Commodity),
                    rings: Type.Optional(
                      Type.Array(
                        Type.Array(
                          Type.Tuple([
                            Type.Number({ minimum: -180, maximum: 180 }),
                            Type.Number({ minimum: -90, maximum: 90 }),
                          ]),
                          { minItems: 3, maxItems: 50_000 },
                        ),
                        { maxItems: 1000 },
                      ),
                    ),
                    file: Type.Optional(Type.String({ minLength: 1, maxLength: 500 })),
                  },
                  closed,
                ),
                { maxItems: 20 },
              ),
            ),
          },
          closed,
        ),
        { maxItems: 100 },
      ),
    ),
    /** Areas the user vouches for: the extracts show every supply of that commodity in them. */
    cover: Type.Optional(
      Type.Array(
        Type.Object(
          {
            commodity: Commodity,
            bbox: Type.Tuple([
              Type.Number({ minimum: -180, maximum: 180 }),
              Type.Number({ minimum: -90, maximum: 90 }),
              Type.Number({ minimum: -180, maximum: 180 }),
              Type.Number({ minimum: -90, maximum: 90 }),
            ]),
          },
          closed,
        ),
        { maxItems: 100 },
      ),
    ),
  },
  { ...closed, 'x-file': 'trip' satisfies FileKind },
);
export type TripFile = Static<typeof TripFile>;
