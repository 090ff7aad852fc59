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

/** How far a wheel is turned for the strip to come twice as near: a notch of 100 px brings it nearer by a third. */
const PX_PER_DOUBLING = 240;
/** A hand that moves by less than this has only pressed. */
const STILL_PX = 5;
/** Two fingers bring it nearer or farther by so much at a time at most. */
const PINCH_MOST = 4;

type Wheel = Pick<WheelEvent, 'deltaX' | 'deltaY' | 'shiftKey' | 'clientY'>;

/** What is shown after a turn of the wheel: nearer or farther, with Shift along the route; null where the page may scroll. */
export function wheeled(
  { deltaX, deltaY, shiftKey, clientY }: Wheel,
  { shown, lengthKm, kmAt, heightPx }: Reach,
): Span | null {
  const whole = isWhole(shown, lengthKm);
  if (shiftKey || deltaY === 0) {
    const px = deltaY === 0 ? deltaX : deltaY;
    return whole ? null : moved(shown, lengthKm, (-px * lengthOf(shown)) / heightPx);
  }
  // Who looks at all of it and turns away from it wants the page to scroll.
  if (deltaY > 0 && whole) return null;
  return zoomed(shown, lengthKm, { times: 2 ** (-deltaY / PX_PER_DOUBLING), aboutKm: kmAt(clientY) });
}

/** What is shown after a finger has gone from one height to another while another one was held at `heldY`. */
export function pinched(
  { fromY, toY, heldY }: { fromY: number; toY: number; heldY: number },
  { shown, lengthKm, kmAt }: Reach,
): Span {
  const times = Math.abs(toY - heldY) / Math.max(1, Math.abs(fromY - heldY));
  return zoomed(shown, lengthKm, {
    times: Math.min(PINCH_MOST, Math.max(1 / PINCH_MOST, times)),
    aboutKm: kmAt((toY + heldY) / 2),
  });
}

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
    const onWheel = (event: WheelEvent) => {
      const next = wheeled(event, now.current);
      if (next === null) return;
      event.preventDefault();
      now.current.onShown(next);
    };
    strip?.addEventListener('wheel', onWheel, { passive: false });
    return () => strip?.removeEventListener('wheel', onWheel);
  }, [element]);

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    pointers.current.set(event.pointerId, event.clientY);
    if (pointers.current.size === 1) wasDragged.current = false;
  };
  /** Tells whether the strip was moved by it. */
  const onPointerMove = ({ pointerId, clientY: toY }: PointerEvent<HTMLElement>): boolean => {
    const fromY = pointers.current.get(pointerId);
    if (fromY === undefined) return false;
    const { shown, lengthKm, heightPx, onShown } = now.current;
    const [heldY] = [...pointers.current].flatMap(([id, y]) => (id === pointerId ? [] : [y]));
    if (heldY !== undefined) onShown(pinched({ fromY, toY, heldY }, now.current));
    else if (isWhole(shown, lengthKm)) return false;
    else if (!wasDragged.current && Math.abs(toY - fromY) < STILL_PX) return false;
    else onShown(moved(shown, lengthKm, ((toY - fromY) * lengthOf(shown)) / heightPx));
    wasDragged.current = true;
    pointers.current.set(pointerId, toY);
    return true;
  };
  const onPointerEnd = ({ pointerId }: PointerEvent<HTMLElement>) => {
    pointers.current.delete(pointerId);
  };
  return { onPointerDown, onPointerMove, onPointerEnd, wasDragged };
}
