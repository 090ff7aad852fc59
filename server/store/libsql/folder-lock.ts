import { join } from 'node:path';
import { InputProblem } from '../../core/input/problem.ts';
import type { Claim, JobName } from '../port/port.ts';
import { isBusy, SqlFile } from './sql-file.ts';

/** Who may hold a data folder's lock: the one server, or the one process that takes extracts in or sweeps. */
type LockName = 'server' | JobName;

/**
 * Holds a data folder against other processes of the kind: a lock on a file of its own, which the system takes away when
 * the process ends, however it ends.
 */
export class FolderLock implements Claim {
  readonly #file: SqlFile;

  private constructor(file: SqlFile) {
    this.#file = file;
  }

  /** The lock; null where another process has it. Throws InputProblem where the folder cannot be used. */
  static take(folder: string, name: LockName): FolderLock | null {
    const file = new SqlFile(join(folder, `${name}.lock`), 0);
    try {
      file.script('PRAGMA journal_mode = DELETE; BEGIN EXCLUSIVE');
      return new FolderLock(file);
    } catch (error) {
      file.close();
      if (error instanceof InputProblem && isBusy(error.problem)) return null;
      throw error;
    }
  }

  release(): void {
    this.#file.close();
  }
}
