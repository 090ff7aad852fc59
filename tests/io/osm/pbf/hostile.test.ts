import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  encodeBlob,
  encodeHeader,
  encodePbfElements,
  type PbfElement,
} from '../../../../fixtures/pbf-writer.ts';
import { ProtoWriter } from '../../../../fixtures/proto-writer.ts';
import { InputProblem } from '../../../../server/core/input/problem.ts';
import { problemOf, problemOfBytes, readBytes, readFile, withFile } from './pbf-files.ts';

const ELEMENTS: PbfElement[] = [
  { type: 'node', id: 1, lon: 10, lat: 20, version: 1, tags: { amenity: 'fuel' } },
  { type: 'node', id: 2, lon: 11, lat: 21 },
  { type: 'node', id: 3, lon: 11, lat: 22 },
  { type: 'way', id: 5, nodes: [2, 3, 2], tags: { amenity: 'fuel' } },
  { type: 'relation', id: 6, members: [{ type: 'way', ref: 5, role: 'outer' }], tags: { amenity: 'fuel' } },
];
const GOOD = encodePbfElements([5, 5, 30, 30], ELEMENTS);
const HEADER = encodeBlob(
  'OSMHeader',
  encodeHeader(null, ['OsmSchema-V0.6', 'DenseNodes'], [], { program: 'test' }),
);

const join = (...parts: Uint8Array[]): Uint8Array => Buffer.concat(parts);

/** A frame whose BlobHeader claims `claimed` bytes, followed by `body`. */
function framed(type: string, claimed: number, body: Uint8Array): Uint8Array {
  const header = new ProtoWriter();
  header.text(1, type);
  header.integer(3, claimed);
  const bytes = header.finish();
  const length = new Uint8Array(4);
  new DataView(length.buffer).setUint32(0, bytes.length);
  return join(length, bytes, body);
}

const dataBlob = (write: (blob: ProtoWriter) => void): Uint8Array => {
  const blob = new ProtoWriter();
  write(blob);
  const body = blob.finish();
  return framed('OSMData', body.length, body);
};

/** Byte places at which one blob ends and the next begins. */
function boundaries(bytes: Uint8Array): number[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const places: number[] = [];
  for (let at = 0; at < bytes.length; ) {
    const headerBytes = view.getUint32(at);
    // The size is the last field of the header: its varint is found behind the type.
    const typeBytes = bytes[at + 5]!;
    let size = 0;
    let shift = 0;
    for (let place = at + 4 + 2 + typeBytes + 1; place < at + 4 + headerBytes; place += 1) {
      size |= (bytes[place]! & 127) << shift;
      shift += 7;
    }
    at += 4 + headerBytes + size;
    places.push(at);
  }
  return places;
}

describe('a cut file', () => {
  it('should be refused wherever it is cut, save exactly between two blobs, where the format cannot tell', {
    tags: 'slow',
  }, async () => {
    const whole = boundaries(GOOD);
    expect(whole.at(-1)).toBe(GOOD.length);
    for (let length = 1; length < GOOD.length; length += 1) {
      if (whole.includes(length)) {
        const read = await readBytes(GOOD.subarray(0, length));
        expect(read.counts.relations).toBe(0);
        continue;
      }
      const problem = await problemOfBytes(GOOD.subarray(0, length));
      expect(problem.code).toBe('pbf-truncated');
      expect(problem.place).toMatch(/^byte \d+$/);
      expect(problem.came).toMatch(/^the file ends inside a blob/);
    }
  });

  it('should be refused by threads too', async () => {
    const problem = await problemOf(readBytes(GOOD.subarray(0, GOOD.length - 1), {}, 0));
    expect(problem.code).toBe('pbf-truncated');
  });
});

