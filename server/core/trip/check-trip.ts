import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { fuelTanksOf } from '../fuel/engine/gas.ts';
import { checkNotes, datesOfNotes } from '../notes/check-notes.ts';
import type { Misfit } from '../phrases/misfits.ts';
import { drawableL } from '../quantity/drawable.ts';
import { checkTripPlausible } from '../rig/check-plausible.ts';
import { checkSurfaces } from '../surface/check-surfaces.ts';

/** Rounding of a person's figure: 0.05 l above the tanks is not worth a refusal. */
const AMPLE_L = 0.05;

/** First contradiction within a trip, or between a trip and its rig (null: judge the trip alone). */
export function checkTrip(trip: TripFile, rig: RigFile | null): Misfit | null {
  return (
    onlyOne(trip.aboard, 'fuelLitres', 'fuelKmSinceFill') ??
    onlyOne(trip.aboard, 'waterLitres', 'waterDaysSinceFill') ??
    (rig === null ? null : aboardFits(trip, rig)) ??
    datesReal(trip) ??
    stretchesForward(trip) ??
    checkSurfaces(trip.surfaces) ??
    boxesOpen(trip) ??
    stopsOnce(trip) ??
    checkNotes(trip) ??
    checkTripPlausible(trip)
  );
}

function stopsOnce({ plan }: TripFile): Misfit | null {
  const seen = new Set<string>();
  for (const [index, { id }] of (plan?.stops ?? []).entries()) {
    if (seen.has(id)) return { path: `/plan/stops/${index}`, misfit: 'stop-twice', facts: { id } };
    seen.add(id);
  }
  const passedBy = new Set(plan?.passBy ?? []);
  for (const [index, id] of (plan?.mustStop ?? []).entries())
    if (passedBy.has(id)) return { path: `/plan/mustStop/${index}`, misfit: 'stop-passed-by', facts: { id } };
  return null;
}

type Aboard = NonNullable<TripFile['aboard']>;

function onlyOne(aboard: Aboard | undefined, litres: keyof Aboard, sinceFill: keyof Aboard): Misfit | null {
  if (aboard?.[litres] === undefined || aboard[sinceFill] === undefined) return null;
  return { path: '/aboard', misfit: 'aboard-twice', facts: { litres, sinceFill } };
}

function aboardFits(trip: TripFile, rig: RigFile): Misfit | null {
  const rows = [
    { path: '/aboard/fuelLitres', litres: trip.aboard?.fuelLitres, tanks: fuelTanksOf(rig.fuel) },
    { path: '/aboard/waterLitres', litres: trip.aboard?.waterLitres, tanks: rig.water.tanks },
  ];
  for (const { path, litres, tanks } of rows) {
    const mostL = drawableL(tanks);
    if (litres === undefined || litres <= mostL + AMPLE_L) continue;
    return { path, misfit: 'aboard-above-tanks', facts: { litres, drawableL: mostL } };
  }
  return null;
}

function datesReal(trip: TripFile): Misfit | null {
  const dates: { path: string; date: string | undefined }[] = [{ path: '/departure', date: trip.departure }];
  dates.push(...datesOfNotes(trip));
  for (const [index, { asOf }] of (trip.extracts ?? []).entries()) {
    dates.push({ path: `/extracts/${index}/asOf`, date: asOf });
  }
  for (const { path, date } of dates) {
    if (date === undefined || isRealDate(date)) continue;
    return { path, misfit: 'date-impossible', facts: { date } };
  }
  return null;
}

/** Whether a YYYY-MM-DD date is in the calendar: 2026-02-30 is not. */
function isRealDate(date: string): boolean {
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().slice(0, 10) === date;
}

function stretchesForward(trip: TripFile): Misfit | null {
  const { oneWay = [], closed = [], heat = [] } = trip;
  for (const [list, stretches] of Object.entries({ oneWay, closed, heat }))
    for (const [index, { fromKm, toKm }] of stretches.entries()) {
      if (fromKm < toKm) continue;
      return { path: `/${list}/${index}`, misfit: 'stretch-backward', facts: { fromKm, toKm } };
    }
  return null;
}

/** West may be greater than east (a box over the 180th meridian); south must be below north. */
function boxesOpen(trip: TripFile): Misfit | null {
  for (const [index, { bbox }] of (trip.cover ?? []).entries()) {
    const [west, south, east, north] = bbox;
    if (south < north && west !== east) continue;
    return { path: `/cover/${index}/bbox`, misfit: 'box-inside-out', facts: { bbox } };
  }
  return null;
}
