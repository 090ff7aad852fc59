import { type RefObject, useEffect, useRef } from 'react';

/**
 * Keeps the keyboard in its place where a button takes itself away: after `soon` was called, the next drawing gives
 * the focus to the first of `wanted` (a CSS selector) inside the element.
 */
export function useRefocus<T extends HTMLElement>(
  wanted: string,
): { place: RefObject<T | null>; soon: () => void } {
  const place = useRef<T>(null);
  const due = useRef(false);
  useEffect(() => {
    if (!due.current) return;
    due.current = false;
    place.current?.querySelector<HTMLElement>(wanted)?.focus();
  });
  return {
    place,
    soon: () => {
      due.current = true;
    },
  };
}
