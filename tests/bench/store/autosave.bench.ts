import { closeSync, fsyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildApp } from '../../../server/http/app.ts';
import { folderStore } from '../../../server/store/open-store.ts';
import { type Bench, type BenchRow, medianMsOf } from '../measure.ts';

/** A change is to be acknowledged within a second; this leaves all of it to network and page. Ours. */
const TARGET_MS = 100;
const RUNS = 200;

/** How long a change of a trip takes until it is on the disk, beside the least that a disk takes. */
export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'drystage-bench-autosave-'));
  const app = await buildApp({ store: folderStore(folder), webFolder: '/nowhere' });
  try {
    const { rig, trip } = (await app.inject('/api/trips/demo')).json();
    let revision = 1;
    const put = async () => {
      const payload = {
        revision,
        rig,
        trip: { ...trip, corridorKm: 1 + (revision % 40) },
        change: 'A change',
      };
      const { statusCode } = await app.inject({ method: 'PUT', url: '/api/trips/demo', payload });
      if (statusCode !== 200) throw new Error(`status ${statusCode}`);
      revision += 1;
    };
    const text = JSON.stringify({ rig, trip });
    const file = openSync(join(folder, 'peer'), 'w');
    const rows: BenchRow[] = [
      {
        what: 'PUT of a trip with a change, the demo',
        who: 'drystage',
        medianMs: await medianMsOf(RUNS, put),
        runs: RUNS,
      },
      {
        what: 'the same text appended to a file and synced',
        who: 'the disk alone',
        medianMs: await medianMsOf(RUNS, () => {
          writeSync(file, text);
          fsyncSync(file);
        }),
        runs: RUNS,
      },
    ];
    closeSync(file);
    const [first] = rows;
    return {
      title: 'autosave',
      target: `${TARGET_MS} ms`,
      met: (first?.medianMs ?? Infinity) <= TARGET_MS,
      rows,
    };
  } finally {
    await app.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
