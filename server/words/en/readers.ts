import type { GroundRank, InRouteFile, MaybeCutWhy, NoCoverWhy } from '../../core/phrases/readers.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { kmOf, rounded } from '../parts/figures.ts';
import { type Parts, parts } from '../parts/part.ts';

/** The sentence with its place in the route's file. */
const inRouteFile = (sentence: Parts, { count, line }: InRouteFile): Parts =>
  parts`${sentence} (route file, line ${line}${count > 1 ? ' on' : ''})`;

const RANKS: Readonly<Record<GroundRank, string>> = {
  coastline: 'coastline',
  motorway: 'motorways',
  trunk: 'trunk roads',
  primary: 'primary roads',
  secondary: 'secondary roads',
  tertiary: 'tertiary roads',
  unclassified: 'unclassified roads',
  track: 'tracks',
};

const NO_COVER: Readonly<Record<NoCoverWhy, string>> = {
  waypoints: 'holds waypoints',
  'no-supply': 'shows no supply and is no general map',
  incomplete: 'is incomplete',
  'no-area': 'declares no bounds and its objects span no area',
};

const MAYBE_CUT: Readonly<Record<MaybeCutWhy, string>> = {
  'no-objects': 'there is nothing in it',
  'no-nodes': 'it has ways or relations and none of the nodes that they are made of',
  'no-ways': 'it has nodes that are parts of ways, and no ways',
  'no-relations': 'it has ways and no relations',
  'full-block': 'its last block is full, as one in the middle of a file is',
};

const AGE_UNKNOWN: Readonly<Record<'untold' | 'ahead' | 'absurd', string>> = {
  untold: 'does not say how old it is',
  ahead: 'is dated after today, which is not believed',
  absurd: 'is dated before there was such a map, which is not believed',
};

const undatedObjects = (count: number): string =>
  count === 0
    ? ''
    : `, nor do ${count} of its supplies near the route: they are taken to be known one level less well`;

/** What is missing from the map's ground: "no tracks and 3 ways less than …". */
function missingGround(missing: readonly GroundRank[], cut: number): string {
  const ranks = missing.length === 0 ? [] : [`no ${missing.map((rank) => RANKS[rank]).join(', ')}`];
  const ways = cut === 0 ? [] : [`${cut} ways less than there are of the most important kind`];
  return [...ranks, ...ways].join(' and ');
}

