import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { crewUse } from '../../crew/needs/crew-use.ts';
import { startLevel } from '../../gaps/start-level.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { Rig } from '../../rig/rig.ts';
import { ALLOWANCE_PERCENT } from '../../surface/surface.ts';
import { settleTrip } from '../../trip/settle-trip.ts';
import { type Run, runOf } from '../drive/run.ts';
import type { Stretch } from '../drive/stretch.ts';
import { arriveWith, leaveBound } from '../question/bound-stop.ts';
import { type CarrySide, isBound } from '../question/problem.ts';
import type { Basis } from './basis.ts';

/** Rig and trip with one assumption changed. */
export interface Changed {
  rig: RigFile;
  trip: TripFile;
}

/** All stretches of a commodity driven with other rates, the same stops and the same cans. */
export type ChangedRuns = Record<Commodity, Run[]>;

export function runsWith(reckoned: Reckoned, basis: Basis, { rig, trip }: Changed): ChangedRuns {
  const courses = reckoned.coursesWith(rig, trip, basis.load);
  const settled = settleTrip(trip).trip;
  const runs = (commodity: Commodity): Run[] => {
    const course = courses[commodity];
    const { stretches, side } = basis.sides[commodity];
    // What has been used since the last fill goes by the rate, so the start may be lower.
    const before = startLevel(side.course.rig, settled, commodity).litres;
    const filled = trip.plan?.fillAtStart?.[commodity] === true;
    const lessL = filled ? 0 : before - startLevel(course.rig, settled, commodity).litres;
    const driven: Run[] = [];
    for (const stretch of stretches) {
      const before = driven.at(-1);
      const from = { ...stretch, course };
      if (before === undefined) driven.push(runOf({ ...from, tankL: Math.max(0, stretch.tankL - lessL) }));
      else if (isBound(stretch.from)) driven.push(runOf({ ...from, ...leftAt(side, stretch, before) }));
      else driven.push(runOf(from));
    }
    return driven;
  };
  return { fuel: runs('fuel'), water: runs('water') };
}

/** What a supply that does not give all that is wanted is left with, after another run to it. */
function leftAt(side: CarrySide, { from, cans }: Stretch, before: Run): Pick<Stretch, 'tankL' | 'cans'> {
  const { tankL, cans: full } = arriveWith(side, before.stretch, before.figures.needL);
  return leaveBound(side, from, { tankL: Math.max(0, tankL), cans: full }, cans);
}

const flat = (value: number): UseRange => ({ low: value, typical: value, high: value });
const times = ({ low, typical, high }: UseRange, factor: number): UseRange => ({
  low: low * factor,
  typical: typical * factor,
  high: high * factor,
});

/** Use of both commodities at another end of its range all the way. */
export function atUse(reckoned: Reckoned, end: keyof UseRange): Changed {
  const { analysis } = reckoned;
  const { fuel, water } = ratesOf(reckoned);
  return { rig: withUse(analysis.rig, flat(fuel[end]), flat(water[end])), trip: analysis.trip };
}

/** Use of both commodities raised by a factor. */
export function moreUse(reckoned: Reckoned, factor: number): Changed {
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
export function slower({ analysis }: Reckoned, factor: number): Changed {
  const { rig, trip } = analysis;
  const speed = (kmPerHour: RigFile['pace']['kmPerHour']) =>
    typeof kmPerHour === 'number'
      ? kmPerHour * factor
      : { slow: kmPerHour.slow * factor, typical: kmPerHour.typical * factor, fast: kmPerHour.fast * factor };
  const { bySurface } = rig.pace;
  const each =
    bySurface === undefined
      ? {}
      : {
          bySurface: Object.fromEntries(
            Object.entries(bySurface).map(([surface, pace]) => [
              surface,
              pace.kmPerHour === undefined ? pace : { ...pace, kmPerHour: speed(pace.kmPerHour) },
            ]),
          ),
        };
  return { rig: { ...rig, pace: { ...rig.pace, kmPerHour: speed(rig.pace.kmPerHour), ...each } }, trip };
}

/** So many percent points more allowance for bends, on every surface. */
export function moreAllowance({ analysis, sides }: Reckoned, points: number): Changed {
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
export function hotter({ analysis, sides }: Reckoned, byC: number): Changed | null {
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

/** What a rig uses at the rate the verdict uses: litres per 100 km, of water litres a day. */
export const rateOf = (rig: Rig, commodity: Commodity): number =>
  commodity === 'fuel' ? rig.fuel.litresPer100Km.high : rig.water.litresPerDay.high;

/** Least margin of each commodity. */
export const leastMargins = (runs: ChangedRuns): Record<Commodity, number> => {
  const least = (commodity: Commodity) => Math.min(...runs[commodity].map(({ marginL }) => marginL));
  const [fuel, water] = COMMODITIES.map(least);
  return { fuel: fuel!, water: water! };
};
