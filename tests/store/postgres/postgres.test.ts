import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterEach, expect, it } from 'vitest';
import { InputProblem } from '../../../server/core/input/problem.ts';
import { buildApp } from '../../../server/http/app.ts';
import { ingest } from '../../../server/store/extracts/ingest.ts';
import type { Store } from '../../../server/store/library/store.ts';
import { serverDatabase } from '../../../server/store/open-store.ts';
import { PostgresLink } from '../../../server/store/postgres/link.ts';
import { openPostgres } from '../../../server/store/postgres/postgres-driver.ts';
import { describePostgres, freshSchema, opened, scratchFolder, storeOf } from '../drivers.ts';
import { newTrip } from '../new-trip.ts';
import { landFiles, OSM } from '../small-land.ts';

const run = promisify(execFile);
const EDITOR = fileURLToPath(new URL('editor.ts', import.meta.url));

const closings: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closings.splice(0).reverse()) await close();
});

/** A server's store in the database, with a folder of its own as on another machine. */
async function serverStore(url: string): Promise<Store> {
  return serverDatabase(url, scratchFolder());
}

async function appOn(url: string) {
  const app = await buildApp({ store: await serverStore(url), webFolder: '/nowhere' });
  closings.push(() => app.close());
  return app;
}

const problemOf = (work: () => unknown) => {
  try {
    work();
    return null;
  } catch (error) {
    return error instanceof InputProblem ? error.problem : error;
  }
};

describePostgres('a database that several servers share', () => {
  it('loses no change of two processes that write at the same time', { tags: 'slow' }, async () => {
    const url = freshSchema();
    const store = storeOf(opened(openPostgres(url)));
    store.addTrip(newTrip({ id: 'shared' }));
    const count = 60;
    const edit = (who: string) =>
      run(process.execPath, ['--import', 'tsx', EDITOR, url, who, String(count)], { env: process.env });
    const ended = await Promise.all([edit('a'), edit('b')]);
    const words = store.changes('shared').map(({ change }) => change);
    for (const who of ['a', 'b'])
      for (let change = 1; change <= count; change += 1) expect(words).toContain(`${who} ${change}`);
    expect(words).toHaveLength(1 + 2 * count);
    expect(store.trip('shared')?.revision).toBe(1 + 2 * count);
    // Each change went out from what was there: where another was quicker, that was told.
    expect(ended.map(({ stdout }) => Number(stdout)).every(Number.isInteger)).toBe(true);
  });

  it('answers through either server what was written through the other, and a conflict with both', async () => {
    const url = freshSchema();
    const [a, b] = [await appOn(url), await appOn(url)];
    const { rig, trip } = (await a.inject('/api/trips/demo')).json();
    const put = (app: typeof a, revision: number, corridorKm: number) =>
      app.inject({
        method: 'PUT',
        url: '/api/trips/demo',
        payload: { revision, rig, trip: { ...trip, corridorKm }, change: `Corridor ${corridorKm} km` },
      });
    expect((await put(a, 1, 7)).json()).toMatchObject({ revision: 2 });
    expect((await b.inject('/api/trips/demo')).json()).toMatchObject({
      revision: 2,
      trip: { corridorKm: 7 },
    });
    const late = await put(b, 1, 9);
    expect([late.statusCode, late.json()]).toMatchObject([
      409,
      { code: 'changed-elsewhere', kept: { revision: 2, trip: { corridorKm: 7 } } },
    ]);
    expect(late.json().detail).toMatch(/revision 1\b.*revision 2\b/);
    // At the same time from the same revision: one of them is written.
    const both = await Promise.all([put(a, 2, 11), put(b, 2, 12)]);
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409]);
    expect((await a.inject('/api/trips')).json().store).toEqual({
      keeps: 'database',
      folder: null,
      why: null,
    });
    const rigs = await a.inject({ method: 'PUT', url: '/api/rigs/Wagon', payload: { rig } });
    expect([rigs.statusCode, rigs.headers['drystage-keeps']]).toEqual([200, 'database']);
    expect((await b.inject('/api/rigs')).json()).toMatchObject({ rigs: [{ name: 'Wagon' }] });
  });

  it('has the file of an extract for the server that did not take it in, and one server at a time at such work', async () => {
    const url = freshSchema();
    const [a, b] = [await serverStore(url), await serverStore(url)];
    closings.push(
      () => a.close(),
      () => b.close(),
    );
    const { extract } = landFiles();
    let isRefused = false;
    const land = await a.extracts.add(
      { path: extract.path, fileName: 'land.osm', isOurs: false },
      async (path) => {
        // What is half there is neither shown to the other nor swept away by it.
        expect(b.extracts.all()).toEqual([]);
        await b.extracts.sweep();
        isRefused = await b.extracts.remove('any').then(
          () => false,
          (error) => error.problem.code === 'store-unusable',
        );
        return ingest(path, 'land.osm', {});
      },
    );
    expect([isRefused, b.extracts.all()]).toEqual([true, [land]]);
    expect(readFileSync(await b.extracts.fileOf(land), 'utf8')).toBe(OSM);
    expect(await b.extracts.remove(land.id)).toBe(true);
    expect(a.extracts.all()).toEqual([]);
  });

  it('gives up the job of a process that ended', () => {
    const url = freshSchema();
    const [first, second] = [openPostgres(url), opened(openPostgres(url))];
    expect([first.claim('extracts') === null, second.claim('extracts')]).toEqual([false, null]);
    first.close();
    expect(second.claim('extracts')).not.toBeNull();
  });

  it('goes on after its connections were cut, and keeps nothing of a transaction that was', () => {
    const url = freshSchema();
    const driver = opened(openPostgres(url));
    const store = storeOf(driver);
    store.addTrip(newTrip({ id: 'one' }));
    const other = new PostgresLink(url);
    const cut = () =>
      other.run(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> pg_backend_pid() AND application_name = 'drystage' AND query LIKE '%trip%'",
      );
    expect(
      problemOf(() =>
        driver.transaction(() => {
          driver.rigs.put({ name: 'half', changedAt: '', rig: newTrip().rig });
          driver.trips.get('one');
          cut();
          driver.rigs.put({ name: 'other half', changedAt: '', rig: newTrip().rig });
        }),
      ),
    ).toMatchObject({ code: 'store-unusable', came: 'a database that does not answer' });
    other.close();
    expect([store.rigs(), store.trip('one')?.name]).toEqual([[], 'Across']);
  });
});

