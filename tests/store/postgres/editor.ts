import { Store } from '../../../server/store/library/store.ts';
import { openPostgres } from '../../../server/store/postgres/postgres-driver.ts';

/**
 * A process that changes a trip, a given number of times, each time from the revision that it saw last, and again from
 * the newer one where another was quicker; prints how often that was. Words: the database, its name, how many changes.
 */
const [url = '', who = '', count = ''] = process.argv.slice(2);
const store = new Store(openPostgres(url), { keeps: 'database', folder: null, why: null });
let conflicts = 0;
let kept = store.trip('shared');
for (let change = 1; change <= Number(count) && kept !== null; ) {
  const { rig, trip, revision } = kept;
  const saved = store.changeTrip('shared', revision, { rig, trip, change: `${who} ${change}` });
  if (saved.outcome === 'not-kept') throw new Error('the trip is gone');
  kept = saved.outcome === 'saved' ? saved.trip : saved.kept;
  if (saved.outcome === 'saved') change += 1;
  else conflicts += 1;
}
store.close();
process.stdout.write(String(conflicts));
