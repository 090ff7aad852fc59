import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { InputProblem } from '../../../core/input/problem.ts';
import type { ExpansionGuard } from './expansion-guard.ts';

function brokenGzip(error: unknown, source: string, packedBytes: number): InputProblem {
  const isCut = error instanceof Error && 'code' in error && error.code === 'Z_BUF_ERROR';
  return new InputProblem({
    code: 'gzip-broken',
    source,
    place: isCut ? `byte ${packedBytes}` : null,
    came: isCut ? 'the gzip data ends too early' : 'the gzip data is damaged',
    expected: 'a whole gzip file',
    remedy: 'Download it again',
  });
}

/**
 * Unpacks gzip piece by piece, several members one behind the other too.
 * Throws InputProblem: `gzip-broken` for a cut or damaged file, `expands-too-far` by the guard.
 */
export async function* gunzip(
  packed: AsyncGenerator<Buffer>,
  source: string,
  guard: ExpansionGuard,
): AsyncGenerator<Buffer> {
  const unpacking = createGunzip();
  let inputFailure: unknown = null;
  let packedBytes = 0;
  const counted = async function* () {
    try {
      for await (const piece of packed) {
        guard.takeIn(piece.length);
        packedBytes += piece.length;
        yield piece;
      }
    } catch (error) {
      inputFailure = error;
      throw error;
    }
  };
  // Failures reach the loop below through the stream itself; the promise would tell them a second time.
  const feeding = pipeline(Readable.from(counted(), { objectMode: true }), unpacking).catch(() => undefined);
  try {
    for await (const piece of unpacking) {
      guard.giveOut((piece as Buffer).length);
      yield piece as Buffer;
    }
  } catch (error) {
    if (inputFailure !== null) throw inputFailure;
    if (error instanceof InputProblem) throw error;
    throw brokenGzip(error, source, packedBytes);
  } finally {
    unpacking.destroy();
    await feeding;
  }
}
