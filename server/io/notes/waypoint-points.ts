import type { OwnPoint } from '../../contract/notes.ts';
import { FuelKind } from '../../contract/rig.ts';
import type { MappedFeature, Tags, Waypoint } from '../../core/input/sources.ts';
import { waypointFeatures } from '../osm/waypoints/waypoints.ts';

const FUELS: readonly FuelKind[] = FuelKind.anyOf.map((one) => one.const);

/**
 * Waypoints as own points, those that say what is to be had: a kind of fuel, or water of a kind whose use is plain. The
 * others are no notes; "fuel" alone does not say of which kind. `today` dates those without a time, ISO.
 */
export function pointsOfWaypoints(waypoints: readonly Waypoint[], source: string, today: string): OwnPoint[] {
  const placed = waypoints.filter(
    ({ lon, lat }) =>
      Number.isFinite(lon) && Number.isFinite(lat) && Math.abs(lat) <= 90 && Math.abs(lon) <= 180,
  );
  return waypointFeatures(placed, source).features.flatMap((feature) => pointOf(feature, today));
}

function pointOf({ id, geometry, tags, editedAt }: MappedFeature, today: string): OwnPoint[] {
  const fuels = FUELS.filter((kind) => tags[`fuel:${kind}`] === 'yes');
  const grade = gradeOf(tags);
  if ((fuels.length === 0 && grade === null) || geometry.type !== 'Point') return [];
  const [lon = 0, lat = 0] = geometry.coordinates;
  const day = editedAt?.slice(0, 10) ?? today;
  return [
    {
      id: id.slice(id.indexOf('/') + 1).slice(0, 80),
      ...(tags.name === undefined ? {} : { name: tags.name.slice(0, 120) }),
      at: `${lat}, ${lon}`,
      ...(fuels.length === 0 ? {} : { fuels }),
      ...(grade === null ? {} : { grade }),
      on: /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : today,
    },
  ];
}

function gradeOf(tags: Tags): NonNullable<OwnPoint['grade']> | null {
  if (tags.amenity === 'drinking_water' || tags.amenity === 'water_point' || tags.drinking_water === 'yes')
    return 'drinking';
  return tags.natural === 'spring' || tags.drinking_water === 'untreated' ? 'treatable' : null;
}
