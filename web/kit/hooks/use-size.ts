import { type RefObject, useEffect, useRef, useState } from 'react';

export interface Size {
  widthPx: number;
  heightPx: number;
}

/** The element's inner size, followed as it changes; `first` until it is known. */
export function useSize<T extends Element>(first: Size): [RefObject<T | null>, Size] {
  const element = useRef<T>(null);
  const [size, setSize] = useState(first);
  useEffect(() => {
    const observed = element.current;
    if (observed === null) return;
    const observer = new ResizeObserver((entries) => {
      const box = entries.at(-1)?.contentRect;
      if (box !== undefined && box.width > 0 && box.height > 0) {
        setSize({ widthPx: Math.round(box.width), heightPx: Math.round(box.height) });
      }
    });
    observer.observe(observed);
    return () => observer.disconnect();
  }, []);
  return [element, size];
}
