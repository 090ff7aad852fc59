import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { DEMO_EXTRACT, DEMO_NOTICE, DEMO_ROUTE, readDemoPlan } from '../../io/demo-files.ts';
import { DEMO_ID, type NewTrip, type Store } from '../../store/library/store.ts';
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
  if (store.trip(DEMO_ID) === null) store.addTrip(await demoTrip());
}
