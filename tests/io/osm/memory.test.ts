import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { fuelNode, osmXml, scratchFolder } from './scratch.ts';

const put = scratchFolder();

/** Memory for JavaScript objects that the reading process is given, and a file that is a good deal bigger. */
const HEAP_MB = 50;
const FILE_BYTES = 80_000_000;

describe('memory', () => {
  it('does not grow with the file: what is kept holds nothing else alive', () => {
    // One wanted node, with texts long enough to be cut out of the input, in every 40 KB: more often than pieces are read.
    const plain =
      '<node id="7" version="1" timestamp="2020-01-01T00:00:00Z" lat="-35.1234567" lon="85.1234567"/>\n';
    const block =
      fuelNode(1, 85, -35, 'timestamp="2020-01-01T00:00:00Z"') +
      plain.repeat(Math.ceil(40_000 / plain.length));
    const blocks = Math.ceil(FILE_BYTES / block.length);
    const inside = Array.from({ length: blocks }, (_, i) => block.replace('id="1"', `id="${i + 10}"`));
    const path = put('long.osm', osmXml(inside.join('')));
    const script = fileURLToPath(new URL('./read-in-child.ts', import.meta.url));
    const flags = [`--max-old-space-size=${HEAP_MB}`, '--import', 'tsx'];
    const printed = execFileSync(process.execPath, [...flags, script, path], { encoding: 'utf8' });
    expect(printed.trim()).toBe(`wanted ${blocks}`);
  });
});
