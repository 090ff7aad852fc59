import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { InputProblem, type ProblemCode } from '../../../server/core/input/problem.ts';
import type { RouteDocument } from '../../../server/core/input/sources.ts';
import { readGpx } from '../../../server/io/gpx/read-gpx.ts';
import { describeReal, REAL_FOLDER, realPath } from '../../helpers/real.ts';

/** Read: the cautions' codes. Refused: the code, and the words of the line that say why. */
type Outcome = { cautions: string[] } | { refused: ProblemCode; why: string };
const read = (...cautions: string[]): Outcome => ({ cautions });
const NO_POINT: Outcome = { refused: 'gpx-no-points', why: 'a GPX file without any point' };

const OUTCOMES: Record<string, Outcome> = {
  'gpxpy/Mojstrovka.gpx': read('gpx-old'),
  'gpxpy/around-visnjan-with-car.gpx': read(),
  'gpxpy/cerknicko-jezero-no-creator.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/cerknicko-jezero-with-elevations-zero.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/cerknicko-jezero-without-elevations.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/cerknicko-jezero.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/cerknicko-without-times.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/custom_schema_locations.gpx': NO_POINT,
  'gpxpy/default_schema_locations.gpx': NO_POINT,
  'gpxpy/first_and_last_elevation.gpx': read('gpx-old'),
  'gpxpy/gpx-with-node-with-comments.gpx': read('gpx-old'),
  'gpxpy/gpx1.0_with_all_fields.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/gpx1.1_with_all_fields.gpx': read('gpx-empty-part'),
  'gpxpy/gpx1.1_with_extensions.gpx': read(),
  'gpxpy/gpx1.1_with_extensions_without_namespaces.gpx': read(),
  'gpxpy/gpx_with_garmin_extension.gpx': read(),
  'gpxpy/korita-zbevnica.gpx': read('gpx-old', 'gpx-empty-part'),
  'gpxpy/route.gpx': read('gpx-old'),
  'gpxpy/track-with-empty-segment.gpx': read('gpx-empty-part'),
  'gpxpy/track-with-extremes.gpx': read('gpx-old'),
  'gpxpy/track-with-less-sec-time.gpx': read(),
  'gpxpy/track-with-small-floats.gpx': read(),
  'gpxpy/track_with_dilution_errors.gpx': read('gpx-old'),
  'gpxpy/track_with_speed.gpx': read('gpx-version'),
  'gpxpy/unicode.gpx': read('gpx-old'),
  'gpxpy/unicode2.gpx': NO_POINT,
  'gpxpy/unicode_with_bom.gpx': read('gpx-version'),
  'gpxpy/unicode_with_bom_noencoding.gpx': read(),
  'togeojson/Friday-Evening-Run.gpx': read(),
  'togeojson/apple_watch_route.gpx': read(),
  'togeojson/bad.gpx': { refused: 'coordinate-out-of-range', why: 'line 5, column 45: lat="undefined"' },
  'togeojson/blue_hills.gpx': read('gpx-old'),
  'togeojson/empty_ele.gpx': read(),
  'togeojson/empty_trk.gpx': NO_POINT,
  'togeojson/garmin_extensions.gpx': read('gpx-empty-part'),
  'togeojson/gdal.gpx': read('gpx-empty-part'),
  'togeojson/missing_hr.gpx': read(),
  'togeojson/multitrackgpx.gpx': read(),
  'togeojson/north_core.gpx': read(),
  'togeojson/opencpn.gpx': read(),
  'togeojson/osm.gpx': read('gpx-old'),
  'togeojson/run.gpx': read(),
  'togeojson/run_gpxtpx.gpx': read(),
  'togeojson/strava.gpx': read(),
  'togeojson/style.gpx': read(),
  'togeojson/trek.gpx': read('gpx-old'),
  'togeojson/trek_no_rtept.gpx': NO_POINT,
  'togeojson/unique_trkpt.gpx': read(),
  'togeojson/wpt.gpx': read(),
  'togeojson/zero_elevation.gpx': read('gpx-old'),
};

