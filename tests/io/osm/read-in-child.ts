import { nearGrid } from '../../../server/app/near-route.ts';
import { farCount } from '../../../server/io/osm/extract/far-objects.ts';
import { readExtract } from '../../../server/io/osm/read-extract.ts';
import { unite } from '../../../server/io/osm/unite/unite.ts';

/**
 * Run as a process of its own with little memory: reads the named file and prints how many objects were wanted. With a
 * longitude and latitude after the name it keeps what is near there, and prints how many were far and what was made.
 */
const [path = '', lon, lat] = process.argv.slice(2);
const isNearOnly = lon !== undefined && lat !== undefined;
const near = isNearOnly
  ? nearGrid({ lon: Float64Array.of(Number(lon)), lat: Float64Array.of(Number(lat)) }, 60)
  : null;
const outcome = await readExtract(path, { source: 'file', ground: null, near });
if (!outcome.ok) console.log(outcome.problem.code);
else if (!isNearOnly) console.log(`wanted ${outcome.value.wanted.size}`);
else {
  const { features } = unite([outcome.value], [], []);
  console.log(
    `wanted ${outcome.value.wanted.size}, far ${farCount(outcome.value.far)}, made ${features.length}`,
  );
}
