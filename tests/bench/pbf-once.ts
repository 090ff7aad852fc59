/**
 * Reads one file and prints what it took: `tsx pbf-once.ts FILE [near]`; with `near` as a route across it is planned. A process of its own, so that its peak of memory is
 * that of the reading.
 */
import { landAround, nearGrid } from '../../server/app/near-route.ts';
import { readPbf } from '../../server/io/osm/pbf/read/read-pbf.ts';

/** As far off the route as objects are kept for. */
const NEAR_KM = 60;
const path = process.argv[2];
if (path === undefined) throw new Error('usage: pbf-once.ts FILE');
/** A line across the made-up land (10 to 20° E, 20 to 30° N), a vertex each 2 km or so, as routes have them. */
const line = {
  lon: Float64Array.from({ length: 600 }, (_, i) => 10 + i / 60),
  lat: Float64Array.from({ length: 600 }, (_, i) => 22 + i / 120),
};
const near = process.argv[3] === 'near' ? { ...nearGrid(line, NEAR_KM), around: landAround(line) } : null;
const start = performance.now();
const { counts, wanted } = await readPbf({ path }, { source: path, ground: null, near });
const ms = performance.now() - start;
console.log(
  JSON.stringify({ ms, peakMb: process.resourceUsage().maxRSS / 1024, wanted: wanted.size, counts }),
);
