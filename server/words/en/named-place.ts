import type { NamedPlace } from '../../core/phrases/plan.ts';
import { kmOf, placeAt } from '../parts/figures.ts';
import { type Part, type Place, parts } from '../parts/part.ts';

/** "Far pump (km 212)". */
export function namedPlace({ kind, name, atM }: NamedPlace): Part[] {
  return parts`${name ?? (kind === 'passing' ? 'the supply' : `the ${kind}`)} (${placeAt(atM, 0)})`;
}

/** A place with its tenths always: "km 212.0". */
export const exactPlace = (metres: number): Place => ({ place: kmOf(metres), decimals: 1, fixed: true });
