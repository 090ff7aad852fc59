import { inflateSync } from 'node:zlib';
import { BLOB_RATIO_JUDGED_FROM_BYTES, BLOB_RATIO_MAX } from '../../source/limits.ts';
import { BrokenBlock, pbfProblem } from './broken.ts';
import { Cursor } from './cursor.ts';
import { type Frame, MAX_BLOB_BYTES } from './framing.ts';

/** Fields of the Blob message that hold a compression that this reader does not take. */
const OTHER_COMPRESSIONS = new Map([
  [4, 'lzma'],
  [5, 'bzip2'],
  [6, 'lz4'],
  [7, 'zstd'],
]);

/**
 * The payload of a Blob message: raw bytes as they are, zlib inflated. Never more than 32 MiB, whatever the blob claims.
 *
 * @throws InputProblem pbf-compression, pbf-oversized or pbf-broken, with the frame's place.
 */
export function openBlob(blob: Uint8Array, frame: Frame, source: string): Uint8Array {
  try {
    return payloadOf(blob, frame, source);
  } catch (error) {
    if (error instanceof BrokenBlock)
      throw pbfProblem({
        code: 'pbf-broken',
        source,
        byte: frame.frameStart,
        came: `a blob with ${error.message}`,
      });
    throw error;
  }
}

interface BlobFields {
  raw: Uint8Array | null;
  deflated: Uint8Array | null;
  /** Bytes when opened, as the blob claims; -1 where it does not. */
  claimed: number;
}

function payloadOf(blob: Uint8Array, frame: Frame, source: string): Uint8Array {
  const { raw, deflated, claimed } = fieldsOf(blob, frame, source);
  if (claimed > MAX_BLOB_BYTES) {
    throw pbfProblem({
      code: 'pbf-oversized',
      source,
      byte: frame.frameStart,
      came: `a blob that claims ${claimed} bytes when opened`,
      expected: `at most ${MAX_BLOB_BYTES}`,
    });
  }
  if (raw !== null) {
    if (claimed >= 0 && claimed !== raw.length) throw lie(claimed, raw.length);
    return raw;
  }
  if (deflated === null) throw new BrokenBlock('nothing in it');
  if (claimed < 0) throw new BrokenBlock('no size for its compressed bytes');
  const opened = inflate(deflated, claimed);
  if (claimed > BLOB_RATIO_JUDGED_FROM_BYTES && claimed > deflated.length * BLOB_RATIO_MAX) {
    throw pbfProblem({
      code: 'expands-too-far',
      source,
      byte: frame.frameStart,
      came: `a blob of ${deflated.length} packed bytes that opens to ${claimed}`,
      expected: `at most ${BLOB_RATIO_MAX} times the packed size`,
    });
  }
  return opened;
}

function fieldsOf(blob: Uint8Array, frame: Frame, source: string): BlobFields {
  const cursor = new Cursor(blob);
  const fields: BlobFields = { raw: null, deflated: null, claimed: -1 };
  for (let tag = cursor.tag(); tag !== 0; tag = cursor.tag()) {
    const other = OTHER_COMPRESSIONS.get(tag >> 3);
    if (tag === 16) fields.claimed = cursor.integer();
    else if (tag === 10) fields.raw = slice(cursor);
    else if (tag === 26) fields.deflated = slice(cursor);
    else if (other !== undefined) {
      throw pbfProblem({
        code: 'pbf-compression',
        source,
        byte: frame.frameStart,
        came: `a blob compressed with ${other}`,
        expected: 'zlib or none',
        remedy:
          'Write the file anew with zlib, for example: osmium cat IN.osm.pbf -o OUT.osm.pbf -f pbf,pbf_compression=zlib',
      });
    } else cursor.skip(tag);
  }
  return fields;
}

function slice(cursor: Cursor): Uint8Array {
  const { start, end } = cursor.range();
  return cursor.bytes.subarray(start, end);
}

const lie = (claimed: number, came: number | string) =>
  new BrokenBlock(`${came} bytes where it claims ${claimed}`);

/** zlib asks for at least 64 bytes a piece; one byte more than claimed lets it see the end in one go. */
const SMALLEST_CHUNK = 64;

function inflate(deflated: Uint8Array, claimed: number): Uint8Array {
  let opened: Uint8Array;
  try {
    // Stops at the claimed size: a bomb cannot grow beyond what was checked above.
    opened = inflateSync(deflated, {
      chunkSize: Math.max(SMALLEST_CHUNK, claimed + 1),
      maxOutputLength: Math.max(1, claimed),
    });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code === 'ERR_BUFFER_TOO_LARGE') throw lie(claimed, 'more');
    throw new BrokenBlock(
      `zlib bytes that cannot be opened (${error instanceof Error ? error.message : code})`,
    );
  }
  if (opened.length !== claimed) throw lie(claimed, opened.length);
  return opened;
}
