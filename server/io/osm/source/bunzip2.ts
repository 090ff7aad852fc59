import { InputProblem } from '../../../core/input/problem.ts';
import { BrokenBzip2 } from './bzip2/broken.ts';
import { Bzip2Streams } from './bzip2/streams.ts';
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
 * Unpacks bzip2 piece by piece, several streams one behind the other too (as parallel packers write them); the CRC of
 * each block is checked before anything of it is given, that of each stream at its end.
 * Throws InputProblem: `bzip2-broken` for a cut or damaged file, `expands-too-far` by the guard.
 */
export async function* bunzip2(
  packed: AsyncGenerator<Buffer>,
  source: string,
  guard: ExpansionGuard,
): AsyncGenerator<Buffer> {
  const streams = new Bzip2Streams((bytes) => guard.giveOut(bytes));
  let packedBytes = 0;
  try {
    for await (const piece of packed) {
      guard.takeIn(piece.length);
      packedBytes += piece.length;
      yield* streams.add(piece);
    }
    yield* streams.end();
  } catch (error) {
    throw error instanceof BrokenBzip2 ? brokenBzip2(source, packedBytes) : error;
  }
}