describePostgres('a database that cannot be used', () => {
  it('is told with what to do: a newer one, another program, none there, none of that name, no such address', () => {
    const schema = (...statements: string[]) => {
      const url = freshSchema();
      const link = new PostgresLink(url);
      for (const statement of statements) link.run(statement);
      link.close();
      return url;
    };
    const newer = schema('CREATE TABLE drystage (version INTEGER)', 'INSERT INTO drystage VALUES (99)');
    expect(problemOf(() => openPostgres(newer))).toMatchObject({
      code: 'store-too-new',
      place: 'DATABASE_URL',
    });
    const foreign = schema('CREATE TABLE trips (whatever TEXT)');
    expect(problemOf(() => openPostgres(foreign))).toMatchObject({ code: 'store-unusable' });
    const { pathname, search } = new URL(freshSchema());
    for (const [address, came] of [
      ['postgresql://nobody@127.0.0.1:9/none', 'a database that does not answer'],
      [`postgresql://drystage@localhost${pathname}x${search}`, /does not know/],
      ['mysql://here', /another kind/],
    ] as const)
      expect(problemOf(() => openPostgres(address))).toMatchObject({
        code: 'store-unusable',
        came: typeof came === 'string' ? came : expect.stringMatching(came),
      });
  });

  it('keeps a name with a sign that PostgreSQL has not by refusing it clearly', () => {
    const driver = opened(openPostgres(freshSchema()));
    expect(
      problemOf(() => driver.rigs.put({ name: 'a\0b', changedAt: '', rig: newTrip().rig })),
    ).toMatchObject({ came: expect.stringMatching(/NUL/) });
  });
});
