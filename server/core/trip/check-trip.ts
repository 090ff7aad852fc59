import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { drawableL } from '../quantity/drawable.ts';
import type { Misfit } from '../quantity/misfit.ts';
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
    stopsOnce(trip)
  );
}

function stopsOnce({ plan }: TripFile): Misfit | null {
  const ids = (plan?.stops ?? []).map(({ id }) => id);
  const again = ids.findIndex((id, index) => ids.indexOf(id) < index);
  if (again < 0) return null;
  return {
    path: `/plan/stops/${again}`,
    came: `${ids[again]} once more`,
    expected: 'each stop once',
    remedy: 'Put all that is known of a stop into one entry',
  };
}

type Aboard = NonNullable<TripFile['aboard']>;

function onlyOne(aboard: Aboard | undefined, first: keyof Aboard, second: keyof Aboard): Misfit | null {
  if (aboard?.[first] === undefined || aboard[second] === undefined) return null;
  return {
    path: '/aboard',
    came: `${first} and ${second}`,
    expected: 'one of the two',
    remedy: `Keep ${first} if you know the litres, else ${second}`,
  };
}

function aboardFits(trip: TripFile, rig: RigFile): Misfit | null {
  const rows = [
    { path: '/aboard/fuelLitres', litres: trip.aboard?.fuelLitres, drawable: drawableL(rig.fuel.tanks) },
    { path: '/aboard/waterLitres', litres: trip.aboard?.waterLitres, drawable: drawableL(rig.water.tanks) },
  ];
  for (const { path, litres, drawable } of rows) {
    if (litres === undefined || litres <= drawable + AMPLE_L) continue;
    return {
      path,
      came: `${litres} l aboard`,
      expected: `at most the ${Number(drawable.toFixed(3))} l that the rig's fixed tanks give`,
      remedy:
        'Correct the litres aboard or the tanks of the rig (what is in cans is not reckoned at the start)',
    };
  }
  return null;
}

function datesReal(trip: TripFile): Misfit | null {
  const dates: { path: string; date: string | undefined }[] = [{ path: '/departure', date: trip.departure }];
  for (const [index, confirmation] of (trip.confirmations ?? []).entries()) {
    dates.push({ path: `/confirmations/${index}/on`, date: confirmation.on });
  }
  for (const [index, note] of (trip.waterNotes ?? []).entries()) {
    dates.push({ path: `/waterNotes/${index}/on`, date: note.on });
  }
  for (const { path, date } of dates) {
    if (date === undefined || isRealDate(date)) continue;
    return { path, came: `"${date}"`, expected: 'a day that the calendar has', remedy: `Correct ${path}` };
  }
  return null;
}

/** Whether a YYYY-MM-DD date is in the calendar: 2026-02-30 is not. */
export function isRealDate(date: string): boolean {
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().slice(0, 10) === date;
}

function stretchesForward(trip: TripFile): Misfit | null {
  for (const [index, stretch] of (trip.oneWay ?? []).entries()) {
    if (stretch.fromKm < stretch.toKm) continue;
    return {
      path: `/oneWay/${index}`,
      came: `from km ${stretch.fromKm} to km ${stretch.toKm}`,
      expected: 'fromKm before toKm',
      remedy: 'Give route km in the direction of travel',
    };
  }
  return null;
}

/** West may be greater than east (a box over the 180th meridian); south must be below north. */
function boxesOpen(trip: TripFile): Misfit | null {
  for (const [index, area] of (trip.cover ?? []).entries()) {
    const [west, south, east, north] = area.bbox;
    if (south < north && west !== east) continue;
    return {
      path: `/cover/${index}/bbox`,
      came: `[${area.bbox.join(', ')}]`,
      expected: '[west, south, east, north] in degrees with south below north',
      remedy: `Correct /cover/${index}/bbox`,
    };
  }
  return null;
}
