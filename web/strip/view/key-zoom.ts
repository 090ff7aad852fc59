import type { Span } from '../../../server/contract/common.ts';
import { STEP_TIMES, wholeRoute, zoomed } from './strip-window.ts';

/** How many times nearer a key brings the strip. */
const TIMES: Record<string, number> = { '+': STEP_TIMES, '=': STEP_TIMES, '-': 1 / STEP_TIMES };

/** What is shown after a key; null for one that brings nothing nearer or farther. About the middle where no place is pointed at. */
export function keyZoom(key: string, shown: Span, lengthKm: number, atKm: number | null): Span | null {
  if (key === '0') return wholeRoute(lengthKm);
  const times = TIMES[key];
  const aboutKm = atKm ?? (shown.fromKm + shown.toKm) / 2;
  return times === undefined ? null : zoomed(shown, lengthKm, { times, aboutKm });
}
