import type { Surface } from '../../../contract/surface.ts';
import type { Stay } from '../../gaps/course/course.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Heights } from '../../route/elevation.ts';
import type { SurfaceSpan } from '../../surface/surface.ts';
import type { Trip } from '../../trip/settle-trip.ts';

/** Nights spent at a place of the route. */
export interface NightsAt {
  readonly atM: number;
  readonly nights: number;
}

export type Rate = 'low' | 'typical' | 'high';
export type Pace = 'slow' | 'typical' | 'fast';

/** The pace that goes with each rate: who uses most is on the road longest. */
export const PACE_OF: Record<Rate, Pace> = { low: 'fast', typical: 'typical', high: 'slow' };

/** What fuel use along a route is made of, beside the rig itself. */
export interface FuelFacts {
  readonly lengthM: number;
  readonly rig: Rig;
  /** Tile the route. */
  readonly spans: readonly SurfaceSpan[];
  readonly sketchy: readonly SpanM[];
  /** In route order. */
  readonly stays: readonly Stay[];
  readonly nights: readonly NightsAt[];
  /** Smoothed; null where the route has no elevations. */
  readonly heights: Heights | null;
  /** Mass now, kg; null where neither it nor the observed mass is told: then no climb is reckoned. */
  readonly massKg: number | null;
  /** For the way off the route, percent. */
  readonly allowancePercent: number;
  readonly kmPerHour: (surface: Surface, pace: Pace) => number;
  readonly hoursPerDay: (surface: Surface) => number;
}

/** Nights are places of the profiles only where they take fuel. */
export function withNightsThatCount(facts: FuelFacts): FuelFacts {
  const { perHour, hours } = facts.rig.fuel.model;
  return perHour.heater * hours.heaterPerNight > 0 ? facts : { ...facts, nights: [] };
}

/** Days of halt at a place. */
export const stayDaysAt = ({ stays }: FuelFacts, atM: number): number =>
  stays.filter((stay) => stay.atM === atM).reduce((sum, stay) => sum + stay.days, 0);

/**
 * Nights for which a heater burns fuel: one wherever a day ends, as many as a camp's days at a camp, and those of
 * the trip's own stays, days begun counted as whole.
 */
export function nightsAt(
  nights: readonly { atM: number; from: 'camp' | 'pace' }[],
  trip: Pick<Trip, 'campDays' | 'stays'>,
): NightsAt[] {
  return [
    ...nights.map((night) => ({
      atM: night.atM,
      nights: night.from === 'camp' ? Math.max(1, Math.ceil(trip.campDays)) : 1,
    })),
    ...trip.stays.map((stay) => ({ atM: stay.atM, nights: Math.ceil(stay.days) })),
  ];
}
