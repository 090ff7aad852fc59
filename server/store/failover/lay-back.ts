import { randomUUID } from 'node:crypto';
import type { KeptRig } from '../../contract/kept.ts';
import type { StoreDriver, StoredTrip } from '../port/port.ts';

/** What went on in memory on top of a disk. */
export interface Meanwhile {
  readonly memory: StoreDriver;
  /** Each trip that was touched, as the disk had it then; null: it had none. */
  readonly trips: ReadonlyMap<string, StoredTrip | null>;
  /** Rigs as the disk had them. */
  readonly rigs: readonly KeptRig[];
}

/**
 * Writes to a disk what went on in memory, all or nothing. What another process changed there meanwhile stands, and ours
 * comes beside it under another name: nothing is overwritten and nothing lost.
 */
export function layBack(disk: StoreDriver, meanwhile: Meanwhile): void {
  disk.transaction(() => {
    for (const [id, before] of meanwhile.trips) layTrip(disk, meanwhile.memory, { id, before });
    for (const name of namesOf(meanwhile)) layRig(disk, meanwhile, name);
  });
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function layTrip(
  disk: StoreDriver,
  memory: StoreDriver,
  { id, before }: { id: string; before: StoredTrip | null },
): void {
  const isOurs = isSame(disk.trips.get(id), before);
  const trip = memory.trips.get(id);
  if (trip === null) {
    // Taken away: only what is as it was then.
    if (isOurs && before !== null) disk.trips.remove(id);
    return;
  }
  const there = isOurs ? trip : { ...trip, id: randomUUID(), name: `${trip.name} (2)` };
  disk.trips.put(there);
  const route = memory.trips.route(id);
  if (route !== null) disk.trips.putRoute(there.id, route);
  disk.trips.putMaps(there.id, memory.trips.maps(id));
  disk.trips.clearChanges(there.id);
  for (const change of memory.trips.changes(id).reverse()) disk.trips.addChange(there.id, change);
}

const namesOf = ({ memory, rigs }: Meanwhile): Set<string> =>
  new Set([...memory.rigs.all(), ...rigs].map(({ name }) => name));

function layRig(disk: StoreDriver, { memory, rigs }: Meanwhile, name: string): void {
  const rigIn = (all: readonly KeptRig[]) => all.find((rig) => rig.name === name);
  const [ours, before, there] = [rigIn(memory.rigs.all()), rigIn(rigs), rigIn(disk.rigs.all())];
  if (isSame(ours, before) || isSame(ours, there)) return;
  if (!isSame(there, before)) {
    if (ours !== undefined) disk.rigs.put({ ...ours, name: freeName(disk, name) });
    return;
  }
  if (ours === undefined) disk.rigs.remove(name);
  else disk.rigs.put(ours);
}

function freeName(disk: StoreDriver, name: string): string {
  const taken = new Set(disk.rigs.all().map((rig) => rig.name));
  let number = 2;
  while (taken.has(`${name} (${number})`)) number += 1;
  return `${name} (${number})`;
}
