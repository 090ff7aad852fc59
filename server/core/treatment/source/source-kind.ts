import type { SourceKind } from '../../../contract/treatment.ts';
import type { Tags } from '../../input/sources.ts';
import { hostOf } from '../../supply/tags/hosts.ts';
import { isTagged } from '../../supply/tags/vocabulary.ts';

/** Kinds of the tag table whose water comes through pipes. */
const PIPED: readonly string[] = [
  'amenity=drinking_water',
  'amenity=water_point',
  'waterway=water_point',
  'man_made=water_tap',
  'water_point=yes',
];

/** Where the water of a mapped object comes from, by the key of its rule in the table of kinds and its tags. */
export function sourceKindOf(ruleKey: string, tags: Tags): SourceKind {
  if (ruleKey === 'man_made=water_well' || tags.man_made === 'water_well') {
    // Only where its tags say that people drink it is a well more than a hole in the desert.
    const drunk =
      PIPED.includes(ruleKey) ||
      isTagged(tags, 'drinking_water', 'yes') ||
      isTagged(tags, 'drinking_water:legal', 'yes');
    return drunk || tags.man_made === 'village_pump' ? 'village-well' : 'bore';
  }
  if (ruleKey === 'natural=spring' || ruleKey === 'man_made=spring_box' || tags.natural === 'spring') {
    return 'spring';
  }
  if (tags.natural === 'water' || tags.water !== undefined || isRunning(tags)) return 'river';
  if (PIPED.includes(ruleKey) || hostOf(tags) !== null) return 'piped-tap';
  return 'unknown';
}

const isRunning = (tags: Tags): boolean =>
  ['river', 'stream', 'canal', 'ditch'].includes(tags.waterway ?? '');
