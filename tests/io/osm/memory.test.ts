import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { encodePbfElements } from '../../../fixtures/pbf-writer.ts';
import { fuelNode, osmXml, scratchFolder } from './scratch.ts';

const put = scratchFolder();

/**
 * Memory for JavaScript objects that the reading process is given, and a file that is a good deal bigger. Some 300 bytes an
 * object more than it took before each kept its file and what another file says of it.
 */
const HEAP_MB = 56;
const FILE_BYTES = 80_000_000;

/** Wanted objects that would fill that memory twice over if they were kept. */
const FAR_STATIONS = 250_000;
/** Areas that fit into it as they are, and not if all of them were being made at once. */
const NEAR_YARDS = 14_000;

function readInChild(...args: string[]): string {
  const script = fileURLToPath(new URL('./read-in-child.ts', import.meta.url));
  const flags = [`--max-old-space-size=${HEAP_MB}`, '--import', 'tsx'];
  return execFileSync(process.execPath, [...flags, script, ...args], { encoding: 'utf8' }).trim();
}

describe('memory', () => {
  it('does not grow with the file: what is kept holds nothing else alive', { tags: 'slow' }, () => {
    // One wanted node, with texts long enough to be cut out of the input, in every 40 KB: more often than pieces are read.
    const plain =
      '<node id="7" version="1" timestamp="2020-01-01T00:00:00Z" lat="-35.1234567" lon="85.1234567"/>\n';
    const block =
      fuelNode(1, 85, -35, 'timestamp="2020-01-01T00:00:00Z"') +
      plain.repeat(Math.ceil(40_000 / plain.length));
    const blocks = Math.ceil(FILE_BYTES / block.length);
    const inside = Array.from({ length: blocks }, (_, i) => block.replace('id="1"', `id="${i + 10}"`));
    const path = put('long.osm', osmXml(inside.join('')));
    expect(readInChild(path)).toBe(`wanted ${blocks}`);
  });

  it('does not grow with what lies far off the route', { tags: 'slow' }, () => {
    const stations = Array.from({ length: FAR_STATIONS + 1 }, (_, i) => ({
      type: 'node' as const,
      id: i + 1,
      lon: i === 0 ? 85 : 10 + (i % 1000) / 100,
      lat: -35,
      version: 1,
      timestamp: '2020-01-01T00:00:00Z',
      tags: { amenity: 'fuel', name: `Station ${i}`, 'fuel:diesel': 'yes', opening_hours: '24/7' },
    }));
    const path = put('far.osm.pbf', encodePbfElements([0, -40, 90, -30], stations));
    expect(readInChild(path, '85', '-35')).toBe(`wanted 1, far ${FAR_STATIONS}, made 1`);
  });

  it('is taken for some areas at a time when they are made', { tags: 'slow' }, () => {
    const corners = (i: number) => [1, 2, 3, 4].map((n) => 4 * i + n);
    const yards = Array.from({ length: NEAR_YARDS }, (_, i) => i);
    const nodes = yards.flatMap((i) =>
      corners(i).map((id, n) => ({
        type: 'node' as const,
        id,
        lon: 85 + (n === 1 || n === 2 ? 0.001 : 0),
        lat: -35 + (n > 1 ? 0.001 : 0),
      })),
    );
    const ways = yards.map((i) => ({
      type: 'way' as const,
      id: i + 1,
      nodes: [...corners(i), 4 * i + 1],
      tags: { amenity: 'fuel' },
    }));
    const path = put('yards.osm.pbf', encodePbfElements([80, -40, 90, -30], [...nodes, ...ways]));
    expect(readInChild(path, '85', '-35')).toBe(`wanted ${NEAR_YARDS}, far 0, made ${NEAR_YARDS}`);
  });
});
