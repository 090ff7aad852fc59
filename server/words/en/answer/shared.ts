import { placeAt } from '../../parts/figures.ts';
import { type Part, parts } from '../../parts/part.ts';
import type { SaidPlace } from '../../parts/said-place.ts';

/** "Ketta (km 212)" */
export const placed = ({ name, atM }: SaidPlace): Part[] => parts`${name} (${placeAt(atM)})`;

/** As the first word of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A sentence inside another: no full stop, no capital but of an abbreviation. */
export function lowered(text: string): string {
  const bare = text.endsWith('.') ? text.slice(0, -1) : text;
  const [first = '', second = ''] = bare;
  const isWord = second === ' ' || (second >= 'a' && second <= 'z');
  return isWord && first >= 'A' && first <= 'Z' ? first.toLowerCase() + bare.slice(1) : bare;
}
