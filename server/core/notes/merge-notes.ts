import type { FieldNotes } from '../../contract/answers/field-notes.ts';
import type { TripFile } from '../../contract/trip.ts';

/** A trip with notes from elsewhere, and how many of them were new to it. */
export interface MergedNotes {
  readonly trip: TripFile;
  readonly added: number;
  readonly replaced: number;
}

/** Of these there is one for each id; of two the one that came in stands. */
const ONE_FOR_EACH_ID: readonly string[] = ['ownPoints', 'stops'] satisfies (keyof FieldNotes)[];

/** Adds notes to a trip; what it has already, to the letter, stays once. */
export function mergeNotes(trip: TripFile, notes: FieldNotes): MergedNotes {
  const { stops: newStops, ...lists } = notes;
  let merged: TripFile = trip;
  let [added, replaced] = [0, 0];
  for (const [key, entries] of Object.entries({
    ...lists,
    ...(newStops === undefined ? {} : { stops: newStops }),
  })) {
    const isOfPlan = key === 'stops';
    const before: readonly unknown[] =
      ((isOfPlan ? trip.plan?.stops : trip[key as keyof TripFile]) as never) ?? [];
    const joined = joinedLists(before, entries, ONE_FOR_EACH_ID.includes(key));
    added += joined.added;
    replaced += joined.replaced;
    merged = isOfPlan
      ? { ...merged, plan: { ...merged.plan, stops: joined.all as never } }
      : { ...merged, [key]: joined.all };
  }
  return { trip: merged, added, replaced };
}

function joinedLists(before: readonly unknown[], entries: readonly unknown[], oneForEachId: boolean) {
  const all = [...before];
  let [added, replaced] = [0, 0];
  for (const entry of entries) {
    if (all.some((one) => isSame(one, entry))) continue;
    const at = oneForEachId ? all.findIndex((one) => idOf(one) === idOf(entry)) : -1;
    if (at < 0) {
      all.push(entry);
      added += 1;
    } else {
      all[at] = entry;
      replaced += 1;
    }
  }
  return { all, added, replaced };
}

const idOf = (entry: unknown): unknown => (entry as { id?: unknown }).id;

/** Whether two plain values hold the same, in whatever order their keys stand. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [keysOfA, keysOfB] = [Object.keys(a), Object.keys(b)];
  return (
    keysOfA.length === keysOfB.length &&
    keysOfA.every((key) => isSame(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}
