import type { Span } from '../../../server/contract/common.ts';

/** So much of the route is shown at least, km. */
const LEAST_KM = 2;

/** One press of a button or key brings the strip so many times nearer. */
export const STEP_TIMES = 2;

export const wholeRoute = (lengthKm: number): Span => ({ fromKm: 0, toKm: lengthKm });

export const lengthOf = ({ fromKm, toKm }: Span): number => toKm - fromKm;

/** Whether all of the route is shown, but for rounding. */
export const isWhole = (shown: Span, lengthKm: number): boolean => lengthOf(shown) >= lengthKm * (1 - 1e-6);

/** A stretch of the route, moved and cut so that it lies on it. */
function onRoute(fromKm: number, visibleKm: number, lengthKm: number): Span {
  const length = Math.min(lengthKm, Math.max(Math.min(LEAST_KM, lengthKm), visibleKm));
  const from = Math.min(Math.max(0, fromKm), lengthKm - length);
  return { fromKm: from, toKm: from + length };
}

/** What is to be shown of a route of that length; all of it where nothing is said. */
export const shownOf = (asked: Span | null, lengthKm: number): Span =>
  asked === null ? wholeRoute(lengthKm) : onRoute(asked.fromKm, lengthOf(asked), lengthKm);

/** So many times nearer (below 1: farther), the place `aboutKm` staying where it is on the strip. */
export function zoomed(
  shown: Span,
  lengthKm: number,
  { times, aboutKm }: { times: number; aboutKm: number },
): Span {
  const visibleKm = Math.min(lengthKm, Math.max(Math.min(LEAST_KM, lengthKm), lengthOf(shown) / times));
  const share = lengthOf(shown) > 0 ? (aboutKm - shown.fromKm) / lengthOf(shown) : 0.5;
  return onRoute(aboutKm - share * visibleKm, visibleKm, lengthKm);
}

/** Moved along the route, as far as it goes. */
export const moved = (shown: Span, lengthKm: number, byKm: number): Span =>
  onRoute(shown.fromKm + byKm, lengthOf(shown), lengthKm);

/** At the place, moved there by no more than is needed for it to stand a little inside. */
export function holding(shown: Span, lengthKm: number, atKm: number): Span {
  const marginKm = lengthOf(shown) / 12;
  if (atKm < shown.fromKm + marginKm) return onRoute(atKm - marginKm, lengthOf(shown), lengthKm);
  if (atKm > shown.toKm - marginKm)
    return onRoute(atKm + marginKm - lengthOf(shown), lengthOf(shown), lengthKm);
  return shown;
}
