import type { Commodity, ObjectThen } from '../../../contract/common.ts';
import type { TripFile } from '../../../contract/trip.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';
import { stepM } from '../../geodesy/step.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { NearSupply } from '../../phrases/notes.ts';
import type { SupplyFeature } from '../../supply/points/supply-feature.ts';
import { changedTags } from '../../supply/tags/bearing.ts';
import { wantedFor } from '../../supply/tags/wanted.ts';

/** An object that stands farther from where it was noted has moved, metres (ours). */
const MOVED_M = 20;
/** Another supply so near to where one was noted may be what it has become, metres (ours). */
const NEAR_M = 200;

/** What was noted of one object, the newest note that tells what it was. */
interface NotedObject {
  readonly id: string;
  readonly on: string;
  readonly was: ObjectThen | null;
}

export interface SurvivalFacts {
  /** The objects of the map and the user's own points, before anything is corrected. */
  readonly features: readonly SupplyFeature[];
  /** Ids of supplies that are on no map. */
  readonly laid: readonly string[];
  /** Whether a place is one that the route could come by. */
  readonly isOnRoute: (place: LonLat) => boolean;
}

/**
 * What became of the objects of which something is noted: not on the map any more, moved, with other tags, or with a new
 * one beside. Notes go by the id of the object; one at a place where the route does not come by is not asked about.
 */
export function survivalCautions(trip: TripFile, facts: SurvivalFacts): Caution[] {
  const byId = new Map<string, SupplyFeature>();
  for (const feature of facts.features)
    for (const id of [feature.id, ...feature.alsoIds]) byId.set(id, feature);
  return notedObjects(trip).flatMap((noted): Caution[] => {
    const feature = byId.get(noted.id);
    if (feature !== undefined) return changeCautions(noted, feature, facts);
    if (facts.laid.includes(noted.id)) return [];
    return noted.was === null || facts.isOnRoute(noted.was) ? [goneCaution(noted, facts)] : [];
  });
}

function notedObjects({ confirmations = [], corrections = [], waterNotes = [] }: TripFile): NotedObject[] {
  const noted = new Map<string, NotedObject>();
  for (const { id, on, was = null } of [...confirmations, ...corrections, ...waterNotes]) {
    const known = noted.get(id);
    const isBetter = known === undefined || (was !== null && (known.was === null || on >= known.on));
    if (isBetter) noted.set(id, { id, on, was });
  }
  return [...noted.values()];
}

function goneCaution(noted: NotedObject, facts: SurvivalFacts): Caution {
  const { id, on, was } = noted;
  const near = was === null ? null : nearestOf(was, suppliesNear(noted, was, facts));
  return { code: 'note-object-gone', facts: { id, on, near } };
}

function changeCautions(noted: NotedObject, feature: SupplyFeature, facts: SurvivalFacts): Caution[] {
  const { id, on, was } = noted;
  if (was === null) return [];
  const name = feature.tags.name ?? null;
  const cautions: Caution[] = [];
  const movedM = metresBetween(was, feature);
  if (movedM > MOVED_M) cautions.push({ code: 'note-object-moved', facts: { id, name, on, movedM } });
  const changes = was.tags === undefined ? [] : changedTags(was.tags, feature.tags);
  if (changes.length > 0) cautions.push({ code: 'note-object-changed', facts: { id, name, on, changes } });
  const { near: known } = was;
  if (known === undefined) return cautions;
  const others = suppliesNear(noted, was, facts).filter(
    (other) => other !== feature && ![other.id, ...other.alsoIds].some((one) => known.includes(one)),
  );
  const near = nearestOf(was, others);
  return near === null ? cautions : [...cautions, { code: 'note-new-nearby', facts: { id, name, on, near } }];
}

/** Other supplies of the same commodity near where an object was noted. */
function suppliesNear({ id }: NotedObject, was: ObjectThen, { features }: SurvivalFacts): SupplyFeature[] {
  const sought: readonly Commodity[] = was.tags === undefined ? ['fuel', 'water'] : wantedFor(was.tags);
  return features.filter(
    (other) =>
      other.id !== id &&
      other.wanted.some((commodity) => sought.includes(commodity)) &&
      metresBetween(was, other) <= NEAR_M,
  );
}

function nearestOf(place: LonLat, features: readonly SupplyFeature[]): NearSupply | null {
  const [nearest] = features
    .map(({ id, tags, lon, lat }) => ({
      id,
      name: tags.name ?? null,
      offM: metresBetween(place, { lon, lat }),
    }))
    .sort((a, b) => a.offM - b.offM || (a.id < b.id ? -1 : 1));
  return nearest ?? null;
}

const metresBetween = (a: LonLat, b: LonLat): number => stepM(a.lon, a.lat, b.lon, b.lat);
