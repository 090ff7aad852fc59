import type { NoFacts } from './said/said.ts';

/** How many there are in the route's file, and the line of the first. */
export interface InRouteFile {
  count: number;
  line: number;
}

/** What a route's file had that was passed over, or taken with care. */
interface RouteFileCautions {
  'gpx-old': InRouteFile;
  'gpx-version': InRouteFile;
  'gpx-empty-part': InRouteFile;
  'gpx-stray-points': InRouteFile;
  'gpx-no-segment': InRouteFile;
  'gpx-shape-points': InRouteFile;
  'gpx-elevation-unread': InRouteFile;
  'gpx-longitude-180': InRouteFile;
  'gpx-damaged-text': InRouteFile;
}
export type RouteFileCode = keyof RouteFileCautions;

/** Ways of the map's ground by their rank, the highest first. */
export type GroundRank =
  | 'coastline'
  | 'motorway'
  | 'trunk'
  | 'primary'
  | 'secondary'
  | 'tertiary'
  | 'unclassified'
  | 'track';

/** Why an extract says nothing of where there is no supply. */
export type NoCoverWhy = 'waypoints' | 'no-supply' | 'incomplete' | 'no-area';

/** Why a file may have been cut off between two of its blobs; see io/osm/pbf/find/maybe-cut. */
export type MaybeCutWhy = 'no-objects' | 'no-nodes' | 'no-ways' | 'no-relations' | 'full-block';

/** What to know of an extract. `source` is its file. */
export interface ReaderCautions extends RouteFileCautions {
  /** `objects`: those whose age is not known for it; `on`: the date that is not believed. */
  'age-unknown': {
    source: string;
    why: 'untold' | 'ahead' | 'absurd';
    on: string | null;
    objects: number;
  };
  'bounds-unusable': { source: string };
  'bounds-refused': { source: string };
  'cover-guessed': { source: string };
  'cover-unvouched': { source: string };
  'cover-none': { source: string; why: NoCoverWhy };
  'deleted-passed-over': { count: number };
  /** The trip speaks of a file that is not among the extracts. */
  'extract-not-given': { file: string };
  'extract-incomplete': { source: string; remark: string };
  'extract-empty': { source: string };
  'extract-off-route': { source: string; corridorM: number };
  'features-skipped': { source: string; count: number };
  /** Lesser ways left out of a file, or of all files by an analysis; or the ranks that are missing from a file's ground, and how many of the highest besides. */
  'ground-thinned':
    | { lesserWays: number }
    | { leftOut: number }
    | { source: string; missing: readonly GroundRank[]; cut: number };
  'maybe-cut': { source: string; why: MaybeCutWhy };
  'no-supply-in-waypoints': { source: string; count: number };
  'osm-version-missing': { source: string };
  'pbf-foreign-blob': { source: string; count: number };
  /** `ids`: the first few. */
  'placed-roughly': { count: number; ids: readonly string[] };
  'position-missing': { count: number };
}

/** Why an object was passed over. */
export interface ReaderPhrases {
  'skipped-no-position': NoFacts;
  'skipped-off-earth': { lat: number | undefined; lon: number | undefined };
  'skipped-no-parts': { parts: 'nodes' | 'members' };
  'skipped-parts-missing': { parts: 'nodes' | 'members' };
  'skipped-members-apart': { spreadM: number };
  'skipped-outline': { of: string };
  'skipped-newer-elsewhere': { source: string };
  'skipped-newer-in-file': NoFacts;
  'skipped-no-placed-members': NoFacts;
  'skipped-deleted': NoFacts;
  'skipped-block-off-earth': { lat: number | undefined; lon: number | undefined };
  'skipped-no-geometry': NoFacts;
  'skipped-geometry-type': { type: string };
  'skipped-misshapen': NoFacts;
  'skipped-feature-off-earth': { lon: string; lat: string };
  'skipped-empty-geometry': NoFacts;
  'skipped-no-feature': NoFacts;
  'skipped-no-tags': NoFacts;
  'skipped-no-supply': NoFacts;
  'skipped-no-place': NoFacts;
  'skipped-denied-waypoint': { source: string };
}
