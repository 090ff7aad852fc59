import type { SurfaceEntry } from '../../server/contract/surface.ts';
import type { TripFile } from '../../server/contract/trip.ts';

/** Camps closer together than this are one (ours). */
const SAME_PLACE_KM = 0.5;
/** A place is noted to a hundredth of a kilometre: 10 m (ours). */
const noted = (km: number): number => Math.round(km * 100) / 100;

const byPlace = <T extends { atKm: number }>(list: readonly T[]): T[] =>
  [...list].sort((a, b) => a.atKm - b.atKm);

/** The trip with a night meant to be spent at a place. One that is there already stays as it is. */
export function withCamp(trip: TripFile, atKm: number): TripFile {
  const camps = trip.camps ?? [];
  if (camps.some((camp) => Math.abs(camp.atKm - atKm) < SAME_PLACE_KM)) return trip;
  return { ...trip, camps: byPlace([...camps, { atKm: noted(atKm) }]) };
}

/** The trip with a day more at a place. */
export function withRestDay(trip: TripFile, atKm: number): TripFile {
  const stays = trip.stays ?? [];
  const there = stays.findIndex((stay) => Math.abs(stay.atKm - atKm) < SAME_PLACE_KM);
  if (there < 0) return { ...trip, stays: byPlace([...stays, { atKm: noted(atKm), days: 1 }]) };
  return {
    ...trip,
    stays: stays.map((stay, place) => (place === there ? { ...stay, days: stay.days + 1 } : stay)),
  };
}

/** What the stretches say once none overlaps another: of those that did, the later one held. In order of the route. */
export function flatSurfaces(entries: readonly SurfaceEntry[]): SurfaceEntry[] {
  let flat: SurfaceEntry[] = [];
  for (const entry of entries) {
    if (!(entry.toKm > entry.fromKm)) continue;
    flat = flat.flatMap((one) => [
      ...(one.fromKm < entry.fromKm ? [{ ...one, toKm: Math.min(one.toKm, entry.fromKm) }] : []),
      ...(one.toKm > entry.toKm ? [{ ...one, fromKm: Math.max(one.fromKm, entry.toKm) }] : []),
    ]);
    flat.push(entry);
  }
  return flat.sort((a, b) => a.fromKm - b.fromKm);
}

/** The trip with one more stretch of a surface; what it said of that stretch before is overwritten. */
export function withSurface(trip: TripFile, entry: SurfaceEntry): TripFile {
  const [fromKm, toKm] = [
    noted(Math.min(entry.fromKm, entry.toKm)),
    noted(Math.max(entry.fromKm, entry.toKm)),
  ];
  if (!(toKm > fromKm)) return trip;
  const surfaces = flatSurfaces([...(trip.surfaces ?? []), { ...entry, fromKm, toKm }]);
  return { ...trip, surfaces: joined(surfaces) };
}

/** Neighbours that say the same become one. */
function joined(surfaces: readonly SurfaceEntry[]): SurfaceEntry[] {
  const list: SurfaceEntry[] = [];
  for (const entry of surfaces) {
    const last = list.at(-1);
    const same =
      last !== undefined &&
      last.toKm === entry.fromKm &&
      last.surface === entry.surface &&
      last.allowancePercent === entry.allowancePercent;
    if (same) list[list.length - 1] = { ...last, toKm: entry.toKm };
    else list.push(entry);
  }
  return list;
}