export const READER_CAUTIONS = {
  'gpx-old': (file) => inRouteFile(parts`The file is GPX 1.0, an old form`, file),
  'gpx-version': (file) =>
    inRouteFile(parts`The file names no GPX version that is known; it was read as 1.1`, file),
  'gpx-empty-part': (file) =>
    inRouteFile(parts`${file.count} track(s), route(s) or segment(s) without points passed over`, file),
  'gpx-stray-points': (file) =>
    inRouteFile(parts`${file.count} point(s) outside a track segment or route passed over`, file),
  'gpx-no-segment': (file) =>
    inRouteFile(parts`${file.count} track point(s) directly in a track, taken as a segment`, file),
  'gpx-shape-points': (file) =>
    inRouteFile(
      parts`${file.count} extension point(s) that shape the way between route points passed over: the route runs straight between its route points`,
      file,
    ),
  'gpx-elevation-unread': (file) =>
    inRouteFile(parts`${file.count} elevation(s) that are not numbers passed over`, file),
  'gpx-longitude-180': (file) =>
    inRouteFile(parts`${file.count} point(s) at longitude 180, which GPX writes as -180`, file),
  'gpx-damaged-text': (file) =>
    inRouteFile(
      parts`Characters that are not valid in the file's encoding, shown as a replacement mark (in ${file.count} place(s) or more)`,
      file,
    ),
  'age-unknown': ({ source, why, on, objects }) =>
    parts`${source} ${AGE_UNKNOWN[why]}${on === null ? '' : ` (${on})`}${undatedObjects(objects)}. Say in the trip of which day it is (extracts: file and asOf)`,
  'bounds-unusable': ({ source }) =>
    parts`${source} declares bounds that are no box on earth; they were not used`,
  'bounds-refused': ({ source }) =>
    parts`${source} declares bounds that are no box on the Earth; they are not used.`,
  'cover-guessed': ({ source }) =>
    parts`${source} does not declare its bounds; the area between its outermost objects is taken for them. State the area in the trip if you know it`,
  'cover-unvouched': ({ source }) =>
    parts`${source} does not declare its bounds, so it covers nothing: it shows supplies, and says nothing of where there are none. Vouch for it in the trip (extracts: file and hull: true) if it shows all between its outermost objects`,
  'cover-none': ({ source, why }) =>
    parts`${source} ${NO_COVER[why]}, so it covers nothing: it shows supplies, and says nothing of where there are none`,
  'deleted-passed-over': ({ count }) =>
    parts`${count} objects that the file marks as deleted were passed over`,
  'extract-incomplete': ({ source, remark }) =>
    parts`${source} is incomplete: the server that made it remarked "${remark}". It is taken to cover nothing; download it again`,
  'extract-empty': ({ source }) => parts`${source} holds no object that may give fuel or water.`,
  'extract-off-route': ({ source, corridorM }) =>
    parts`${source} does not touch the route's corridor (${rounded(kmOf(corridorM), 'km', 9)}): it was read but tells nothing of this route. Check that it is the right area.`,
  'extract-not-given': ({ file }) =>
    parts`The trip speaks of an extract "${file}", which is not among those given: what it says of it is not used`,
  'features-skipped': ({ source, count }) =>
    parts`${count} features of ${source} could not be used; they are listed as skipped`,
  'ground-thinned': (facts) =>
    'lesserWays' in facts
      ? parts`the map shows the main roads only: ${facts.lesserWays} lesser ways were left out`
      : 'leftOut' in facts
        ? parts`The map leaves out ${facts.leftOut} of the lesser roads and tracks of the extracts. The reckoning is not touched.`
        : parts`The map's ground from ${facts.source} shows ${missingGround(facts.missing, facts.cut)}: there are too many for one map. Supplies are not affected.`,
  'maybe-cut': ({ source, why }) =>
    parts`${source} may have been cut off: ${MAYBE_CUT[why]}. So it covers nothing: it shows supplies, and says nothing of where there are none. Download it again and compare the sizes; if it is whole, vouch for it in the trip (extracts: file and whole: true)`,
  'no-supply-in-waypoints': ({ source, count }) =>
    parts`none of the ${count} waypoints of ${source} says that it is fuel or water`,
  'osm-version-missing': ({ source }) =>
    parts`${source} does not say which version of the OSM format it has; it was read as 0.6`,
  'pbf-foreign-blob': ({ source, count }) =>
    parts`${source} holds ${count} blobs of a type that is not map data; they were passed over.`,
  'placed-roughly': ({ count, ids }) =>
    parts`${count} supplies are placed by what the extracts hold of them, for parts are missing: ${ids.join(', ')}${count > ids.length ? ' and others' : ''}`,
  'position-missing': ({ count }) => parts`${count} supplies have no usable position and were passed over`,
} satisfies Partial<Catalogue['cautions']>;

/** Why an object was passed over. */
export const READER_PHRASES = {
  'skipped-no-position': () => parts`it has no position`,
  'skipped-off-earth': ({ lat, lon }) =>
    parts`its position is not on earth: latitude ${String(lat)}, longitude ${String(lon)}`,
  'skipped-no-parts': (facts) => parts`it has no ${facts.parts}`,
  'skipped-parts-missing': (facts) => parts`none of its ${facts.parts} is in the extract`,
  'skipped-members-apart': ({ spreadM }) =>
    parts`its members lie about ${rounded(kmOf(spreadM), 'km', 0)} apart, so no one place stands for it`,
  'skipped-outline': ({ of }) => parts`it is the outline of ${of}, which has the same tags`,
  'skipped-newer-elsewhere': ({ source }) =>
    parts`${source} has a newer version of it, which is no supply any more`,
  'skipped-newer-in-file': () => parts`a newer version in the same file is deleted or no supply any more`,
  'skipped-no-placed-members': () => parts`a relation without nodes or ways among its members`,
  'skipped-deleted': () => parts`marked as deleted in the file`,
  'skipped-block-off-earth': ({ lat, lon }) => parts`position off the Earth (${String(lon)}, ${String(lat)})`,
  'skipped-no-geometry': () => parts`it has no geometry`,
  'skipped-geometry-type': ({ type }) => parts`a geometry of type ${type} stands for no one place`,
  'skipped-misshapen': () => parts`its coordinates are not laid out as GeoJSON`,
  'skipped-feature-off-earth': ({ lon, lat }) =>
    parts`its position is not on earth: longitude ${lon}, latitude ${lat}`,
  'skipped-empty-geometry': () => parts`its geometry is empty`,
  'skipped-no-feature': () => parts`it is not a GeoJSON feature`,
  'skipped-no-tags': () => parts`it has no tags`,
  'skipped-no-supply': () => parts`its tags name no supply of fuel or water`,
  'skipped-no-place': () => parts`it has no place on the Earth: no coordinates, or such as are out of range`,
  'skipped-denied-waypoint': ({ source }) =>
    parts`this waypoint of ${source} speaks of a supply and takes it back`,
} satisfies Partial<Catalogue['phrases']>;
