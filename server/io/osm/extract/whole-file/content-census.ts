import type { Tags } from '../../../../core/input/sources.ts';

/** Kinds of object by which a general map is known. */
export interface ContentCounts {
  roads: number;
  places: number;
  /** Anything else than supplies: houses, schools, shops, woods, waters. */
  others: number;
}

/** Fewer than these are marks that a file cut down to supplies may have kept by chance. Ours. */
const LEAST: ContentCounts = { roads: 5, places: 2, others: 5 };

/** Nobody counts on beyond this. */
export const CONTENT_COUNTED = 10;

/** Keys of what a general map holds besides roads, places and supplies. */
export const OTHER_KEYS = [
  'building',
  'amenity',
  'shop',
  'tourism',
  'leisure',
  'office',
  'man_made',
  'natural',
  'landuse',
  'waterway',
] as const;

export const noContent = (): ContentCounts => ({ roads: 0, places: 0, others: 0 });

/** Counts an object that supplies nothing. `isLine`: it is drawn as a line or an area, as roads are. */
export function countContent(counts: ContentCounts, tags: Tags, isLine: boolean): void {
  if (tags.highway !== undefined && isLine) counts.roads += 1;
  if (tags.place !== undefined) counts.places += 1;
  if (OTHER_KEYS.some((key) => tags[key] !== undefined)) counts.others += 1;
}

export function addContent(counts: ContentCounts, more: ContentCounts): void {
  counts.roads += more.roads;
  counts.places += more.places;
  counts.others += more.others;
}

/** Whether a file of these is a general map: roads and places and other kinds, in plausible numbers. */
export const isGeneralMap = ({ roads, places, others }: ContentCounts): boolean =>
  roads >= LEAST.roads && places >= LEAST.places && others >= LEAST.others;

/** Whether there are roads enough to tell by them where a file covers. */
export const tellsByRoads = ({ roads }: ContentCounts): boolean => roads >= LEAST.roads;
