import { InputProblem } from '../../core/input/problem.ts';

/** What the system says of a disk, as the problem that it is; anything else as it came. */
export function asDiskProblem(error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    return new InputProblem({
      code: 'store-full',
      came: `no room left on the disk (${code})`,
      expected: 'room for the file',
      remedy: 'Make room, then do it again; what was kept before is whole',
    });
  }
  if (code === 'EROFS' || code === 'EACCES' || code === 'EPERM') {
    return new InputProblem({
      code: 'store-unusable',
      came: `a data folder that may not be written (${code})`,
      expected: 'a folder that can be read and written',
      remedy: 'Correct its permissions, or set DRYSTAGE_DATA to another folder',
    });
  }
  return error;
}
