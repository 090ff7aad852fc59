import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { maybeCut, type SeenOfFile } from '../../../../server/io/osm/pbf/find/maybe-cut.ts';
import { blobEnds } from '../../../helpers/blob-ends.ts';
import { describeReal, realPath } from '../../../helpers/real.ts';
import { readBytes } from './pbf-files.ts';

const fixture = (name: string) => new URL(`../../../fixtures/osmium/${name}.osm.pbf`, import.meta.url);
const FILES = [
  new URL('../../../../fixtures/orrimar/orrimar.osm.pbf', import.meta.url),
  ...['default', 'located', 'located-all-nodes', 'plain-nodes', 'raw', 'reversed', 'times-only'].map(fixture),
];
const REAL = ['liechtenstein-2013', 'liechtenstein-2015', 'monaco-2023'].map((name) =>
  realPath(`extracts/${name}.osm.pbf`),
);

async function whyCut(bytes: Uint8Array): Promise<string | null> {
  const { cautions } = await readBytes(bytes);
  for (const { code, facts } of cautions) if (code === 'maybe-cut') return facts.why;
  return null;
}

const bothWays = (files: readonly (URL | string)[]) => {
  for (const path of files) {
    it(`should tell ${String(path).split('/').at(-1)} whole from the same file cut between any two blobs`, async () => {
      const file = readFileSync(path);
      const ends = blobEnds(file);
      expect(ends.at(-1)).toBe(file.length);
      expect(ends.length).toBeGreaterThan(3);
      expect(await whyCut(file)).toBeNull();
      for (const end of ends.slice(0, -1)) expect(await whyCut(file.subarray(0, end))).not.toBeNull();
    });
  }
};

describe('a pbf file cut between two blobs', () => {
  bothWays(FILES);
});
describeReal('a real pbf file cut between two blobs', () => {
  bothWays(REAL);
});

describe('what makes a file look cut', () => {
  const WHOLE: SeenOfFile = {
    counts: { node: 20_500, way: 900, relation: 7 },
    untagged: { node: true, way: true },
    isLocated: false,
    isGeneral: true,
    blocks: [8000, 8000, 4500, 900, 7],
  };
  const whyOf = (changes: Partial<SeenOfFile>) => maybeCut({ ...WHOLE, ...changes });
  const PLAIN = { untagged: { node: false, way: false }, isGeneral: false } as const;

  it('is nothing of a whole file, nor of lists of points or ways that were picked out by their tags', () => {
    expect(whyOf({})).toBeNull();
    expect(whyOf({ ...PLAIN, counts: { node: 300, way: 0, relation: 0 }, blocks: [300] })).toBeNull();
    expect(
      whyOf({ ...PLAIN, untagged: { node: true, way: false }, counts: { node: 300, way: 9, relation: 0 } }),
    ).toBeNull();
    expect(
      whyOf({ ...PLAIN, untagged: { node: true, way: false }, counts: { node: 9, way: 0, relation: 2 } }),
    ).toBeNull();
  });

  it('is that parts are there and nothing that is made of them', () => {
    expect(whyOf({ counts: { node: 0, way: 0, relation: 0 }, blocks: [] })).toBe('no-objects');
    expect(whyOf({ counts: { node: 20, way: 0, relation: 0 } })).toBe('no-ways');
    expect(whyOf({ ...PLAIN, isLocated: true, counts: { node: 20, way: 0, relation: 0 } })).toBe('no-ways');
    expect(whyOf({ isGeneral: false, counts: { node: 20, way: 9, relation: 0 } })).toBe('no-relations');
    expect(whyOf({ ...PLAIN, isGeneral: true, counts: { node: 20, way: 9, relation: 0 } })).toBe(
      'no-relations',
    );
    expect(whyOf({ counts: { node: 0, way: 9, relation: 4 } })).toBe('no-nodes');
    expect(whyOf({ isLocated: true, counts: { node: 0, way: 9, relation: 4 } })).toBeNull();
  });

  it('is that the last block is as full as can be', () => {
    expect(whyOf({ ...PLAIN, blocks: [8000] })).toBe('full-block');
    expect(whyOf({ blocks: [16_000, 16_000, 3000, 16_000] })).toBe('full-block');
    expect(whyOf({ blocks: [16_000, 16_000, 15_999] })).toBeNull();
    expect(whyOf({ blocks: [3000, 3001] })).toBeNull();
    expect(whyOf({ blocks: [100, 100, 100] })).toBeNull();
  });
});
