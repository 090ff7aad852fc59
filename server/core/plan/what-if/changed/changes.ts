import type { Commodity } from '../../../../contract/common.ts';
import type { RigFile } from '../../../../contract/rig.ts';
import type { TripFile } from '../../../../contract/trip.ts';
import type { Reckoned } from '../../../analyse/analyse.ts';
import { crewUse } from '../../../crew/needs/crew-use.ts';
import type { UseRange } from '../../../quantity/use-range.ts';
import { ALLOWANCE_PERCENT } from '../../../surface/surface.ts';

/** Rig and trip with one assumption changed. */
export interface Change {
  readonly rig: RigFile;
  readonly trip: TripFile;
}

const flat = (value: number): UseRange => ({ low: value, typical: value, high: value });
const times = ({ low, typical, high }: UseRange, factor: number): UseRange => ({
  low: low * factor,
  typical: typical * factor,
  high: high * factor,
});

/** Use of both commodities at another end of its range all the way. */
export function atUse(reckoned: Reckoned, end: keyof UseRange): Change {
  const { analysis } = reckoned;
  const { fuel, water } = ratesOf(reckoned);
  return { rig: withUse(analysis.rig, flat(fuel[end]), flat(water[end])), trip: analysis.trip };
}

/** Use of both commodities raised by a factor. */
export function moreUse(reckoned: Reckoned, factor: number): Change {
  const { analysis } = reckoned;
  const { fuel, water } = ratesOf(reckoned);
  return { rig: withUse(analysis.rig, times(fuel, factor), times(water, factor)), trip: analysis.trip };
}

function ratesOf({ sides }: Reckoned): Record<Commodity, UseRange> {
  const { rig } = sides.fuel.course;
  return { fuel: rig.fuel.litresPer100Km, water: rig.water.litresPerDay };
}

const withUse = (rig: RigFile, fuel: UseRange, water: UseRange): RigFile => ({
  ...rig,
  fuel: { ...rig.fuel, litresPer100Km: fuel },
  water: { ...rig.water, litresPerDay: water },
});

/** All speeds times a factor. */
export function slower({ analysis }: Reckoned, factor: number): Change {
  const { rig, trip } = analysis;
  const speed = (kmPerHour: RigFile['pace']['kmPerHour']) =>
    typeof kmPerHour === 'number'
      ? kmPerHour * factor
      : { slow: kmPerHour.slow * factor, typical: kmPerHour.typical * factor, fast: kmPerHour.fast * factor };
  const { kmPerHour, bySurface } = rig.pace;
  const surfaces = Object.entries(bySurface ?? {}).map(([surface, pace]) => [
    surface,
    pace.kmPerHour === undefined ? pace : { ...pace, kmPerHour: speed(pace.kmPerHour) },
  ]);
  const each = bySurface === undefined ? {} : { bySurface: Object.fromEntries(surfaces) };
  return { rig: { ...rig, pace: { ...rig.pace, kmPerHour: speed(kmPerHour), ...each } }, trip };
}

/** So many percent points more allowance for bends, on every surface. */
export function moreAllowance({ analysis, sides }: Reckoned, points: number): Change {
  const { rig, trip } = analysis;
  const general = trip.allowancePercent ?? (sides.fuel.course.off.wayM - 1) * 100;
  const surfaces = trip.surfaces?.map((entry) => ({
    ...entry,
    allowancePercent:
      (entry.allowancePercent ?? (entry.surface === 'unknown' ? general : ALLOWANCE_PERCENT[entry.surface])) +
      points,
  }));
  return {
    rig,
    trip: { ...trip, allowancePercent: general + points, ...(surfaces === undefined ? {} : { surfaces }) },
  };
}

/**
 * Water use so many degrees hotter; null where no heat is told or it cannot be reckoned. The crew's own observed figure
 * is raised in the ratio in which the sum of the parts rises.
 */
export function hotter({ analysis, sides }: Reckoned, byC: number): Change | null {
  const { rig, trip } = analysis;
  const crew = sides.water.course.rig.crew?.file;
  const heat = crew?.heat;
  if (crew === undefined || heat === undefined) return null;
  const raised = {
    ...heat,
    ...(heat.wbgtC === undefined ? {} : { wbgtC: heat.wbgtC + byC }),
    ...(heat.temperatureC === undefined ? {} : { temperatureC: heat.temperatureC + byC }),
  };
  const before = crewUse(crew, null).total;
  const after = crewUse({ ...crew, heat: raised }, null).total;
  const { litresPerDay } = sides.water.course.rig.water;
  const scaled = (end: keyof UseRange) =>
    before[end] > 0 ? litresPerDay[end] * Math.max(1, after[end] / before[end]) : litresPerDay[end];
  const water = { low: scaled('low'), typical: scaled('typical'), high: scaled('high') };
  return {
    rig: { ...rig, crew: { ...crew, heat: raised }, water: { ...rig.water, litresPerDay: water } },
    trip,
  };
}
