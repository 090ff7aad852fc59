import { createRequire } from 'node:module';
import type Database from 'libsql';
import { InputProblem, type ProblemParts } from '../../core/input/problem.ts';
import type { Row, SqlDatabase, Value } from '../sql/database.ts';

/** Loaded at the first use: a command that keeps nothing does without. */
const loadLibsql = (): typeof Database => createRequire(import.meta.url)('libsql');

type Statement = Database.Statement<unknown[]>;

/** How long a write waits for another process to finish its own, milliseconds (ours; writes take a few). */
const BUSY_MS = 5_000;

const FULL: ProblemParts = {
  code: 'store-full',
  came: 'no room left on the disk of the data folder',
  expected: 'room for what is to be kept',
  remedy: 'Make room, then do it again; what was kept before is whole',
};
/** Another process writes, or holds the file. */
const BUSY: ProblemParts = {
  code: 'store-unusable',
  came: 'a data folder that another process keeps busy',
  expected: 'a free moment within 5 seconds',
  remedy: 'Wait for the other process, then do it again',
};

export const isBusy = ({ came }: ProblemParts): boolean => came === BUSY.came;

function unusable(came: string): ProblemParts {
  return {
    code: 'store-unusable',
    came,
    expected: 'a data folder that can be read and written',
    remedy: 'Correct its permissions, or set DRYSTAGE_DATA to another folder',
  };
}

/** What the library throws, as the problem that it is; null where it is a fault of our own. */
function problemOfSql(error: unknown): ProblemParts | null {
  if (!(error instanceof Error)) return null;
  const { code } = error as { code?: unknown };
  // One that cannot be opened at all has an empty code.
  const isUnopened = error.message.startsWith('ConnectionFailed');
  const name = isUnopened ? 'CANTOPEN' : typeof code === 'string' ? code : '';
  if (/FULL/.test(name)) return FULL;
  if (/BUSY|LOCKED/.test(name)) return BUSY;
  if (/READONLY|PERM/.test(name)) return unusable('a data folder that may not be written');
  if (/CANTOPEN|IOERR/.test(name)) return unusable('a data folder that cannot be opened');
  if (/NOTADB|CORRUPT/.test(name)) return unusable('a file in the data folder that is damaged');
  return null;
}

const asProblem = (error: unknown): unknown => {
  const problem = problemOfSql(error);
  return problem === null ? error : new InputProblem(problem);
};

/** A database in a file. All methods throw InputProblem for what is no fault of the program: a full disk, a folder read-only. */
export class SqlFile implements SqlDatabase {
  readonly #database: Database.Database;
  readonly #statements = new Map<string, Statement>();
  readonly #onWrite: (sql: string) => void;
  #isInside = false;

  /** `onWrite` is called before each write; what it throws comes as of the library (tests let a disk fail by it). */
  constructor(path: string, busyMs = BUSY_MS, onWrite: (sql: string) => void = () => {}) {
    this.#onWrite = onWrite;
    this.#database = guarded(() => new (loadLibsql())(path, { timeout: busyMs }));
  }

  run(sql: string, ...values: Value[]): number {
    return guarded(() => {
      this.#onWrite(sql);
      return this.#statement(sql).run(...values).changes;
    });
  }

  one(sql: string, ...values: Value[]): Row | null {
    return guarded(() => (this.#statement(sql).get(...values) as Row | undefined) ?? null);
  }

  all(sql: string, ...values: Value[]): Row[] {
    return guarded(() => this.#statement(sql).all(...values) as Row[]);
  }

  /** Several statements without values. */
  script(sql: string): void {
    guarded(() => {
      this.#onWrite(sql);
      this.#database.exec(sql);
    });
  }

  /** All or nothing; inside another one, a part of it. */
  transaction<T>(work: () => T): T {
    if (this.#isInside) return work();
    this.script('BEGIN IMMEDIATE');
    this.#isInside = true;
    try {
      const result = work();
      this.script('COMMIT');
      return result;
    } catch (error) {
      // A full disk may have ended the transaction by itself.
      if (this.#database.inTransaction) this.script('ROLLBACK');
      throw error;
    } finally {
      this.#isInside = false;
    }
  }

  close(): void {
    this.#statements.clear();
    this.#database.close();
  }

  #statement(sql: string): Statement {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const fresh = this.#database.prepare(sql);
    this.#statements.set(sql, fresh);
    return fresh;
  }
}

function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw asProblem(error);
  }
}
