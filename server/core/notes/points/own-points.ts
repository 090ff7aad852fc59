import type { OwnPoint } from '../../../contract/notes.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';
import type { MappedFeature, Tags } from '../../input/sources.ts';
import { ownPointId } from '../../supply/points/laid.ts';
import { type FoundReason, found } from '../../supply/tags/reasons.ts';
import { saidBy } from '../../supply/tags/said-by.ts';
import { coordinatesOf } from '../coordinates.ts';
import { fuelTags } from './told-tags.ts';

/** Water as tags say it: untreated water comes from the ground, and is no more than that. */
const WATER_TAGS: Record<NonNullable<OwnPoint['grade']>, Tags> = {
  drinking: { man_made: 'water_tap', drinking_water: 'yes' },
  treatable: { natural: 'spring', drinking_water: 'untreated' },
  washing: { natural: 'spring', drinking_water: 'no' },
};

/** Own points as objects of a map, at their places. */
export const ownFeatures = (points: readonly OwnPoint[]): MappedFeature[] =>
  points.map((point) => {
    const { lon, lat } = placeOfOwn(point);
    return {
      id: ownPointId(point),
      geometry: { type: 'Point', coordinates: [lon, lat] },
      tags: tagsOf(point),
      editedAt: point.on,
    };
  });

/** The place of an own point; the trip is taken as checked. */
function placeOfOwn({ id, at }: OwnPoint): LonLat {
  const coordinates = coordinatesOf(at);
  if (!coordinates.ok) throw new Error(`own point ${id} was not checked: ${coordinates.fault.phrase}`);
  return coordinates.place;
}

function tagsOf({ name, fuels, grade, openingHours, phone, website }: OwnPoint): Tags {
  return {
    ...(fuels === undefined ? {} : { amenity: 'fuel', ...fuelTags(fuels) }),
    ...(grade === undefined ? {} : WATER_TAGS[grade]),
    ...(name === undefined ? {} : { name }),
    ...(openingHours === undefined ? {} : { opening_hours: openingHours }),
    ...(phone === undefined ? {} : { phone }),
    ...(website === undefined ? {} : { website }),
  };
}

/** Between which days one may come by, ISO; null where no departure is told. */
export interface DaysThere {
  readonly earliest: string;
  readonly latest: string;
}

/** What is to be said of an own point, and whether it is there on the days on which it is come to. */
export function ownReasons(point: OwnPoint, days: DaysThere | null): FoundReason[] {
  const { on, from, until } = point;
  const reasons: FoundReason[] = [found('own-point', { on, ...saidBy(point) })];
  const earliest = days?.earliest ?? null;
  const latest = days?.latest ?? null;
  if (from !== undefined && (earliest === null || earliest < from))
    reasons.push(found('not-there-yet', { from, earliest }));
  if (until !== undefined && (latest === null || latest > until))
    reasons.push(found('no-longer-there', { until, latest }));
  return reasons;
}
