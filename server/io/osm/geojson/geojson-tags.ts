import type { Tags } from '../../../core/input/sources.ts';
import { setTag } from '../extract/set-tag.ts';
import { isObject, type JsonObject } from '../json/json-object.ts';

/** Properties that exporters add beside the tags. */
const NO_TAGS: ReadonlySet<string> = new Set(['meta', 'relations', 'geometry', 'tainted', 'timestamp']);

function nestedTags(value: unknown): JsonObject | null {
  if (isObject(value)) return value;
  if (typeof value !== 'string' || !value.startsWith('{')) return null;
  try {
    const parsed: unknown = JSON.parse(value);
    return isObject(parsed) ? parsed : null;
  } catch {
    return null;
  }
}

/**
 * The OSM tags of a feature: those of a `tags` member (an object, or one written as text) where there is one, else the
 * properties themselves, without those that exporters add ("@…", and `usedKeys`).
 */
export function geoJsonTags(properties: JsonObject, usedKeys: ReadonlySet<string>): Tags {
  const nested = nestedTags(properties.tags);
  const tags: Record<string, string> = {};
  for (const [key, value] of Object.entries(nested ?? properties)) {
    if (nested === null && (key.startsWith('@') || usedKeys.has(key) || NO_TAGS.has(key))) continue;
    if (typeof value === 'string') setTag(tags, key, value);
    else if (typeof value === 'number' || typeof value === 'boolean') setTag(tags, key, String(value));
  }
  return tags;
}
