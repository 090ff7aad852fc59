import type { Tags } from '../../../../core/input/sources.ts';
import type { GroundRank } from '../../../../core/phrases/readers.ts';

/** Order in which ground ways are kept when there are too many; highest first. Ours. */
const HIGHWAY_RANKS: Readonly<Record<string, number>> = {
  motorway: 8,
  motorway_link: 8,
  trunk: 7,
  trunk_link: 7,
  primary: 6,
  primary_link: 6,
  secondary: 5,
  secondary_link: 5,
  tertiary: 4,
  tertiary_link: 4,
  unclassified: 3,
  track: 2,
};
const COASTLINE_RANK = 9;

const RANK_NAMES: ReadonlyMap<number, GroundRank> = new Map([
  [COASTLINE_RANK, 'coastline'],
  [8, 'motorway'],
  [7, 'trunk'],
  [6, 'primary'],
  [5, 'secondary'],
  [4, 'tertiary'],
  [3, 'unclassified'],
  [2, 'track'],
]);

/** What has that rank. */
export function rankName(rank: number): GroundRank {
  const name = RANK_NAMES.get(rank);
  if (name === undefined) throw new RangeError(`no ground has the rank ${rank}`);
  return name;
}

/** Rank of a way as ground; 0 when it is none. */
export function groundRankOf(tags: Tags): number {
  if (tags.natural === 'coastline') return COASTLINE_RANK;
  const { highway } = tags;
  return highway === undefined || !Object.hasOwn(HIGHWAY_RANKS, highway) ? 0 : (HIGHWAY_RANKS[highway] ?? 0);
}

const PLACES = new Set(['city', 'town', 'village', 'hamlet']);

export const isGroundPlace = (tags: Tags): boolean => tags.place !== undefined && PLACES.has(tags.place);

const KEPT_KEYS = ['highway', 'natural', 'place', 'name', 'ref', 'surface', 'population'];

/** Those tags of a ground feature that a map draws by. */
export function groundTagsOf(tags: Tags): Record<string, string> {
  const kept: Record<string, string> = {};
  for (const key of KEPT_KEYS) {
    const value = tags[key];
    if (value !== undefined) kept[key] = value;
  }
  return kept;
}
