import type { PassedOver, Tags } from '../../input/sources.ts';
import { hostOf } from '../tags/hosts.ts';
import { ANY_WITH_WATER } from '../tags/kinds.ts';
import { matchKinds } from '../tags/match-kinds.ts';
import { isDeciding } from '../tags/vocabulary.ts';
import { wantedFor } from '../tags/wanted.ts';
import type { DatedFeature } from './dated.ts';
import { mergeNodes } from './merge.ts';
import { placeOf } from './place.ts';
import type { OtherReading, PlacedFeature, SupplyFeature } from './supply-feature.ts';

/** The kinds of an object as merging knows them; former ones are the same kind as live ones. */
function kindsOf(tags: Tags): string[] {
  const kinds: string[] = [];
  for (const { rule } of matchKinds(tags)) {
    if (rule !== ANY_WITH_WATER) kinds.push(rule.key);
    else {
      const host = hostOf(tags);
      if (host !== null) kinds.push(`water at ${host}`);
    }
  }
  return kinds;
}

/** What other files say of one object, where that can decide anything. */
function readingsOf(id: string, tags: Tags, otherTags: readonly Tags[]): OtherReading[] {
  return otherTags.flatMap((other) => {
    const all = new Set([...Object.keys(tags), ...Object.keys(other)]);
    const keys = [...all].filter((key) => isDeciding(key) && tags[key] !== other[key]);
    return keys.length === 0 ? [] : [{ id, tags: other, keys }];
  });
}

/**
 * Mapped objects as supplies, each at one place on its geometry. A node inside the mapped area of an object of the
 * same kind becomes part of that area; nothing else is merged. Every object given is in the result: as a feature, in the `alsoIds` of
 * one, or in `skipped` with the reason.
 */
export function toSupplyFeatures(mapped: readonly DatedFeature[]): {
  features: SupplyFeature[];
  skipped: PassedOver[];
} {
  const skipped: PassedOver[] = [];
  const placed: PlacedFeature[] = [];
  for (const { id, geometry, tags, editedAt, undated, mapOn, goneIn, otherTags } of mapped) {
    const wanted = wantedFor(tags);
    if (wanted.length === 0) {
      skipped.push({ id, reason: { phrase: 'skipped-no-supply', facts: {} } });
      continue;
    }
    const place = placeOf(geometry);
    if (place === null) {
      skipped.push({ id, reason: { phrase: 'skipped-no-place', facts: {} } });
      continue;
    }
    const feature: SupplyFeature = { id, alsoIds: [], lon: place[0], lat: place[1], tags, editedAt, wanted };
    if (undated !== undefined) feature.undated = undated;
    if (mapOn !== undefined) feature.mapOn = mapOn;
    if (goneIn !== undefined) feature.goneIn = goneIn;
    const readings = readingsOf(id, tags, otherTags ?? []);
    if (readings.length > 0) feature.otherReadings = readings;
    placed.push({ feature, geometry, kinds: kindsOf(tags) });
  }
  return { features: mergeNodes(placed), skipped };
}
