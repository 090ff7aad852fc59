import { useCallback, useState } from 'react';

/** A choice of the reader's that outlives the visit, where the browser allows it. */
export function useSetting<T extends string>(
  key: string,
  allowed: readonly T[],
  fallback: T,
): [T, (next: T) => void] {
  const [value, setValue] = useState<T>(() => {
    const stored = read(key);
    return allowed.find((each) => each === stored) ?? fallback;
  });
  const choose = useCallback(
    (next: T) => {
      setValue(next);
      try {
        localStorage.setItem(key, next);
      } catch {
        // Storage is switched off: the choice holds for this visit.
      }
    },
    [key],
  );
  return [value, choose];
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
