// Talks to PostgreSQL for a thread that waits for each answer (link.ts). One connection for what is asked, opened at its
// first use and again after it was lost; one more for each job that is claimed, which ends with the claim.
import { workerData } from 'node:worker_threads';

const { port, flag, url } = workerData;
// At the first use: without the package whoever waits is told at once.
const loadPg = () => import('pg').then((module) => module.default);

/** How long a connection may take, an answer, and the wait for others' writes, milliseconds. Ours. */
const [CONNECT_MS, ANSWER_MS, LOCK_MS] = [5_000, 20_000, 5_000];

let client = null;
let isInside = false;
const claims = new Map();

async function connected(settings) {
  const pg = await loadPg();
  const fresh = new pg.Client({
    connectionString: url,
    application_name: 'drystage',
    connectionTimeoutMillis: CONNECT_MS,
    keepAlive: true,
    ...settings,
  });
  // One that is lost while nobody asks says so here.
  fresh.on('error', () => {
    if (client === fresh) client = null;
  });
  await fresh.connect();
  return fresh;
}

const lost = (message) => Object.assign(new Error(message), { code: 'LOST' });

/** The connection for what is asked; a transaction does not go on in another than it began in. */
async function asked() {
  if (client !== null) return client;
  if (isInside) throw lost('the connection was lost within a transaction');
  client = await connected({ query_timeout: ANSWER_MS, lock_timeout: LOCK_MS });
  return client;
}

const DO = {
  async ask({ sql, values }) {
    const using = await asked();
    try {
      // Without values it may be several statements; the last one's rows are told.
      const result = values.length === 0 ? await using.query(sql) : await using.query(sql, values);
      const last = Array.isArray(result) ? result.at(-1) : result;
      return { rows: last.rows.map(plainRow), count: last.rowCount ?? 0 };
    } catch (error) {
      // After anything but the database's own refusal nobody knows what the connection is at.
      if (error.severity === undefined) drop();
      throw error;
    }
  },
  async begin({ sql }) {
    try {
      await DO.ask({ sql, values: [] });
      isInside = true;
    } catch (error) {
      // It may have begun, and waited in vain.
      await client?.query('ROLLBACK').catch(drop);
      throw error;
    }
  },
  async end({ sql }) {
    try {
      await DO.ask({ sql, values: [] });
    } catch (error) {
      drop();
      throw error;
    } finally {
      isInside = false;
    }
  },
  async claim({ name }) {
    const holder = await connected({ query_timeout: ANSWER_MS, idle_in_transaction_session_timeout: 0 });
    try {
      await holder.query('BEGIN');
      const { rowCount } = await holder.query(
        'SELECT name FROM jobs WHERE name = $1 FOR UPDATE SKIP LOCKED',
        [name],
      );
      if (rowCount === 0) return await holder.end().then(() => false);
      claims.set(name, holder);
      return true;
    } catch (error) {
      await holder.end().catch(() => {});
      throw error;
    }
  },
  async release({ name }) {
    const holder = claims.get(name);
    claims.delete(name);
    // With its end the row is free.
    await holder?.end().catch(() => {});
  },
  async close() {
    for (const name of [...claims.keys()]) await DO.release({ name });
    await client?.end().catch(() => {});
    port.close();
  },
};

function drop() {
  const gone = client;
  client = null;
  gone?.end().catch(() => {});
}

/** As it can be told to another thread without all that lies beside its bytes. */
const plainRow = (row) =>
  Object.fromEntries(
    Object.entries(row).map(([name, value]) => [
      name,
      Buffer.isBuffer(value) ? new Uint8Array(value) : value,
    ]),
  );

async function answer({ what, ...parts }) {
  try {
    return { value: await DO[what](parts) };
  } catch (error) {
    return { error: { message: String(error.message), code: String(error.code ?? '') } };
  }
}

let last = Promise.resolve();
port.on('message', (message) => {
  last = last.then(async () => {
    const told = await answer(message);
    if (message.what !== 'close') port.postMessage(told);
    Atomics.store(flag, 0, 1);
    Atomics.notify(flag, 0);
  });
});
