import { useCallback, useState } from 'react';

/** How a choice is kept as text: what cannot be read gives what holds without one. */
export interface KeptAs<T> {
  readonly key: string;
  readonly read: (text: string | null) => T;
  readonly write: (value: T) => string;
}

/** A choice of the reader's that outlives the visit, where the browser allows it. */
export function useKept<T>(as: KeptAs<T>): [T, (next: T) => void] {
  const [value, setValue] = useState<T>(() => as.read(keptText(as.key)));
  const choose = useCallback(
    (next: T) => {
      setValue(next);
      try {
        localStorage.setItem(as.key, as.write(next));
      } catch {
        // Storage is switched off: the choice holds for this visit.
      }
    },
    [as],
  );
  return [value, choose];
}

/** One of several words; the first holds where none was chosen. */
export const oneOf = <T extends string>(key: string, allowed: readonly [T, ...T[]]): KeptAs<T> => ({
  key,
  read: (text) => allowed.find((each) => each === text) ?? allowed[0],
  write: (value) => value,
});

function keptText(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
