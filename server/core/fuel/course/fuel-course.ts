import type { Caution } from '../../../contract/common.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { Course, Stay } from '../../gaps/course.ts';
import type { Rig } from '../../rig/rig.ts';
import { climbOf, type Heights, heightsOf, smoothed } from '../../route/elevation.ts';
import type { RouteLine } from '../../route/route-line.ts';
import { surfaceSpans } from '../../surface/surface.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import { type FuelFacts, fuelProfiles, type NightsAt, type Pace } from './fuel-profiles.ts';

export interface FuelSources {
  route: RouteLine;
  rig: Rig;
  trip: Trip;
  stays: readonly Stay[];
  nights: readonly NightsAt[];
  /** Mass at departure, kg, where the vehicle's masses are told. */
  massKg: number | null;
  kmPerHour: (surface: Surface, pace: Pace) => number;
  hoursPerDay: (surface: Surface) => number;
}

/** What the fuel of a trip is reckoned with. */
export interface FuelPlan {
  facts: FuelFacts;
  /** True where more than one rate all the way was told: by the rig, by the trip, or by a mass for climbs. */
  full: boolean;
  /** Heights as measured; null where the route has none. */
  measured: Heights | null;
  cautions: Caution[];
}

/** A route with less of its length on known elevations than this is told of, metres (ours). */
const UNKNOWN_M = 1000;

/** Gathers what fuel is reckoned with, and says what could not be. */
export function fuelPlan(sources: FuelSources): FuelPlan {
  const { route, rig, trip } = sources;
  const { model } = rig.fuel;
  const cautions: Caution[] = [];
  const lengthKm = route.lengthM / 1000;
  const lastM = Math.max(0, route.lengthM - 1e-3);
  for (const entry of trip.surfaces) {
    if (entry.fromKm < lengthKm) continue;
    const text = `The surface told from km ${entry.fromKm} on lies past the end of the route and is left out.`;
    cautions.push({ code: 'surface-off-route', text, fromKm: entry.fromKm, toKm: entry.toKm });
  }

  const read = route.eleM === null ? null : heightsOf(route.atM, route.eleM);
  const measured = read?.heights ?? null;
  const massKg = sources.massKg ?? model.observed.massKg;
  if (read !== null && read.absurd > 0) {
    const text = `${read.absurd} elevations of the route are none that a road has and are left out.`;
    cautions.push({ code: 'elevation-absurd', text });
  }
  if (measured === null && massKg !== null) {
    const text = 'The route has no elevations: fuel for climbs is not reckoned.';
    cautions.push({ code: 'climb-unknown', text });
  } else if (measured !== null && massKg === null) {
    const { upM } = climbOf(smoothed(measured, model.climb.thresholdM).eleM);
    const text = `The route climbs ${Math.round(upM)} m in all; fuel for that is reckoned only when the mass at which the rate was observed is told.`;
    cautions.push({ code: 'climb-not-reckoned', text });
  } else if (read !== null && read.unknownM > UNKNOWN_M) {
    const text = `The route has no elevations for ${(read.unknownM / 1000).toFixed(1)} km: climbs there are not reckoned.`;
    cautions.push({ code: 'climb-unknown', text });
  }
  if (sources.massKg !== null && model.observed.massKg === null) {
    const text =
      'The mass at which the fuel rate was observed is not told: the load adds nothing to the rate, and descents spare nothing. Tell it.';
    cautions.push({ code: 'load-not-reckoned', text });
  }
  return {
    facts: {
      lengthM: route.lengthM,
      rig,
      spans: surfaceSpans(route.lengthM, trip),
      sketchy: route.sketchy,
      stays: sources.stays,
      // A night at the end belongs to the last gap, so it is put just before the end.
      nights: sources.nights.map((night) => ({ ...night, atM: Math.min(night.atM, lastM) })),
      heights: measured === null ? null : smoothed(measured, model.climb.thresholdM),
      massKg,
      allowancePercent: trip.allowancePercent,
      kmPerHour: sources.kmPerHour,
      hoursPerDay: sources.hoursPerDay,
    },
    full: model.told || trip.surfaces.length > 0 || sources.massKg !== null,
    measured,
    cautions,
  };
}

/** A course of fuel with the litres of the plan in place of those of one rate all the way. */
export function fuelCourse(even: Course, plan: FuelPlan): Course {
  if (!plan.full) return even;
  const profiles = fuelProfiles(plan.facts, 'high');
  return {
    ...even,
    wayM: profiles.wayM,
    litres: { out: profiles.out, home: profiles.home },
    off: { ...even.off, litres: even.off.wayM * profiles.offLPerWayM },
    explain: profiles.explain,
  };
}
