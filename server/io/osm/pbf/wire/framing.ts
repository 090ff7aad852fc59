import { readSync } from 'node:fs';
import { BrokenBlock, pbfProblem } from './broken.ts';
import { Cursor } from './cursor.ts';

/** Limits of the file format (OSM wiki, "PBF Format", "File format"): a reader may refuse what is larger. */
const MAX_BLOB_HEADER_BYTES = 64 * 1024;
export const MAX_BLOB_BYTES = 32 * 1024 * 1024;

/** Where a blob lies in the file: bytes from its start. */
export interface Frame {
  type: string;
  /** Of the frame's length field. */
  frameStart: number;
  blobStart: number;
  blobBytes: number;
}

/** Enough for the length field and any usual BlobHeader in one read. */
const FIRST_READ_BYTES = 64;

function readExactly(fd: number, into: Uint8Array, bytes: number, at: number): number {
  let done = 0;
  while (done < bytes) {
    const got = readSync(fd, into, done, bytes - done, at + done);
    if (got === 0) break;
    done += got;
  }
  return done;
}

/**
 * The frames of the file from `start` on, checked against the file's size, without reading the blobs.
 * A file cut exactly between two blobs looks whole: nothing in the format tells.
 */
export function* framesOf(fd: number, fileBytes: number, source: string, start = 0): Generator<Frame> {
  let frameStart = start;
  while (frameStart < fileBytes) {
    const cut = (what: string) =>
      pbfProblem({
        code: 'pbf-truncated',
        source,
        byte: frameStart,
        came: `the file ends inside ${what}`,
        expected: 'the whole file',
      });
    const room = fileBytes - frameStart;
    const beginning = new Uint8Array(FIRST_READ_BYTES);
    if (readExactly(fd, beginning, Math.min(FIRST_READ_BYTES, room), frameStart) < 4)
      throw cut("a blob's length");
    const headerBytes = new DataView(beginning.buffer).getUint32(0);
    if (headerBytes > MAX_BLOB_HEADER_BYTES) throw oversizedHeader(source, frameStart, headerBytes);
    if (4 + headerBytes > room) throw cut('a blob header');
    const header = headerOf(fd, frameStart, beginning, headerBytes);
    if (header.length < headerBytes) throw cut('a blob header');
    const { type, blobBytes } = parseBlobHeader(header, source, frameStart);
    if (blobBytes > MAX_BLOB_BYTES) throw oversizedBlob(source, frameStart, blobBytes);
    const blobStart = frameStart + 4 + headerBytes;
    if (blobStart + blobBytes > fileBytes) throw cut('a blob');
    yield { type, frameStart, blobStart, blobBytes };
    frameStart = blobStart + blobBytes;
  }
}

/** The bytes of a blob header, mostly read already with the frame's beginning; fewer where the file ends in it. */
function headerOf(fd: number, frameStart: number, beginning: Uint8Array, bytes: number): Uint8Array {
  if (4 + bytes <= beginning.length) return beginning.subarray(4, 4 + bytes);
  const header = new Uint8Array(bytes);
  return header.subarray(0, readExactly(fd, header, bytes, frameStart + 4));
}

/** At the very start of a file, that many bytes rather say that it is no such file. */
const oversizedHeader = (source: string, byte: number, bytes: number) =>
  pbfProblem({
    code: 'pbf-oversized',
    source,
    byte,
    came: `a blob header that claims ${bytes} bytes`,
    expected: `at most ${MAX_BLOB_HEADER_BYTES}`,
    ...(byte === 0 && { remedy: 'Check that this is an .osm.pbf file, and download or make it again' }),
  });

const oversizedBlob = (source: string, byte: number, bytes: number) =>
  pbfProblem({
    code: 'pbf-oversized',
    source,
    byte,
    came: `a blob that claims ${bytes} bytes`,
    expected: `at most ${MAX_BLOB_BYTES}`,
  });

function parseBlobHeader(header: Uint8Array, source: string, byte: number) {
  try {
    const cursor = new Cursor(header);
    let type = '';
    let blobBytes = -1;
    for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
      if (tag === 10) type = cursor.text();
      else if (tag === 24) blobBytes = cursor.integer();
      else cursor.skip(tag);
    }
    if (type === '' || blobBytes < 0) throw new BrokenBlock('a blob header without type or size');
    return { type, blobBytes };
  } catch (error) {
    if (!(error instanceof BrokenBlock)) throw error;
    throw pbfProblem({ code: 'pbf-broken', source, byte, came: error.message, expected: 'a blob header' });
  }
}

/** Reads a blob's bytes into `into`, which must have room. */
export function readBlobBytes(fd: number, frame: Frame, into: Uint8Array, source: string): Uint8Array {
  if (readExactly(fd, into, frame.blobBytes, frame.blobStart) < frame.blobBytes) {
    throw pbfProblem({
      code: 'pbf-truncated',
      source,
      byte: frame.frameStart,
      came: 'the file became shorter while it was read',
      expected: 'the whole file',
    });
  }
  return into.subarray(0, frame.blobBytes);
}
