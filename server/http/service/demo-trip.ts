import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { DEMO_EXTRACT, DEMO_NOTICE, DEMO_ROUTE, readDemoPlan } from '../../io/demo-files.ts';
import { DEMO_ID, type NewTrip, type Store } from '../../store/library/store.ts';
import type { StoredTrip } from '../../store/port/port.ts';
import { valueOrThrow } from '../reply/value-or-throw.ts';

/** What tells one content of a file from another, hexadecimal. */
export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The demo as a trip in its first state. */
export async function demoTrip(): Promise<NewTrip> {
  const plan = valueOrThrow(await readDemoPlan());
  const bytes = new Uint8Array(await readFile(DEMO_ROUTE.path));
  return {
    ...plan,
    id: DEMO_ID,
    name: 'Orrimar, the demo',
    route: { fileName: DEMO_ROUTE.source, hash: hashOf(bytes), bytes },
    extracts: [{ id: null, name: DEMO_EXTRACT.source }],
    maps: null,
    notice: DEMO_NOTICE,
    beginning: 'The demo as it came',
  };
}

/** Every store begins with the demo. */
export async function keepDemo(store: Store): Promise<void> {
  if (store.trip(DEMO_ID) !== null) return;
  const first = await demoTrip();
  store.driver.transaction(() => {
    // Another server on the same database may have been quicker. One that cannot be read has changes, which go.
    if (store.trip(DEMO_ID) === null) store.resetTrip(DEMO_ID, first);
  });
}

/** Whether the demo that is kept differs from its first state. */
export async function isDemoChanged({
  name,
  rig,
  trip,
  notes,
  extracts,
  route,
}: StoredTrip): Promise<boolean> {
  const first = await demoTrip();
  const now = [name, rig, trip, notes, extracts, route.hash];
  const then = [first.name, first.rig, first.trip, first.notes ?? '', first.extracts, first.route.hash];
  return !isDeepStrictEqual(now, then);
}
