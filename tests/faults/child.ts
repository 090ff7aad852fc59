import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { backUp } from '../../server/store/backup/backup.ts';
import { ingest } from '../../server/store/extracts/ingest.ts';
import type { Store } from '../../server/store/library/store.ts';
import { SqlFile } from '../../server/store/libsql/sql-file.ts';
import { folderStore } from '../../server/store/open-store.ts';
import { BACKUP, type Kind } from './kinds.ts';

/** A word on what was acknowledged, out at once: this process may end at any moment. */
const say = (...words: (string | number)[]): void => void writeSync(1, `${words.join(' ')}\n`);

/** Changes a trip over and over; its corridor tells the revision. */
function autosave(store: Store): void {
  for (;;) {
    const { id, revision, rig } = store.trips()[0] ?? nothing();
    const corridorKm = 1 + (revision % 40);
    const change = `Revision ${revision + 1}`;
    const saved = store.changeTrip(id, revision, { rig, trip: { corridorKm }, change });
    if (saved.outcome !== 'saved') throw new Error(saved.outcome);
    say('saved', saved.trip.revision, corridorKm);
  }
}

/** Takes an extract in and away, over and over. */
async function takeIn(store: Store, path: string): Promise<void> {
  for (;;) {
    const file = { path, fileName: 'taps.osm', name: 'taps', isOurs: false };
    const { id } = await store.extracts.add(file, (copy) => ingest(copy, 'taps.osm', {}));
    say('added', id);
    say('removing', id);
    await store.extracts.remove(id);
    say('removed', id);
  }
}

/** Copies a trip, deletes the copy and restores it, over and over. */
function deleteOver(store: Store): void {
  const { id } = store.trips().at(-1) ?? nothing();
  for (;;) {
    const copy = store.copyTrip(id)?.id ?? '';
    say('copied', copy);
    store.deleteTrip(copy, true);
    say('deleted', copy);
    store.deleteTrip(copy, false);
    say('restored', copy);
    store.deleteTrip(copy, true);
    say('deleted', copy);
  }
}

/** Writes one backup after the other, with a change before each. */
async function backUpOver(store: Store, folder: string): Promise<void> {
  for (let number = 0; ; number += 1) {
    const { id, revision, rig, trip } = store.trips()[0] ?? nothing();
    store.changeTrip(id, revision, { rig, trip, change: `Revision ${revision + 1}` });
    await backUp(folder, join(folder, `${process.pid}-${number}${BACKUP}`));
    say('backup', revision + 1);
  }
}

function nothing(): never {
  throw new Error('the store holds no trip');
}

const [kind, folder = '', file = ''] = process.argv.slice(2) as [Kind, string?, string?];
// What takes long at a start is done before the first word.
new SqlFile(':memory:').close();
say('ready');
const store = folderStore(folder);
say('open');
if (kind === 'autosave') autosave(store);
else if (kind === 'delete') deleteOver(store);
else if (kind === 'backup') await backUpOver(store, folder);
else if (kind === 'ingest') await takeIn(store, file);
