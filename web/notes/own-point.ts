import type { OwnPoint } from '../../server/contract/notes.ts';
import type { TripFile } from '../../server/contract/trip.ts';

/** A place by its co-ordinates, to a metre: "-33.86812, 84.20710". */
export const coordinatesText = ({ lon, lat }: { lon: number; lat: number }): string =>
  `${lat.toFixed(5)}, ${lon.toFixed(5)}`;

/** The trip with an own point more, under an id that no other has. */
export function withOwnPoint(trip: TripFile, point: Omit<OwnPoint, 'id'>): TripFile {
  const points = trip.ownPoints ?? [];
  return { ...trip, ownPoints: [...points, { id: freeId(points, point.name), ...point }] };
}

export function withoutOwnPoint(trip: TripFile, id: string): TripFile {
  const { ownPoints = [], ...others } = trip;
  const left = ownPoints.filter((point) => point.id !== id);
  return left.length === 0 ? others : { ...others, ownPoints: left };
}

/** The name as an id, with a number where that is taken. */
function freeId(points: readonly OwnPoint[], name = 'point'): string {
  const plain =
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'point';
  const taken = new Set(points.map(({ id }) => id));
  for (let number = 1; ; number += 1) {
    const id = number === 1 ? plain : `${plain}-${number}`;
    if (!taken.has(id)) return id;
  }
}
