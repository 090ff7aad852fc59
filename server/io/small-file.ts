import { readFile, stat } from 'node:fs/promises';
import { type Outcome, refused } from '../core/input/problem.ts';

/** Reads a small file whole; `what` says in a refusal what it should be ("a rig file"). */
export async function readSmallFile(
  path: string,
  { what, mostBytes }: { what: string; mostBytes: number },
): Promise<Outcome<Buffer>> {
  const expected = { source: path, expected: what };
  try {
    const stats = await stat(path);
    if (stats.isDirectory()) {
      const remedy = 'Give the path of the file in it';
      return refused({ code: 'file-unreadable', came: 'a folder', remedy, ...expected });
    }
    if (!stats.isFile()) {
      const remedy = 'Save what it gives as a file first';
      return refused({ code: 'file-unreadable', came: 'a pipe or a device', remedy, ...expected });
    }
    if (stats.size > mostBytes) {
      const remedy = `Give a file under ${mostBytes} bytes`;
      return refused({ code: 'too-large', came: `${stats.size} bytes`, remedy, ...expected });
    }
    return { ok: true, value: await readFile(path) };
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown error';
    if (code === 'ENOENT' || code === 'ENOTDIR')
      return refused({ code: 'file-missing', came: 'no such file', remedy: 'Check the path', ...expected });
    const came = `a file that cannot be read (${code})`;
    return refused({ code: 'file-unreadable', came, remedy: 'Check that you may read it', ...expected });
  }
}

/** The text of bytes in UTF-8; null where they are none. */
export function utf8Text(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
