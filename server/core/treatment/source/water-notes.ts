import type { WaterNote } from '../../../contract/treatment.ts';
import type { UnusedNote } from '../../phrases/rig/treatment-waters.ts';

/** Days for which a note that the water is not salt holds (ours): a dry year can change a well. */
const SALT_NOTE_DAYS = 365;

const DAY_MS = 86_400_000;

/** What the user's notes say of the water of one point on a day. */
export interface Noted {
  salt: 'ok' | 'bad' | 'none';
  /** The date of the note that says so. */
  on: string | null;
  /** The newest note that is not ahead of the day, for depth, flow and cloudiness. */
  latest: WaterNote | null;
  /** Why a note on salt is not used. */
  unused: UnusedNote[];
}

/**
 * Reads the notes on one point for a day (ISO date). The newest stands; of two on one day the bad news. That the
 * water is salt has no term; that it is not holds for a year, and not when dated after the day.
 */
export function noted(notes: readonly WaterNote[], on: string): Noted {
  const usable = notes.filter((note) => !(note.saltOk && note.on > on));
  const unused = notes
    .filter((note) => note.saltOk && note.on > on)
    .map((note): UnusedNote => ({ phrase: 'note-ahead', facts: { on: note.on } }));
  const newestOf = (saltOk: boolean) =>
    usable
      .filter((note) => note.saltOk === saltOk)
      .map((note) => note.on)
      .sort()
      .at(-1);
  const good = newestOf(true);
  const bad = newestOf(false);
  const latest = [...usable].sort((a, b) => a.on.localeCompare(b.on)).at(-1) ?? null;
  if (bad !== undefined && (good === undefined || bad >= good))
    return { salt: 'bad', on: bad, latest, unused };
  if (good === undefined) return { salt: 'none', on: null, latest, unused };
  if ((Date.parse(on) - Date.parse(good)) / DAY_MS > SALT_NOTE_DAYS) {
    unused.push({ phrase: 'note-too-old', facts: { on: good, days: SALT_NOTE_DAYS } });
    return { salt: 'none', on: null, latest, unused };
  }
  return { salt: 'ok', on: good, latest, unused };
}

export const NOTHING_NOTED: Noted = { salt: 'none', on: null, latest: null, unused: [] };