/** Counts and first numbers by pattern, without an XML parser. */
function countByPattern(text: string) {
  const plain = text.replace(/<!--[\s\S]*?-->/g, '');
  const count = (pattern: RegExp) => [...plain.matchAll(pattern)].length;
  return {
    tracks: count(/<trk[\s>/]/g),
    routes: count(/<rte[\s>/]/g),
    trackPoints: count(/<trkpt\s/g),
    routePoints: count(/<rtept\s/g),
    waypoints: count(/<wpt\s/g),
    latitudes: [...plain.matchAll(/<trkpt\s[^>]*?lat\s*=\s*["']([^"']+)["']/g)].map((match) =>
      Number(match[1]),
    ),
    longitudes: [...plain.matchAll(/<trkpt\s[^>]*?lon\s*=\s*["']([^"']+)["']/g)].map((match) =>
      Number(match[1]),
    ),
    elevations: [
      ...plain.matchAll(/<trkpt\s[^>]*>(?:(?!<\/trkpt>)[\s\S])*?<ele>\s*([-\d.eE]+)\s*<\/ele>/g),
    ].map((match) => Number(match[1])),
  };
}

function countRead(document: RouteDocument) {
  const tracks = document.parts.filter((part) => part.kind === 'track');
  const routes = document.parts.filter((part) => part.kind === 'route');
  const points = (parts: typeof tracks) =>
    parts.flatMap((part) => part.segments).reduce((sum, segment) => sum + segment.lon.length, 0);
  const segments = tracks.flatMap((part) => part.segments);
  return {
    tracks: tracks.length,
    routes: routes.length,
    trackPoints: points(tracks),
    routePoints: points(routes),
    waypoints: document.waypoints.length,
    latitudes: segments.flatMap((segment) => [...segment.lat]),
    longitudes: segments.flatMap((segment) => [...segment.lon]),
    elevations: segments.flatMap((segment) => [...segment.ele].filter((ele) => !Number.isNaN(ele))),
  };
}

describeReal('GPX files of other projects', () => {
  const files = ['gpxpy', 'togeojson'].flatMap((folder) => {
    // Names are listed even when the folder is not there, so that the suite is seen to be left out.
    const all = Object.keys(OUTCOMES).filter((name) => name.startsWith(folder));
    try {
      return readdirSync(`${REAL_FOLDER}peers/${folder}`)
        .filter((name) => name.endsWith('.gpx'))
        .map((name) => `${folder}/${name}`);
    } catch {
      return all;
    }
  });

  it('are all in the table, and the table has no others', () => {
    expect([...files].sort()).toEqual(Object.keys(OUTCOMES).sort());
  });

  it.each(files)('%s is read or refused as the table says', async (file) => {
    const expected = OUTCOMES[file]!;
    const path = realPath(`peers/${file}`);
    if ('refused' in expected) {
      const error: unknown = await readGpx(path, file).then(
        () => null,
        (reason: unknown) => reason,
      );
      expect(error).toBeInstanceOf(InputProblem);
      if (!(error instanceof InputProblem)) return;
      expect(error.problem.code).toBe(expected.refused);
      expect(error.message).toContain(expected.why);
      return;
    }
    const document = await readGpx(path, file);
    expect(document.cautions.map((caution) => caution.code)).toEqual(expected.cautions);
    expect(countRead(document)).toEqual(countByPattern(readFileSync(path, 'utf8')));
  });

  it.each([
    ['routes/swiss-grand-tour.gpx', { tracks: 9, trackPoints: 2_200, waypoints: 18 }],
    ['routes/grand-canyon.gpx', { tracks: 1, trackPoints: 3_892 }],
    ['extracts/switzerland-fuel-2026.waypoints.gpx', { waypoints: 3_768 }],
  ])('%s holds what was published of it', async (file, counts) => {
    const document = await readGpx(realPath(file), file);
    expect(countRead(document)).toMatchObject(counts);
    expect(document.cautions).toEqual([]);
  });
});
