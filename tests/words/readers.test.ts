import { describe, expect, it } from 'vitest';
import type { ReaderCautions, ReaderPhrases } from '../../server/core/phrases/readers.ts';
import type { Phrased, Said } from '../../server/core/phrases/said/said.ts';
import { textOf } from '../../server/words/words-of.ts';

const once = { count: 1, line: 12 };
const often = { count: 3, line: 12 };
const source = 'a.osm.pbf';
const NO_COVER = 'so it covers nothing: it shows supplies, and says nothing of where there are none';
const THINNED = 'there are too many for one map. Supplies are not affected.';

/** Whole sentences, so that none changes by accident. */
const CAUTIONS: readonly [Said<ReaderCautions>, string][] = [
  [{ code: 'gpx-old', facts: once }, 'The file is GPX 1.0, an old form (route file, line 12)'],
  [
    { code: 'gpx-version', facts: once },
    'The file names no GPX version that is known; it was read as 1.1 (route file, line 12)',
  ],
  [
    { code: 'gpx-empty-part', facts: often },
    '3 track(s), route(s) or segment(s) without points passed over (route file, line 12 on)',
  ],
  [
    { code: 'gpx-stray-points', facts: once },
    '1 point(s) outside a track segment or route passed over (route file, line 12)',
  ],
  [
    { code: 'gpx-no-segment', facts: once },
    '1 track point(s) directly in a track, taken as a segment (route file, line 12)',
  ],
  [
    { code: 'gpx-shape-points', facts: often },
    '3 extension point(s) that shape the way between route points passed over: the route runs straight between its route points (route file, line 12 on)',
  ],
  [
    { code: 'gpx-elevation-unread', facts: once },
    '1 elevation(s) that are not numbers passed over (route file, line 12)',
  ],
  [
    { code: 'gpx-longitude-180', facts: once },
    '1 point(s) at longitude 180, which GPX writes as -180 (route file, line 12)',
  ],
  [
    { code: 'gpx-damaged-text', facts: often },
    "Characters that are not valid in the file's encoding, shown as a replacement mark (in 3 place(s) or more) (route file, line 12 on)",
  ],
  [
    { code: 'bounds-unusable', facts: { source } },
    'a.osm.pbf declares bounds that are no box on earth; they were not used',
  ],
  [
    { code: 'bounds-refused', facts: { source } },
    'a.osm.pbf declares bounds that are no box on the Earth; they are not used.',
  ],
  [
    { code: 'cover-guessed', facts: { source } },
    'a.osm.pbf does not declare its bounds; the area between its outermost objects is taken for them. State the area in the trip if you know it',
  ],
  [{ code: 'cover-none', facts: { source, why: 'waypoints' } }, `a.osm.pbf holds waypoints, ${NO_COVER}`],
  [
    { code: 'cover-none', facts: { source, why: 'no-supply' } },
    `a.osm.pbf shows no supply and is no general map, ${NO_COVER}`,
  ],
  [{ code: 'cover-none', facts: { source, why: 'incomplete' } }, `a.osm.pbf is incomplete, ${NO_COVER}`],
  [
    { code: 'cover-none', facts: { source, why: 'no-area' } },
    `a.osm.pbf declares no bounds and its objects span no area, ${NO_COVER}`,
  ],
  [
    { code: 'maybe-cut', facts: { source, why: 'no-relations' } },
    'a.osm.pbf may have been cut off: it has ways and no relations. So it covers nothing: it shows supplies, and says nothing of where there are none. Download it again and compare the sizes; if it is whole, vouch for it in the trip (extracts: file and whole: true)',
  ],
  [
    { code: 'deleted-passed-over', facts: { count: 2 } },
    '2 objects that the file marks as deleted were passed over',
  ],
  [
    { code: 'extract-incomplete', facts: { source, remark: 'timed out' } },
    'a.osm.pbf is incomplete: the server that made it remarked "timed out". It is taken to cover nothing; download it again',
  ],
  [{ code: 'extract-empty', facts: { source } }, 'a.osm.pbf holds no object that may give fuel or water.'],
  [
    { code: 'extract-off-route', facts: { source, corridorM: 5300 } },
    "a.osm.pbf does not touch the route's corridor (5.3 km): it was read but tells nothing of this route. Check that it is the right area.",
  ],
  [
    { code: 'features-skipped', facts: { source, count: 4 } },
    '4 features of a.osm.pbf could not be used; they are listed as skipped',
  ],
  [
    { code: 'ground-thinned', facts: { lesserWays: 7 } },
    'the map shows the main roads only: 7 lesser ways were left out',
  ],
  [
    { code: 'ground-thinned', facts: { leftOut: 7 } },
    'The map leaves out 7 of the lesser roads and tracks of the extracts. The reckoning is not touched.',
  ],
  [
    { code: 'ground-thinned', facts: { source, missing: ['unclassified', 'track'], cut: 0 } },
    `The map's ground from a.osm.pbf shows no unclassified roads, tracks: ${THINNED}`,
  ],
  [
    { code: 'ground-thinned', facts: { source, missing: ['track'], cut: 5 } },
    `The map's ground from a.osm.pbf shows no tracks and 5 ways less than there are of the most important kind: ${THINNED}`,
  ],
  [
    { code: 'no-supply-in-waypoints', facts: { source, count: 9 } },
    'none of the 9 waypoints of a.osm.pbf says that it is fuel or water',
  ],
  [
    { code: 'osm-version-missing', facts: { source } },
    'a.osm.pbf does not say which version of the OSM format it has; it was read as 0.6',
  ],
  [
    { code: 'pbf-foreign-blob', facts: { source, count: 2 } },
    'a.osm.pbf holds 2 blobs of a type that is not map data; they were passed over.',
  ],
  [
    { code: 'placed-roughly', facts: { count: 2, ids: ['way/1', 'way/2'] } },
    '2 supplies are placed by what the extracts hold of them, for parts are missing: way/1, way/2',
  ],
  [
    { code: 'placed-roughly', facts: { count: 6, ids: ['way/1', 'way/2'] } },
    '6 supplies are placed by what the extracts hold of them, for parts are missing: way/1, way/2 and others',
  ],
  [
    { code: 'position-missing', facts: { count: 3 } },
    '3 supplies have no usable position and were passed over',
  ],
];

