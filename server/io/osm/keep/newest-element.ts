import { compareAge } from '../extract/newest.ts';
import type { RawElement } from '../extract/raw-element.ts';

const isBare = (element: RawElement): boolean =>
  element.type === 'node'
    ? element.lon === undefined
    : element.type === 'way'
      ? element.nodes === undefined && element.geometry === undefined
      : (element.members ?? []).length === 0;

/**
 * The newer of two versions of one object, the later one when they cannot be told apart. What cannot be told apart is
 * taken for the same version, so it borrows the geometry that it lacks from the other (`out center` after `out body`).
 */
export function newestOf(earlier: RawElement, later: RawElement): RawElement {
  const order = compareAge(later, earlier);
  if (order < 0) return earlier;
  if (order > 0 || !isBare(later)) return later;
  const { lat, lon, nodes, geometry, members, center, bounds } = earlier;
  const borrowed = { lat, lon, nodes, geometry, members, center, bounds };
  const known = Object.entries(borrowed).filter(([, value]) => value !== undefined);
  const own = Object.entries(later).filter(([key]) => key !== 'members' || !isBare(later));
  return Object.fromEntries([...known, ...own]) as unknown as RawElement;
}
