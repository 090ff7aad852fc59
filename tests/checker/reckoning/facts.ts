import type { PlannedTrip } from '../../../server/app/plan-trip.ts';
import type { Passing } from '../../../server/contract/analysis.ts';
import type { Commodity } from '../../../server/contract/common.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { TripFile } from '../../../server/contract/trip.ts';
import type { World } from '../world/world.ts';
import { DayPlan, type UserHalt } from './days.ts';

/** What a commodity is reckoned with. */
export interface StoreFacts {
  /** Of the fixed tanks, to be drawn. */
  readonly capacityL: number;
  readonly canL: number;
  readonly owned: number;
  /** The reserve: litres by where they must be aboard, and a share of the need. */
  readonly baseAt: (km: number) => number;
  readonly shareOfNeed: number;
  /** Aboard at the start, in the tanks. */
  readonly startL: number;
  readonly cansAtStart: boolean;
  /** The most cans that the trip allows; null where it leaves that open. */
  readonly toldMost: number | null;
}

/** What is known of a supply beyond the map. */
export interface SupplyTerms {
  readonly waitHours: number;
  /** The most that is to be had; null: as much as is wanted. */
  readonly mostL: number | null;
  /** Of filling, a litre. */
  readonly hoursPerLitre: number;
}

/** A stretch on which more water is drunk an hour. */
export interface HotterKm {
  readonly fromKm: number;
  readonly toKm: number;
  readonly morePerHour: number;
}

/** What rig, trip and analysis say, in km, litres and hours; the plan is no part of it. */
export interface Facts {
  readonly rig: RigFile;
  readonly trip: TripFile;
  readonly lengthKm: number;
  /** A kilometre of line as way. */
  readonly wayPerKm: number;
  readonly fuelPerKm: number;
  /** Elsewhere than where it is hotter. */
  readonly waterPerHour: number;
  /** Stretches where more is drunk, and how much more an hour. */
  readonly hotter: readonly HotterKm[];
  /** On the hottest of them: of all hours that are not on the route. */
  readonly mostWaterPerHour: number;
  readonly hoursPerDay: number;
  /** Of driving, a kilometre of way. */
  readonly hoursPerWayKm: number;
  readonly onward: { readonly km: number; readonly hours: number };
  readonly oneWay: readonly { readonly fromKm: number; readonly toKm: number }[];
  readonly days: DayPlan;
  readonly stores: Readonly<Record<Commodity, StoreFacts>>;
  /** That count and are not to be passed by, in route order. */
  readonly passings: readonly Passing[];
  readonly termsOf: (commodity: Commodity, id: string | null) => SupplyTerms;
}

/** A millimetre before the end: what lies past the end belongs to the last stretch. */
const BEFORE_END_KM = 1e-6;
/** Camps this near to each other are taken as one. */
const SAME_CAMP_KM = 0.1;

export function factsOf({ rig, trip }: World, { analysis }: PlannedTrip): Facts {
  const { lengthKm } = analysis.route;
  const wayPerKm = 1 + (trip.allowancePercent ?? 5) / 100;
  const hoursPerWayKm = 1 / slowOf(rig);
  const { hoursPerDay } = rig.pace;
  const waterPerDay = highOf(rig.water.litresPerDay);
  const hotter = analysis.waterUse.inHeat
    .map(({ fromKm, toKm, addedPerDay }) => ({ fromKm, toKm, morePerHour: addedPerDay / 24 }))
    .filter(({ morePerHour }) => morePerHour > 0);
  const mostPerDay = waterPerDay + 24 * Math.max(0, ...hotter.map(({ morePerHour }) => morePerHour));
  const fuelPerKm = highOf(rig.fuel.litresPer100Km) / 100;
  const passedBy = new Set(trip.plan?.passBy ?? []);
  return {
    rig,
    trip,
    lengthKm,
    wayPerKm,
    fuelPerKm,
    waterPerHour: waterPerDay / 24,
    hotter,
    mostWaterPerHour: mostPerDay / 24,
    hoursPerDay,
    hoursPerWayKm,
    onward: { km: trip.onward?.km ?? 0, hours: trip.onward?.hours ?? 0 },
    oneWay: trip.oneWay ?? [],
    days: new DayPlan({
      lengthKm,
      hoursPerKm: wayPerKm * hoursPerWayKm,
      hoursPerDay,
      halts: haltsOf(trip, lengthKm),
    }),
    stores: {
      fuel: storeOf(rig, trip, 'fuel', { perKm: fuelPerKm, perDay: () => 0 }),
      water: storeOf(rig, trip, 'water', {
        perKm: 0,
        perDay: (km) => waterPerDay + 24 * moreNear(hotter, km),
      }),
    },
    passings: analysis.passings
      .filter(({ counts, id }) => counts && !passedBy.has(id))
      .sort((a, b) => a.atKm - b.atKm),
    termsOf: (commodity, id) => termsOf(trip, commodity, { id, waterPerDay: mostPerDay }),
  };
}

