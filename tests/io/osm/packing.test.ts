import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { byteSource } from '../../../server/io/osm/source/byte-source.ts';
import { ExpansionGuard } from '../../../server/io/osm/source/expansion-guard.ts';
import { EXPANSION_JUDGED_FROM_BYTES, EXPANSION_RATIO_MAX } from '../../../server/io/osm/source/limits.ts';
import { describeReal, realPath } from '../../helpers/real.ts';
import { extractAt, fuelNode, osmXml, problemAt, scratchFolder } from './scratch.ts';

const put = scratchFolder();
const FUEL = osmXml(fuelNode(1, 2, 3));

/** `osmXml(fuelNode(1, 2, 3))` in two bzip2 streams, cut in the middle, each by bzip2 1.0.8. */
const FUEL_IN_TWO_STREAMS = Buffer.from(
  'QlpoOTFBWSZTWSk+anMAAApfgAAQUANhR4EABgAup51AIABURCZNMTTJtATJ6DVPU9TR6Q/VA0MjEZKIxbEjNBqXF4Q0PglODQ56V2E+3rUIvtRJPmH4ERwH1SjeAiBPAdi7kinChIFJ81OYQlpoOTFBWSZTWQ5LbOsAABlZgAAQUAC4ByevjyAgAEhoo0ep6T1PU0aNqeoUA0BkANFLNnyJVWe+Cgwjgy3YHb1PJtti90o+IDCV5SKkqqkG2TcECBW5wAAnK3xdyRThQkA5LbOs',
  'base64',
);

/** Forty runs of 1 to 290 equal letters, a, b and c in turn, by `bzip2 -1`. */
const RUNS = Array.from({ length: 40 }, (_, i) => 'abc'.charAt(i % 3).repeat(1 + ((i * 37) % 290))).join('');
const RUNS_PACKED = Buffer.from(
  'QlpoMTFBWSZTWSWDfXcAACN//6iiiiAQQQQQAIIIILgEEEEEACCCCCABBBBBAAgggggIIAB1DSQADQABppppppoRH+qqNABoPUBoABprpQBMARKItwTvY8+mm7jz7efluaJRGycoisgQPcZ/DPXdCVLY11QALgEAg6U9K7X4z1vzqgAWxqwAAThD+LuSKcKEgSwb67g=',
  'base64',
);

/** Twenty million blanks, by `bzip2 -9`. */
const BLANKS_PACKED = Buffer.from(
  'QlpoOTFBWSZTWTO1TtEAmS+SAMAAAAgACCAAMMwFKaaqkRRsAoijxdyRThQkDO1TtEA=',
  'base64',
);

async function contentOf(path: string): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of (await byteSource(path, 'file')).open()) pieces.push(piece);
  return Buffer.concat(pieces).toString();
}

