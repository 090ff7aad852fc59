import type { Feature, LineString } from 'geojson';
import type { GroundMark } from '../../contract/answers/map.ts';
import type { Bbox } from '../../contract/common.ts';
import { numberAt, numberIn } from '../lists/at.ts';
import { FINEST_SHARE, onMap, weightsOf } from './simplify-line.ts';

type Ground = Feature<Feature['geometry'], GroundMark>;

/** Vertices of ground lines at most (ours): about 1.5 MB of a reply that comes at every change of the rig. */
const MAX_GROUND_VERTICES = 60_000;

/** Drawn first, dropped last. `_link` roads rank with their road. */
const RANKS: readonly string[] = [
  'coastline',
  'motorway',
  'trunk',
  'primary',
  'secondary',
  'tertiary',
  'unclassified',
  'track',
];

/**
 * Ground for a map of the box: lines without the bends that it could not show, then the highest ranks up to a number of
 * vertices. Gives how many lines were left out for that; points are all kept.
 */
export function thinGround(
  ground: readonly Ground[],
  box: Bbox,
  maxVertices = MAX_GROUND_VERTICES,
): { ground: Ground[]; dropped: number } {
  const tolerance = finestOf(box);
  const lines = ground
    .filter((feature): feature is Feature<LineString, GroundMark> => feature.geometry.type === 'LineString')
    .sort((a, b) => rankOf(a) - rankOf(b));
  const kept: Ground[] = ground.filter((feature) => feature.geometry.type !== 'LineString');
  let vertices = 0;
  let dropped = 0;
  for (const line of lines) {
    const coordinates = thinned(line.geometry.coordinates, tolerance);
    if (vertices + coordinates.length > maxVertices) {
      dropped += 1;
      continue;
    }
    vertices += coordinates.length;
    kept.push({ ...line, geometry: { type: 'LineString', coordinates } });
  }
  return { ground: kept, dropped };
}

/** The size of a bend, radians, that a map of the box just shows. */
export function finestOf([west, , east]: Bbox): number {
  const widthDeg = east < west ? east + 360 - west : east - west;
  return ((widthDeg * Math.PI) / 180) * FINEST_SHARE;
}

function rankOf(feature: Ground): number {
  const rank = RANKS.indexOf(feature.properties.rank.replace(/_link$/, ''));
  return rank < 0 ? RANKS.length : rank;
}

/** A line without bends smaller than the tolerance, radians; its ends stay. */
export function thinned(
  coordinates: LineString['coordinates'],
  tolerance: number,
): LineString['coordinates'] {
  if (coordinates.length < 3) return coordinates;
  const { x, y } = onMap(
    Float64Array.from(coordinates, (position) => numberIn(position, 0)),
    Float64Array.from(coordinates, (position) => numberIn(position, 1)),
  );
  const weight = weightsOf(x, y);
  return coordinates.filter((_, index) => numberAt(weight, index) > tolerance);
}
