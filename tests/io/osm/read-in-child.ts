import { readExtract } from '../../../server/io/osm/read-extract.ts';

/** Run as a process of its own with little memory: reads the named file and prints how many objects were wanted. */
const outcome = await readExtract(process.argv[2] ?? '', { source: 'file', ground: null });
console.log(outcome.ok ? `wanted ${outcome.value.wanted.size}` : outcome.problem.code);
