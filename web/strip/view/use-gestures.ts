import { type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import type { Span } from '../../../server/contract/common.ts';
import { isWhole, lengthOf, moved, zoomed } from './strip-window.ts';

interface Reach {
  shown: Span;
  lengthKm: number;
  /** The place at a height of the page, px. */
  kmAt(clientY: number): number;
  /** Of the strip's drawing. */
  heightPx: number;
  onShown(next: Span): void;
}

/** How much nearer a wheel turned by so many px brings the strip: a notch of 100 px by a third. */
const PX_PER_DOUBLING = 240;
/** A hand that moves by less than this has only pressed. */
const STILL_PX = 5;

/**
 * Wheel and pinch bring the strip nearer, a drag moves it once it is. Gives the handlers for its element, and whether
 * the press that has just ended was a drag, which chooses nothing.
 */
export function useGestures(element: RefObject<HTMLElement | null>, reach: Reach) {
  const now = useRef(reach);
  now.current = reach;
  const wasDragged = useRef(false);
  const pointers = useRef(new Map<number, number>());

  // React listens to the wheel passively, and the page would scroll along.
  useEffect(() => {
    const strip = element.current;
    if (strip === null) return;
    const onWheel = (event: WheelEvent) => {
      const { shown, lengthKm, kmAt, heightPx, onShown } = now.current;
      if (event.shiftKey || event.deltaY === 0) {
        if (isWhole(shown, lengthKm)) return;
        event.preventDefault();
        const px = event.deltaY === 0 ? event.deltaX : event.deltaY;
        return onShown(moved(shown, lengthKm, (-px * lengthOf(shown)) / heightPx));
      }
      // Who looks at all of it and turns away from it wants the page to scroll.
      if (event.deltaY > 0 && isWhole(shown, lengthKm)) return;
      event.preventDefault();
      const times = 2 ** (-event.deltaY / PX_PER_DOUBLING);
      onShown(zoomed(shown, lengthKm, { times, aboutKm: kmAt(event.clientY) }));
    };
    strip.addEventListener('wheel', onWheel, { passive: false });
    return () => strip.removeEventListener('wheel', onWheel);
  }, [element]);

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    pointers.current.set(event.pointerId, event.clientY);
    if (pointers.current.size === 1) wasDragged.current = false;
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>): boolean => {
    const from = pointers.current.get(event.pointerId);
    if (from === undefined) return false;
    const { shown, lengthKm, kmAt, heightPx, onShown } = now.current;
    const byPx = event.clientY - from;
    const [other] = [...pointers.current].filter(([id]) => id !== event.pointerId);
    if (other === undefined) {
      if (isWhole(shown, lengthKm) || (!wasDragged.current && Math.abs(byPx) < STILL_PX)) return false;
      onShown(moved(shown, lengthKm, (byPx * lengthOf(shown)) / heightPx));
    } else {
      const [, otherY] = other;
      const times = Math.abs(event.clientY - otherY) / Math.max(1, Math.abs(from - otherY));
      const aboutKm = kmAt((event.clientY + otherY) / 2);
      onShown(zoomed(shown, lengthKm, { times: Math.min(4, Math.max(0.25, times)), aboutKm }));
    }
    wasDragged.current = true;
    pointers.current.set(event.pointerId, event.clientY);
    return true;
  };
  const onPointerEnd = (event: PointerEvent<HTMLElement>) => {
    pointers.current.delete(event.pointerId);
  };
  return { onPointerDown, onPointerMove, onPointerEnd, wasDragged };
}
