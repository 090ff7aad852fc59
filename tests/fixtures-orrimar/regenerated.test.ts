import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { orrimarFiles } from '../../fixtures/write/files.ts';
import { demoPath } from './demo-files.ts';
import { blobsOf } from './pbf-blobs.ts';

const generated = orrimarFiles();
const contentOf = (name: string) => {
  const bytes = generated.get(name);
  if (bytes === undefined) throw new Error(`the generator makes no ${name}`);
  return bytes;
};

describe('the demo, generated anew', () => {
  it.each(['route.gpx', 'orrimar.osm', 'orrimar.overpass.json', 'notice.txt'])(
    'gives the same %s',
    (name) => {
      expect(Buffer.from(contentOf(name)).equals(readFileSync(demoPath(name)))).toBe(true);
    },
  );

  it('gives the same orrimar.osm.pbf, blob by blob as inflated', () => {
    const fresh = blobsOf(contentOf('orrimar.osm.pbf'));
    const stored = blobsOf(readFileSync(demoPath('orrimar.osm.pbf')));
    expect(fresh.map(({ type }) => type)).toEqual(stored.map(({ type }) => type));
    expect(fresh.length).toBeGreaterThan(1);
    fresh.forEach(({ content }, i) => {
      expect(content.equals(stored[i]!.content), `blob ${i}`).toBe(true);
    });
  });

  it('makes every generated file, and only those', () => {
    expect([...generated.keys()].sort()).toEqual([
      'notice.txt',
      'orrimar.osm',
      'orrimar.osm.pbf',
      'orrimar.overpass.json',
      'route.gpx',
    ]);
  });

  it('gives the same again within one run', () => {
    for (const [name, bytes] of orrimarFiles()) {
      expect(Buffer.from(bytes).equals(contentOf(name)), name).toBe(true);
    }
  });

  it('stays small: the XML under 2.5 MB', () => {
    expect(contentOf('orrimar.osm').length).toBeLessThan(2_500_000);
  });
});
