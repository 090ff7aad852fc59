import { placeAt } from '../../parts/figures.ts';
import { type Part, parts } from '../../parts/part.ts';
import type { SaidPlace } from '../../parts/said-place.ts';

/** "Ketta (km 212)" */
export const placed = ({ name, atM }: SaidPlace): Part[] => parts`${name} (${placeAt(atM)})`;

/** A sentence at the end of another. */
export const withoutStop = (text: string): string => (text.endsWith('.') ? text.slice(0, -1) : text);