/** Of the last kilometre before a place, the hour in which most is drunk. */
const moreNear = (hotter: readonly HotterKm[], km: number): number =>
  Math.max(
    0,
    ...hotter
      .filter(({ fromKm, toKm }) => fromKm <= km && toKm >= km - 1)
      .map(({ morePerHour }) => morePerHour),
  );

const slowOf = ({ pace: { kmPerHour } }: RigFile): number =>
  typeof kmPerHour === 'number' ? 0.7 * kmPerHour : kmPerHour.slow;

function highOf(range: number | { high: number } | undefined): number {
  if (range === undefined || typeof range === 'number') throw new Error('these trips tell their ranges');
  return range.high;
}

const haltsOf = ({ camps = [], stays = [] }: TripFile, lengthKm: number): UserHalt[] => [
  ...camps
    .filter(
      ({ atKm }, index) => !camps.slice(0, index).some((other) => Math.abs(other.atKm - atKm) < SAME_CAMP_KM),
    )
    .map(({ atKm }) => ({ kind: 'camp' as const, km: Math.min(atKm, lengthKm - BEFORE_END_KM) })),
  ...stays.map(({ atKm, days }) => ({
    kind: 'stay' as const,
    km: Math.min(atKm, lengthKm - BEFORE_END_KM),
    days,
  })),
];

function storeOf(
  rig: RigFile,
  trip: TripFile,
  commodity: Commodity,
  { perKm, perDay }: { perKm: number; perDay: (atKm: number) => number },
): StoreFacts {
  const { tanks, cans } = rig[commodity];
  const capacityL = tanks.reduce(
    (sum, { litres, fillPercent = 100, unusableLitres = 0 }) =>
      sum + (litres * fillPercent) / 100 - unusableLitres,
    0,
  );
  const aboardL = trip.aboard?.[commodity === 'fuel' ? 'fuelLitres' : 'waterLitres'];
  const fills = trip.plan?.fillAtStart?.[commodity];
  const comesL = Math.min(capacityL, aboardL ?? capacityL);
  const { km = 0, litres = 0, fraction = 0, shareOfNeed = 0 } = rig.fuel.reserve ?? {};
  const water = rig.water.reserve ?? {};
  const baseAt = (atKm: number): number =>
    commodity === 'fuel'
      ? km * perKm + litres + fraction * capacityL
      : (water.days ?? 0) * perDay(atKm) + (water.litres ?? 0) + (water.fraction ?? 0) * capacityL;
  const owned = cans?.owned ?? 0;
  return {
    capacityL,
    canL: cans?.litres ?? 20,
    owned,
    baseAt,
    shareOfNeed: commodity === 'fuel' ? shareOfNeed : (water.shareOfNeed ?? 0),
    startL: fills === true ? capacityL : comesL,
    cansAtStart: fills ?? comesL >= capacityL,
    toldMost: trip.plan?.mostCans?.[commodity] ?? null,
  };
}

function termsOf(
  trip: TripFile,
  commodity: Commodity,
  { id, waterPerDay }: { id: string | null; waterPerDay: number },
): SupplyTerms {
  const ask = trip.plan?.stops?.find((stop) => stop.id === id);
  const note = commodity === 'water' ? trip.waterNotes?.find((one) => one.id === id) : undefined;
  const mostL = ask?.mostLitres?.[commodity] ?? null;
  const waitHours = ask?.waitHours ?? 0;
  const drawnHours = note?.litresPerMinute === undefined ? 0 : 1 / note.litresPerMinute / 60;
  if (mostL !== null) return { waitHours, mostL, hoursPerLitre: drawnHours };
  // What is drunk meanwhile is drawn as well.
  const usedShare = (drawnHours * waterPerDay) / 24;
  if (usedShare >= 1) return { waitHours, mostL: 0, hoursPerLitre: 0 };
  return { waitHours, mostL, hoursPerLitre: drawnHours / (1 - usedShare) };
}
