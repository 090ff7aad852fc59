import type { MappedFeature, PassedOver, Waypoint } from '../../../core/input/sources.ts';
import { holdsAny, wholeWords } from '../../../core/supply/tags/denying/whole-words.ts';
import { OwnIds } from '../extract/own-ids.ts';
import { commoditiesOf } from '../extract/wanted-tags.ts';
import { parseTagText, supplyWord } from './waypoint-tags.ts';
import { CAMP_WORDS } from './waypoint-words.ts';

export interface WaypointSupplies {
  features: MappedFeature[];
  skipped: PassedOver[];
}

/**
 * The waypoints that say that they are fuel or water: by OSM tags in `desc` or `cmt`, else by symbol, type or name.
 * The others are no supply, which is no fault. One that says so and takes it back ("no water") is listed as skipped.
 * Own points get ids of their names; `source` is the file's name, for messages.
 */
export function waypointFeatures(waypoints: readonly Waypoint[], source: string): WaypointSupplies {
  const ownIds = new OwnIds();
  const supplies: WaypointSupplies = { features: [], skipped: [] };
  for (const waypoint of waypoints) {
    const geometry = { type: 'Point' as const, coordinates: [waypoint.lon, waypoint.lat] };
    const written = [waypoint.description, waypoint.comment]
      .map((text) => (text === null ? null : parseTagText(text)))
      .find((text) => text !== null && commoditiesOf(text.tags).length > 0);
    if (written) {
      const id = written.id ?? ownIds.of(written.tags.name ?? waypoint.name ?? 'point');
      const editedAt = written.id === null ? waypoint.time : null;
      supplies.features.push({ id, geometry, tags: written.tags, editedAt });
      continue;
    }
    const spoken = supplyWord(waypoint);
    if (spoken === null) continue;
    const id = ownIds.of(waypoint.name ?? waypoint.symbol ?? waypoint.type ?? 'point');
    if (spoken.denied) {
      supplies.skipped.push({ id, reason: { phrase: 'skipped-denied-waypoint', facts: { source } } });
      continue;
    }
    const name = waypoint.name === null ? {} : { name: waypoint.name };
    supplies.features.push({ id, geometry, tags: { ...spoken.row.tags, ...name }, editedAt: waypoint.time });
  }
  return supplies;
}

/** Whether a waypoint marks a night's halt, by symbol, type or name. */
export const isCamp = (waypoint: Waypoint): boolean =>
  [waypoint.symbol, waypoint.type, waypoint.name].some((text) =>
    holdsAny(wholeWords(text ?? ''), CAMP_WORDS),
  );
