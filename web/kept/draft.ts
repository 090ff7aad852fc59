import type { Said } from '../state/said.ts';

/** What was said and is not saved yet, with the revision that it goes out from. */
export interface Draft {
  readonly revision: number;
  readonly said: Said;
}

const keyOf = (id: string): string => `drystage-unsaved-${id}`;

/** Keeps what is not saved yet in the browser: a reload, a crash or a server that is down lose nothing. False where the browser does not keep it. */
export function keepDraft(id: string, draft: Draft): boolean {
  try {
    localStorage.setItem(keyOf(id), JSON.stringify(draft));
    return true;
  } catch {
    return false;
  }
}

export function dropDraft(id: string): void {
  try {
    localStorage.removeItem(keyOf(id));
  } catch {
    // Storage is switched off: nothing was kept there.
  }
}

/** What is kept unsaved of a trip; null where there is none, or it cannot be read. */
export function readDraft(id: string): Draft | null {
  try {
    const text = localStorage.getItem(keyOf(id));
    const draft: unknown = text === null ? null : JSON.parse(text);
    return isDraft(draft) ? draft : null;
  } catch {
    return null;
  }
}

function isDraft(value: unknown): value is Draft {
  if (typeof value !== 'object' || value === null) return false;
  const { revision, said } = value as Partial<Draft>;
  return typeof revision === 'number' && typeof said?.rig === 'object' && typeof said.trip === 'object';
}