describe('a spoilt file', () => {
  it('should be read or refused with a problem, never crash or hang, whichever byte is changed', {
    tags: 'slow',
  }, async () => {
    for (const form of [
      GOOD,
      encodePbfElements([5, 5, 30, 30], ELEMENTS, { compression: 'raw', dense: false }),
    ]) {
      await fc.assert(
        fc.asyncProperty(fc.nat(form.length - 1), fc.integer({ min: 1, max: 255 }), async (place, change) => {
          const spoilt = form.slice();
          spoilt[place]! ^= change;
          try {
            await readBytes(spoilt, { ground: [0, 0, 40, 40] });
          } catch (error) {
            expect(error).toBeInstanceOf(InputProblem);
          }
        }),
        { numRuns: 700, seed: 3 },
      );
    }
  });

  it('should be read or refused with a problem when a block is noise', { tags: 'slow' }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (noise) => {
        const file = join(HEADER, encodeBlob('OSMData', noise));
        try {
          await readBytes(file);
        } catch (error) {
          expect(error).toBeInstanceOf(InputProblem);
        }
      }),
      { numRuns: 500, seed: 5 },
    );
  });

  it('should be refused when its zlib bytes do not open', async () => {
    const deflated = deflateSync(Buffer.from('x'.repeat(100)));
    deflated[deflated.length - 1]! ^= 1;
    const file = join(
      HEADER,
      dataBlob((blob) => {
        blob.integer(2, 100);
        blob.bytes(3, deflated);
      }),
    );
    const problem = await problemOfBytes(file);
    expect(problem).toMatchObject({ code: 'pbf-broken', place: `byte ${HEADER.length}` });
    expect(problem.came).toContain('zlib bytes that cannot be opened');
  });

  it.each([
    ['more than it claims', 99],
    ['less than it claims', 101],
  ])('should be refused when a blob opens to %s', async (_, claimed) => {
    for (const field of [1, 3] as const) {
      const text = Buffer.from('x'.repeat(100));
      const file = join(
        HEADER,
        dataBlob((blob) => {
          blob.integer(2, claimed);
          blob.bytes(field, field === 1 ? text : deflateSync(text));
        }),
      );
      const problem = await problemOfBytes(file);
      expect(problem.code).toBe('pbf-broken');
      expect(problem.came).toContain(`where it claims ${claimed}`);
    }
  });

  it('should be refused by threads with the same problem', { tags: 'slow' }, async () => {
    const file = join(HEADER, encodeBlob('OSMData', Uint8Array.of(255)));
    expect(await problemOf(readBytes(file, {}, 0))).toEqual(await problemOfBytes(file));
  });
});

describe('an oversized claim', () => {
  it('should be refused when a blob claims 2 GB, without waiting for them', async () => {
    const problem = await problemOfBytes(join(HEADER, framed('OSMData', 2 ** 31, Uint8Array.of(0))));
    expect(problem).toMatchObject({
      code: 'pbf-oversized',
      place: `byte ${HEADER.length}`,
      came: 'a blob that claims 2147483648 bytes',
      expected: 'at most 33554432',
    });
  });

  it('should be refused when a blob header claims 2 GB', async () => {
    const problem = await problemOfBytes(join(HEADER, Uint8Array.of(128, 0, 0, 0, 1, 2, 3)));
    expect(problem).toMatchObject({
      code: 'pbf-oversized',
      came: 'a blob header that claims 2147483648 bytes',
    });
  });

  it('should be refused when a small blob claims to open to 2 GB', async () => {
    const file = join(
      HEADER,
      dataBlob((blob) => {
        blob.integer(2, 2 ** 31);
        blob.bytes(3, deflateSync(Buffer.alloc(10)));
      }),
    );
    expect((await problemOfBytes(file)).code).toBe('pbf-oversized');
  });

  it('should be refused when a bomb opens to 64 MiB while it claims 32', async () => {
    const file = join(
      HEADER,
      dataBlob((blob) => {
        blob.integer(2, 32 * 1024 * 1024);
        blob.bytes(3, deflateSync(Buffer.alloc(64 * 1024 * 1024)));
      }),
    );
    const problem = await problemOfBytes(file);
    expect(problem.code).toBe('pbf-broken');
    expect(problem.came).toContain('more bytes where it claims 33554432');
  });
});

