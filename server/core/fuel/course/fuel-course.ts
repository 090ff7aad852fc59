import type { Surface } from '../../../contract/surface.ts';
import type { Course, DearerStretch, Stay } from '../../gaps/course/course.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { litresPerM } from '../../quantity/rates.ts';
import type { Rig } from '../../rig/rig.ts';
import { climbOf, type Heights, heightsOf, smoothed } from '../../route/elevation.ts';
import type { RouteLine } from '../../route/route-line.ts';
import { surfaceSpans } from '../../surface/surface.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import type { FuelFacts, NightsAt, Pace } from './fuel-facts.ts';
import { fuelProfiles } from './fuel-profiles.ts';
import { rateOn } from './surface-rate.ts';

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
  cautions: readonly Caution[];
}

/** A route with less of its length on known elevations than this is told of, metres (ours). */
const UNKNOWN_M = 1000;

/** Gathers what fuel is reckoned with, and says what could not be. */
export function fuelPlan(sources: FuelSources): FuelPlan {
  const { route, rig, trip } = sources;
  const { model } = rig.fuel;
  const lastM = Math.max(0, route.lengthM - 1e-3);
  const elevations = route.eleM === null ? null : heightsOf(route.atM, route.eleM);
  const measured = elevations?.heights ?? null;
  const massKg = sources.massKg ?? model.observed.massKg;
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
    cautions: [
      ...surfaceCautions(route, trip),
      ...climbCautions(elevations, massKg, model.climb.thresholdM),
      ...loadCautions(sources),
    ],
  };
}

function surfaceCautions({ lengthM }: RouteLine, { surfaces }: Trip): Caution[] {
  return surfaces
    .filter(({ fromM }) => fromM >= lengthM)
    .map(({ fromM, toM }) => ({ code: 'surface-off-route', facts: { fromM }, fromM, toM }));
}

type Elevations = ReturnType<typeof heightsOf>;

/** What of the route's elevations cannot be reckoned with. */
function climbCautions(elevations: Elevations | null, massKg: number | null, thresholdM: number): Caution[] {
  const cautions: Caution[] = [];
  if (elevations !== null && elevations.absurd > 0) {
    cautions.push({ code: 'elevation-absurd', facts: { count: elevations.absurd } });
  }
  const heights = elevations?.heights ?? null;
  if (heights === null && massKg !== null) cautions.push({ code: 'climb-unknown', facts: { m: null } });
  else if (heights !== null && massKg === null) {
    const { upM } = climbOf(smoothed(heights, thresholdM).eleM);
    cautions.push({ code: 'climb-not-reckoned', facts: { upM } });
  } else if (elevations !== null && elevations.unknownM > UNKNOWN_M) {
    cautions.push({ code: 'climb-unknown', facts: { m: elevations.unknownM } });
  }
  return cautions;
}

const loadCautions = ({ massKg, rig }: FuelSources): Caution[] =>
  massKg === null || rig.fuel.model.observed.massKg !== null
    ? []
    : [{ code: 'load-not-reckoned', facts: {} }];

/** Stretches on which a metre of way takes more than the rig's own high rate. */
const dearerStretches = (facts: FuelFacts): DearerStretch[] =>
  facts.spans
    .map(({ fromM, toM, surface }) => ({
      fromM,
      toM,
      surface,
      litresPerM: rateOn(facts, surface, 'high').litresPerWayM,
    }))
    .filter(({ litresPerM: perM }) => perM > litresPerM(facts.rig.fuel.litresPer100Km.high));

/** A course of fuel with the litres of the plan in place of those of one rate all the way. */
export function fuelCourse(even: Course, plan: FuelPlan): Course {
  if (!plan.full) return even;
  const profiles = fuelProfiles(plan.facts, 'high');
  const offL = even.off.wayM * profiles.offLPerWayM;
  return {
    ...even,
    wayM: profiles.wayM,
    litres: { out: profiles.out, home: profiles.home },
    off: { ...even.off, litres: offL, homeLitres: offL },
    dearer: dearerStretches(plan.facts),
    explain: profiles.explain,
  };
}
