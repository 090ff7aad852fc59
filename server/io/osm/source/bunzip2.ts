/// <reference path="./unbzip2-stream.d.ts" />
import { setFlagsFromString } from 'node:v8';
import unbzip2Stream from 'unbzip2-stream';
import { InputProblem } from '../../../core/input/problem.ts';
import type { ExpansionGuard } from './expansion-guard.ts';

const brokenBzip2 = (source: string, packedBytes: number) =>
  new InputProblem({
    code: 'bzip2-broken',
    source,
    place: `byte ${packedBytes}`,
    came: 'the bzip2 data ends too early or is damaged',
    expected: 'a whole bzip2 file',
    remedy: 'Download it again',
  });

/**
 * Unpacks bzip2 piece by piece, several streams one behind the other too (as parallel packers write them); the
 * library checks the CRC of each block and stream.
 * Throws InputProblem: `bzip2-broken` for a cut or damaged file, `expands-too-far` by the guard.
 */
export async function* bunzip2(
  packed: AsyncGenerator<Buffer>,
  source: string,
  guard: ExpansionGuard,
): AsyncGenerator<Buffer> {
  // Code made small, as the command line has it, unpacks at a third of the speed.
  setFlagsFromString('--no-optimize-for-size');
  // The library's stream works within the calls of write and end, so what it unpacks is at hand when they return.
  const unpacking = unbzip2Stream();
  const pieces: Buffer[] = [];
  let packedBytes = 0;
  let failure: unknown = null;
  unpacking.on('data', (piece: Buffer) => {
    // Thrown from here, the guard's refusal stops the library's loop and comes back as the stream's error.
    guard.giveOut(piece.length);
    pieces.push(piece);
  });
  unpacking.on('error', (error: unknown) => {
    failure ??= error;
  });
  const stopOnFailure = () => {
    if (failure === null) return;
    if (failure instanceof InputProblem) throw failure;
    throw brokenBzip2(source, packedBytes);
  };
  for await (const piece of packed) {
    guard.takeIn(piece.length);
    packedBytes += piece.length;
    unpacking.write(piece);
    yield* pieces.splice(0);
    stopOnFailure();
  }
  unpacking.end();
  yield* pieces.splice(0);
  stopOnFailure();
}
