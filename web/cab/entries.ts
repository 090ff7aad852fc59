import { useEffect, useState } from 'react';
import type { Commodity } from '../../server/contract/common.ts';
import type { CabReading } from '../../server/core/cab/aboard.ts';

/** What was read of one commodity, and where. */
export interface Reading extends CabReading {
  readonly atM: number;
  /** At a stop: whether that was after filling. */
  readonly left: boolean;
}

/** All that the crew enters. */
export interface Entries {
  /** Metres along the route, and how far off it a position was; null: entered by hand. */
  readonly atM: number;
  readonly offM: number | null;
  readonly left: boolean;
  readonly readings: Readonly<Record<Commodity, Reading | null>>;
  readonly failed: Readonly<Record<Commodity, readonly string[]>>;
  readonly red: boolean;
}

const AT_START: Entries = {
  atM: 0,
  offM: null,
  left: false,
  readings: { fuel: null, water: null },
  failed: { fuel: [], water: [] },
  red: false,
};

/** A gauge that was read farther away than this is to be read again (ours): till there less is used than a mark shows. */
const FRESH_M = 2_000;

/** Whether a reading no longer tells what is aboard. */
export const isStale = (reading: Reading, { atM, left }: Pick<Entries, 'atM' | 'left'>): boolean =>
  (left && !reading.left) || Math.abs(reading.atM - atM) > FRESH_M;

/** Where entries are kept; null where a file has no place of its own in the browser. */
function ownStorage(): Storage | null {
  try {
    const { localStorage } = window;
    localStorage.getItem('drystage');
    return localStorage;
  } catch {
    return null;
  }
}

function keptIn(storage: Storage | null, name: string): Entries {
  try {
    const kept: unknown = JSON.parse(storage?.getItem(name) ?? 'null');
    return isEntries(kept) ? kept : AT_START;
  } catch {
    return AT_START;
  }
}

/** Our own, of this file: only whether they are whole is looked at. */
const isEntries = (kept: unknown): kept is Entries =>
  typeof kept === 'object' &&
  kept !== null &&
  Object.keys(AT_START).every((name) => Object.hasOwn(kept, name));

export interface KeptEntries {
  readonly entries: Entries;
  readonly change: (change: Partial<Entries>) => void;
  /** False where they are gone when the file is closed. */
  readonly areKept: boolean;
}

/** What was entered, kept under a name where the telephone does that. */
export function useEntries(key: string): KeptEntries {
  const name = `drystage ${key}`;
  const [storage] = useState(ownStorage);
  const [entries, setEntries] = useState(() => keptIn(storage, name));
  const [areKept, setKept] = useState(storage !== null);
  useEffect(() => {
    try {
      storage?.setItem(name, JSON.stringify(entries));
    } catch {
      setKept(false);
    }
  }, [storage, name, entries]);
  return {
    entries,
    areKept,
    change: (change) => setEntries((before) => ({ ...before, ...change })),
  };
}
