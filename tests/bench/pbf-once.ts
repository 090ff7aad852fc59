/**
 * Reads one file and prints what it took: `tsx pbf-once.ts FILE`. A process of its own, so that its peak of memory is
 * that of the reading.
 */
import { readPbf } from '../../server/io/osm/pbf/read/read-pbf.ts';

const path = process.argv[2];
if (path === undefined) throw new Error('usage: pbf-once.ts FILE');
const start = performance.now();
const { counts, wanted } = await readPbf({ path }, { source: path, ground: null });
const ms = performance.now() - start;
console.log(
  JSON.stringify({ ms, peakMb: process.resourceUsage().maxRSS / 1024, wanted: wanted.size, counts }),
);