const REASONS: readonly [Phrased<ReaderPhrases>, string][] = [
  [{ phrase: 'skipped-no-position', facts: {} }, 'it has no position'],
  [
    { phrase: 'skipped-off-earth', facts: { lat: 91, lon: undefined } },
    'its position is not on earth: latitude 91, longitude undefined',
  ],
  [{ phrase: 'skipped-no-parts', facts: { parts: 'nodes' } }, 'it has no nodes'],
  [{ phrase: 'skipped-parts-missing', facts: { parts: 'members' } }, 'none of its members is in the extract'],
  [
    { phrase: 'skipped-members-apart', facts: { spreadM: 12_499 } },
    'its members lie about 12 km apart, so no one place stands for it',
  ],
  [
    { phrase: 'skipped-outline', facts: { of: 'relation/2' } },
    'it is the outline of relation/2, which has the same tags',
  ],
  [
    { phrase: 'skipped-newer-elsewhere', facts: { source } },
    'a.osm.pbf has a newer version of it, which is no supply any more',
  ],
  [
    { phrase: 'skipped-newer-in-file', facts: {} },
    'a newer version in the same file is deleted or no supply any more',
  ],
  [{ phrase: 'skipped-no-placed-members', facts: {} }, 'a relation without nodes or ways among its members'],
  [{ phrase: 'skipped-deleted', facts: {} }, 'marked as deleted in the file'],
  [{ phrase: 'skipped-block-off-earth', facts: { lat: 20, lon: 200 } }, 'position off the Earth (200, 20)'],
  [{ phrase: 'skipped-no-geometry', facts: {} }, 'it has no geometry'],
  [
    { phrase: 'skipped-geometry-type', facts: { type: 'GeometryCollection' } },
    'a geometry of type GeometryCollection stands for no one place',
  ],
  [{ phrase: 'skipped-misshapen', facts: {} }, 'its coordinates are not laid out as GeoJSON'],
  [
    { phrase: 'skipped-feature-off-earth', facts: { lon: '181', lat: '0' } },
    'its position is not on earth: longitude 181, latitude 0',
  ],
  [{ phrase: 'skipped-empty-geometry', facts: {} }, 'its geometry is empty'],
  [{ phrase: 'skipped-no-feature', facts: {} }, 'it is not a GeoJSON feature'],
  [{ phrase: 'skipped-no-tags', facts: {} }, 'it has no tags'],
  [{ phrase: 'skipped-no-supply', facts: {} }, 'its tags name no supply of fuel or water'],
  [
    { phrase: 'skipped-no-place', facts: {} },
    'it has no place on the Earth: no coordinates, or such as are out of range',
  ],
  [
    { phrase: 'skipped-denied-waypoint', facts: { source } },
    'this waypoint of a.osm.pbf speaks of a supply and takes it back',
  ],
];

describe('what the readers say', () => {
  it.each(CAUTIONS)('%j', (caution, text) => {
    expect(textOf(caution)).toBe(text);
  });

  it.each(REASONS)('%j', (reason, text) => {
    expect(textOf(reason)).toBe(text);
  });
});