describe('a file of another kind', () => {
  it.each([4, 5, 6, 7])('should be refused with a remedy when compressed by field %i', async (field) => {
    const problem = await problemOfBytes(
      join(
        HEADER,
        dataBlob((blob) => {
          blob.integer(2, 10);
          blob.bytes(field, Uint8Array.of(1, 2, 3));
        }),
      ),
    );
    expect(problem).toMatchObject({ code: 'pbf-compression', place: `byte ${HEADER.length}` });
    expect(problem.came).toBe(`a blob compressed with ${['lzma', 'bzip2', 'lz4', 'zstd'][field - 4]}`);
  });

  it('should be refused when it requires a feature that is not known', async () => {
    const file = encodePbfElements(null, ELEMENTS, { requiredFeatures: ['Sparkles'] });
    expect(await problemOfBytes(file)).toMatchObject({
      code: 'pbf-feature',
      came: 'a file that requires "Sparkles"',
    });
  });

  it('should be refused when it does not begin with a header, or has two', async () => {
    const data = GOOD.subarray(boundaries(GOOD)[0]!);
    expect((await problemOfBytes(data)).came).toBe('a first blob of type "OSMData"');
    expect((await problemOfBytes(join(GOOD, GOOD))).came).toBe('a second file header');
  });

  it('should be refused when it is empty, missing, a folder, or text', async () => {
    expect((await problemOfBytes(new Uint8Array(0))).code).toBe('empty-file');
    expect((await problemOf(readFile('/nowhere/at/all.osm.pbf'))).code).toBe('file-missing');
    expect((await problemOf(readFile('/'))).code).toBe('file-unreadable');
    expect((await problemOfBytes(Buffer.from('<!doctype html><html></html>'))).code).toBe('pbf-oversized');
  });

  it('should pass over blobs of another type with a caution', async () => {
    const read = await readBytes(join(GOOD, encodeBlob('Index', Uint8Array.of(1))));
    expect(read.cautions.map((caution) => caution.code)).toEqual(['pbf-foreign-blob']);
  });

  it('should not trust bounds that are no box on the Earth', async () => {
    const read = await readBytes(encodePbfElements([200, 0, 210, 10], ELEMENTS));
    expect(read.bounds).toBeNull();
    expect(read.cautions.map((caution) => caution.code)).toEqual(['bounds-refused']);
    expect(read.hull).not.toBeNull();
  });
});

describe('a reading', () => {
  const long = encodePbfElements(
    null,
    Array.from({ length: 3000 }, (_, id): PbfElement => ({ type: 'node', id, lon: 1, lat: 1 })),
    { blockSize: 10 },
  );

  it.each([
    ['in one thread', Number.POSITIVE_INFINITY],
    ['in several threads', 0],
  ])('should stop when aborted, %s', async (_, threadsFromBytes) => {
    const controller = new AbortController();
    let lastDone = 0;
    const reading = readBytes(
      long,
      {
        signal: controller.signal,
        onProgress: (done) => {
          lastDone = done;
          if (done > 2000) controller.abort(new Error('enough'));
        },
      },
      threadsFromBytes,
    );
    await expect(reading).rejects.toThrow('enough');
    expect(lastDone).toBeLessThan(long.length / 2);
    await expect(readBytes(long, { signal: AbortSignal.abort(new Error('too early')) })).rejects.toThrow(
      'too early',
    );
  });

  it('should tell its progress from little to all', async () => {
    const told: number[] = [];
    await withFile(long, (path) =>
      readFile(path, {
        onProgress: (done, total) => {
          expect(total).toBe(long.length);
          told.push(done);
        },
      }),
    );
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told[0]).toBeLessThan(200);
    expect(told.at(-1)).toBe(long.length);
  });
});
