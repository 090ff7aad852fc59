import { createReadStream } from 'node:fs';
import { InputProblem } from '../../../core/input/problem.ts';
import { ordinaryFile, pathProblem } from '../../files/ordinary-file.ts';
import { bunzip2 } from './bunzip2.ts';
import { ExpansionGuard } from './expansion-guard.ts';
import { gunzip } from './gunzip.ts';
import { PACKING_LAYERS_MAX, READ_CHUNK_BYTES, SNIFF_BYTES } from './limits.ts';
import { type Content, sniff } from './sniff.ts';
import { SUPPLY_FORMATS } from './supply-formats.ts';

export type Packing = 'gzip' | 'bzip2';

/** A file's content with its packing taken off, as often as asked, piece by piece. */
export interface ByteSource {
  source: string;
  /** Outermost first. */
  packing: Packing[];
  content: Content;
  /** First bytes of the content. */
  head: Buffer;
  /** Bytes of the file as it lies on the disk. */
  fileBytes: number;
  /**
   * Reads from the start. `onFileBytes` is told how many bytes of the file have been read.
   * Throws InputProblem for a broken packing and for one that expands too far.
   */
  open(onFileBytes?: (bytes: number) => void): AsyncGenerator<Buffer>;
}

async function* fileBytesOf(
  path: string,
  signal: AbortSignal | undefined,
  onFileBytes: ((bytes: number) => void) | undefined,
): AsyncGenerator<Buffer> {
  let read = 0;
  for await (const chunk of createReadStream(path, { highWaterMark: READ_CHUNK_BYTES })) {
    signal?.throwIfAborted();
    read += (chunk as Buffer).length;
    onFileBytes?.(read);
    yield chunk as Buffer;
  }
}

const UNPACKERS: Record<
  Packing,
  (packed: AsyncGenerator<Buffer>, source: string, guard: ExpansionGuard) => AsyncGenerator<Buffer>
> = { gzip: gunzip, bzip2: bunzip2 };

async function headOf(pieces: AsyncGenerator<Buffer>): Promise<Buffer> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const piece of pieces) {
    parts.push(piece);
    bytes += piece.length;
    if (bytes >= SNIFF_BYTES) break;
  }
  return Buffer.concat(parts).subarray(0, SNIFF_BYTES);
}

/** Opens a file and takes off gzip and bzip2 by content, whatever its name. Throws InputProblem. */
export async function byteSource(path: string, source: string, signal?: AbortSignal): Promise<ByteSource> {
  try {
    const { size: fileBytes } = await ordinaryFile(path, source);
    const packing: Packing[] = [];
    const read = (onFileBytes?: (bytes: number) => void): AsyncGenerator<Buffer> => {
      let pieces = fileBytesOf(path, signal, onFileBytes);
      for (const layer of packing) pieces = UNPACKERS[layer](pieces, source, new ExpansionGuard(source));
      return pieces;
    };
    for (;;) {
      const head = await headOf(read());
      const content = sniff(head);
      if (content !== 'gzip' && content !== 'bzip2') {
        return { source, packing, content, head, fileBytes, open: read };
      }
      if (packing.length === PACKING_LAYERS_MAX) {
        throw new InputProblem({
          code: 'expands-too-far',
          source,
          came: `packed more than ${PACKING_LAYERS_MAX} times over`,
          expected: SUPPLY_FORMATS,
          remedy: 'Unpack it first',
        });
      }
      packing.push(content);
    }
  } catch (error) {
    throw pathProblem(error, source);
  }
}
