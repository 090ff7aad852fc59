import type { Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import { InputProblem } from '../../core/input/problem.ts';

const CAME: Readonly<
  Record<string, readonly [code: 'file-missing' | 'file-unreadable', came: string, remedy: string]>
> = {
  ENOENT: ['file-missing', 'there is no such file', 'Check the path'],
  ENOTDIR: ['file-missing', 'there is no such file', 'Check the path'],
  EISDIR: ['file-unreadable', 'this is a folder', 'Name the file in the folder'],
  EACCES: ['file-unreadable', 'reading it is not permitted', 'Give yourself the right to read it'],
  EPERM: ['file-unreadable', 'reading it is not permitted', 'Give yourself the right to read it'],
  ELOOP: ['file-unreadable', 'links that lead in a circle', 'Give the path of the file itself'],
  ENAMETOOLONG: ['file-unreadable', 'a path that is longer than the system allows', 'Check the path'],
};

/** What the system says of a path, as a refusal; anything else as it came. */
export function pathProblem(error: unknown, source: string): unknown {
  if (error instanceof InputProblem || !(error instanceof Error) || !('code' in error)) return error;
  const known = CAME[String(error.code)];
  if (known === undefined) return error;
  const [code, came, remedy] = known;
  return new InputProblem({ code, source, came, expected: 'a file to read', remedy });
}

/** An ordinary file; a pipe or a device, which may give bytes without end or none for ever, is refused. Throws InputProblem. */
export async function ordinaryFile(path: string, source: string): Promise<Stats> {
  let stats: Stats;
  try {
    stats = await stat(path);
  } catch (error) {
    throw pathProblem(error, source);
  }
  if (stats.isDirectory()) throw pathProblem(Object.assign(new Error('folder'), { code: 'EISDIR' }), source);
  if (stats.isFile()) return stats;
  throw new InputProblem({
    code: 'file-unreadable',
    source,
    came: 'a pipe or a device',
    expected: 'a file to read',
    remedy: 'Save what it gives as a file first',
  });
}
