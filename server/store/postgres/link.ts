import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import { InputProblem } from '../../core/input/problem.ts';
import type { Row, SqlDatabase, Value } from '../sql/database.ts';
import { noAddress, problemOfPostgres, silent } from './postgres-problem.ts';

const ENTRY = new URL('./link-worker.mjs', import.meta.url);
/** The worker gives up long before this: 5 s to connect, 20 s for an answer. Ours. */
const SILENT_MS = 60_000;
/** What a transaction that writes holds, so that there is one at a time, as in SQLite: "DRYS". */
const WRITERS_KEY = 0x44525953;

type Ask =
  | { what: 'ask'; sql: string; values: Value[] }
  | { what: 'begin' | 'end'; sql: string }
  | { what: 'claim' | 'release'; name: string }
  | { what: 'close' };
interface Answer {
  value?: unknown;
  error?: { message: string; code: string };
}

/**
 * A PostgreSQL database. The port of the store is synchronous: this thread waits for a worker that talks to the database.
 * All methods throw InputProblem for what is no fault of the program: no database there, a full disk, another writer for long.
 */
export class PostgresLink implements SqlDatabase {
  readonly #worker: Worker;
  readonly #port: MessagePort;
  /** 1 once the answer is there. */
  readonly #flag = new Int32Array(new SharedArrayBuffer(4));
  readonly #numbered = new Map<string, string>();
  #isInside = false;
  /** An answer that came late would be taken for another's. */
  #isLost = false;

  constructor(url: string) {
    if (!/^postgres(ql)?:\/\//.test(url)) throw new InputProblem(noAddress());
    const { port1, port2 } = new MessageChannel();
    this.#port = port1;
    this.#worker = new Worker(ENTRY, {
      workerData: { port: port2, flag: this.#flag, url },
      transferList: [port2],
      execArgv: [],
    });
    this.#worker.unref();
  }

  run(sql: string, ...values: Value[]): number {
    return this.#query(sql, values).count;
  }

  one(sql: string, ...values: Value[]): Row | null {
    return this.#query(sql, values).rows[0] ?? null;
  }

  all(sql: string, ...values: Value[]): Row[] {
    return this.#query(sql, values).rows;
  }

  /** All or nothing; inside another one, a part of it. Of those that write one goes on at a time, whatever server it is of. */
  transaction<T>(work: () => T): T {
    return this.whole(`BEGIN; SELECT pg_advisory_xact_lock(${WRITERS_KEY})`, work);
  }

  /** All or nothing, begun by a statement of one's own. */
  whole<T>(begin: string, work: () => T): T {
    if (this.#isInside) return work();
    this.#tell({ what: 'begin', sql: begin });
    this.#isInside = true;
    try {
      const result = work();
      this.#tell({ what: 'end', sql: 'COMMIT' });
      return result;
    } catch (error) {
      this.#rollBack();
      throw error;
    } finally {
      this.#isInside = false;
    }
  }

  /** Holds a row of `jobs` for this process; false while another has it. */
  claim(name: string): boolean {
    return this.#tell({ what: 'claim', name }) === true;
  }

  release(name: string): void {
    this.#tell({ what: 'release', name });
  }

  close(): void {
    this.#post({ what: 'close' });
    this.#port.close();
    void this.#worker.terminate();
  }

  /** A lost connection has rolled back by itself. */
  #rollBack(): void {
    try {
      this.#tell({ what: 'end', sql: 'ROLLBACK' });
    } catch (error) {
      if (!(error instanceof InputProblem)) throw error;
    }
  }

  #query(sql: string, values: Value[]): { rows: Row[]; count: number } {
    return this.#tell({ what: 'ask', sql: this.#withNumbers(sql), values }) as { rows: Row[]; count: number };
  }

  #tell(ask: Ask): unknown {
    const answer = this.#post(ask)
      ? (receiveMessageOnPort(this.#port)?.message as Answer | undefined)
      : undefined;
    if (answer === undefined) throw new InputProblem(silent());
    if (answer.error === undefined) return answer.value;
    const problem = problemOfPostgres(answer.error);
    if (problem !== null) throw new InputProblem(problem);
    throw Object.assign(new Error(answer.error.message), { code: answer.error.code });
  }

  /** Whether it was answered. */
  #post(ask: Ask): boolean {
    if (this.#isLost) return false;
    Atomics.store(this.#flag, 0, 0);
    this.#port.postMessage(ask);
    this.#isLost = Atomics.wait(this.#flag, 0, 0, SILENT_MS) === 'timed-out';
    return !this.#isLost;
  }

  /** Values as PostgreSQL has them: $1 for the first `?`. */
  #withNumbers(sql: string): string {
    const known = this.#numbered.get(sql);
    if (known !== undefined) return known;
    let number = 0;
    const numbered = sql.replace(/\?/g, () => {
      number += 1;
      return `$${number}`;
    });
    this.#numbered.set(sql, numbered);
    return numbered;
  }
}