describe('packed extracts', () => {
  it.each([
    ['gzip', gzipSync(FUEL)],
    ['gzip twice over', gzipSync(gzipSync(FUEL))],
    ['two gzip members', Buffer.concat([gzipSync(FUEL.slice(0, 50)), gzipSync(FUEL.slice(50))])],
    ['two bzip2 streams', FUEL_IN_TWO_STREAMS],
    ['bzip2 in gzip', gzipSync(FUEL_IN_TWO_STREAMS)],
  ])('%s is unpacked by its content, under a name that says nothing', async (name, packed) => {
    const path = put(`${name.replaceAll(' ', '-')}.json`, packed);
    expect(await contentOf(path)).toBe(FUEL);
    const extract = await extractAt(path);
    expect([extract.format, [...extract.wanted]]).toEqual(['osm-xml', ['node/1']]);
  });

  it('gzip cut anywhere is refused', async () => {
    const packed = gzipSync(FUEL);
    for (let bytes = 2; bytes < packed.length; bytes += 7) {
      const problem = await problemAt(put('cut.osm.gz', packed.subarray(0, bytes)));
      expect(problem.code).toBe('gzip-broken');
    }
  });

  it('bzip2 cut anywhere is refused, at a stream’s end as unfinished XML', async () => {
    const endOfFirst = FUEL_IN_TWO_STREAMS.lastIndexOf('BZh9');
    for (let bytes = 12; bytes < FUEL_IN_TWO_STREAMS.length; bytes += 5) {
      const problem = await problemAt(put('cut.osm.bz2', FUEL_IN_TWO_STREAMS.subarray(0, bytes)));
      expect(problem.code).toBe('bzip2-broken');
    }
    const first = await problemAt(put('half.osm.bz2', FUEL_IN_TWO_STREAMS.subarray(0, endOfFirst)));
    expect(first.code).toBe('xml-broken');
  });

  it('a flipped bit in bzip2 or gzip never passes for another content', { tags: 'slow' }, async () => {
    for (const packed of [FUEL_IN_TWO_STREAMS, gzipSync(FUEL)]) {
      await fc.assert(
        fc.asyncProperty(fc.integer({ min: 0, max: packed.length * 8 - 1 }), async (bit) => {
          const flipped = Buffer.from(packed);
          flipped[bit >> 3] = flipped[bit >> 3]! ^ (1 << (bit & 7));
          try {
            expect(await contentOf(put('flipped', flipped))).toBeOneOf([FUEL, flipped.toString()]);
          } catch (error) {
            expect(String(error)).toMatch(/InputProblem/);
          }
        }),
        { numRuns: 60 },
      );
    }
  });

  it('bzip2 unpacks runs of every length, and is refused with something else behind it', async () => {
    expect(await contentOf(put('runs', RUNS_PACKED))).toBe(RUNS);
    const behind = put('behind', Buffer.concat([RUNS_PACKED, Buffer.from('\n')]));
    await expect(contentOf(behind)).rejects.toMatchObject({ problem: { code: 'bzip2-broken' } });
  });

  it('a small file that expands a thousand times is a bomb', { tags: 'slow' }, async () => {
    const blanks = Buffer.concat([
      Buffer.from(FUEL),
      Buffer.alloc(EXPANSION_JUDGED_FROM_BYTES + 1_000_000, ' '),
    ]);
    const problem = await problemAt(put('bomb.osm.gz', gzipSync(blanks)));
    expect(problem.code).toBe('expands-too-far');
    await expect(contentOf(put('bomb.osm.bz2', BLANKS_PACKED))).rejects.toMatchObject({
      problem: { code: 'expands-too-far' },
    });
  });

  it('the guard lets through what expands as maps do, at any size below the limit', () => {
    const guard = new ExpansionGuard('file');
    guard.takeIn(EXPANSION_JUDGED_FROM_BYTES);
    expect(() => guard.giveOut(EXPANSION_JUDGED_FROM_BYTES * 25)).not.toThrow();
    expect(() => guard.giveOut(EXPANSION_JUDGED_FROM_BYTES * EXPANSION_RATIO_MAX)).toThrow(
      /expand to more than/,
    );
  });

  it('stops when it is told to', async () => {
    const abort = new AbortController();
    abort.abort(new Error('enough'));
    await expect(byteSource(put('plain.osm', FUEL), 'file', abort.signal)).rejects.toThrow('enough');
  });
});

describeReal('bzip2 against the system’s own', () => {
  it('unpacks Liechtenstein byte for byte, when bunzip2 is installed', { tags: 'slow' }, async () => {
    const path = realPath('extracts/liechtenstein-2013.osm.bz2');
    const ours = await contentOf(path);
    expect(ours.length).toBeGreaterThan(13_000_000);
    expect(ours.trimEnd().endsWith('</osm>')).toBe(true);
    let theirs: string;
    try {
      theirs = execFileSync('bunzip2', ['-c'], { input: readFileSync(path), maxBuffer: 2 ** 28 }).toString();
    } catch (error) {
      if (error instanceof Error && 'code' in error && error.code === 'ENOENT') {
        console.log('bunzip2 is not installed: compared with the expected end of the file only');
        return;
      }
      throw error;
    }
    expect(ours === theirs).toBe(true);
  });
});
