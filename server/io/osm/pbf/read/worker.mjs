// Where a reading thread starts, before any TypeScript.
import { load } from '../../../../start/from-source.mjs';

await load('io/osm/pbf/read/worker-entry.ts');
