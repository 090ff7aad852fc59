import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type Database from 'libsql';
import { boxesAlong } from '../../../server/core/route/cover/boxes-along.ts';
import { byPlace } from '../../../server/store/extracts/by-place.ts';
import { folderStore } from '../../../server/store/open-store.ts';
import type { BoxedRow, ExtractTable } from '../../../server/store/port/port.ts';
import { type Bench, medianMsOf } from '../measure.ts';

const [FIRST, ALL, BATCH] = [1_000_000, 5_000_000, 2000];
const TARGETS = { ingestMs: 10_000, queryMs: 150, mb: 300 };
const RUNS = 9;

/** The world in tiles, each with a batch of every million: rows come by place, as the shelf of extracts hands them on. */
const [ACROSS, UP] = [25, 20];

/** Supply points all over the land's latitudes, each some 150 bytes as a node of an extract is kept. */
function* batches(from: number, to: number): Generator<BoxedRow[]> {
  let state = from + 5;
  const random = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  for (let at = from; at < to; at += BATCH) {
    const tile = (at / BATCH) % (ACROSS * UP);
    const [x, y] = [tile % ACROSS, Math.floor(tile / ACROSS)];
    const rows = Array.from({ length: BATCH }, (_, step): BoxedRow => {
      const lon = ((x + random()) / ACROSS) * 360 - 180;
      const lat = ((y + random()) / UP) * 125 - 55;
      const tags = { amenity: 'fuel', 'fuel:diesel': 'yes', name: `Place ${at + step}` };
      const element = { type: 'node', id: at + step, lon, lat, tags, version: 1 };
      return { box: [lon, lat, lon, lat], json: JSON.stringify({ element }) };
    });
    yield byPlace(rows);
  }
}

/** The time that writing takes, without that of making the rows up. */
function writtenMs(from: number, to: number, write: (rows: readonly BoxedRow[]) => void): number {
  let ms = 0;
  for (const rows of batches(from, to)) {
    const start = performance.now();
    write(rows);
    ms += performance.now() - start;
  }
  return ms;
}

/** The least that any store in such a file does: the same rows in one table without a spatial key. */
function bareMs(folder: string): number {
  const Libsql = createRequire(import.meta.url)('libsql') as typeof Database;
  const database = new Libsql(join(folder, 'bare.db'));
  database.exec(
    'PRAGMA journal_mode = WAL; CREATE TABLE points (id INTEGER PRIMARY KEY, extract TEXT, json TEXT)',
  );
  const insert = database.prepare('INSERT INTO points (extract, json) VALUES (?, ?)');
  const ms = writtenMs(0, FIRST, (rows) => {
    database.exec('BEGIN');
    for (const { json } of rows) insert.run('a', json);
    database.exec('COMMIT');
  });
  database.close();
  return ms;
}

/** 15,000 km to and fro across two continents, vertices some 1 km apart. */
function planetRoute(): { lon: Float64Array; lat: Float64Array } {
  const at = (share: number) => [-10 + share * 120, 20 + Math.sin(share * 9) * 12] as const;
  const points = Array.from({ length: 15_001 }, (_, step) => at(step / 15_000));
  return {
    lon: Float64Array.from(points, ([lon]) => lon),
    lat: Float64Array.from(points, ([, lat]) => lat),
  };
}

/** Five million supply points in the embedded store: taking a million in, and the corridor of a long route. */
export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-bench-planet-'));
  const store = folderStore(folder);
  try {
    const table: ExtractTable = store.driver.extracts;
    table.begin('planet');
    const add = (rows: readonly BoxedRow[]) => table.addPoints('planet', rows);
    const ingestMs = writtenMs(0, FIRST, add);
    const peerMs = bareMs(folder);
    const restMs = writtenMs(FIRST, ALL, add);
    const boxes = boxesAlong(planetRoute(), 5);
    const found = table.pointsIn('planet', boxes).length;
    const queryMs = await medianMsOf(RUNS, () => table.pointsIn('planet', boxes));
    const mb = process.memoryUsage.rss() / 1e6;
    const met = ingestMs <= TARGETS.ingestMs && queryMs <= TARGETS.queryMs && mb <= TARGETS.mb;
    const row = (what: string, who: string, medianMs: number, runs = 1) => ({ what, who, medianMs, runs });
    return {
      title: 'supply points of a planet',
      target: `a million in ${TARGETS.ingestMs} ms, corridor ${TARGETS.queryMs} ms, ${TARGETS.mb} MB`,
      met,
      rows: [
        row(`writing the first ${FIRST} with their spatial key`, 'drystage, store', ingestMs),
        row('the same rows into one table, row by row, without a key', 'libsql alone', peerMs),
        row('a million of the next four, on average', 'drystage, store', restMs / 4),
        {
          ...row(
            `${found} of ${ALL} within 5 km of the route, by ${boxes.length} boxes`,
            'drystage, R*Tree',
            queryMs,
            RUNS,
          ),
          peakMb: mb,
        },
      ],
    };
  } finally {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
