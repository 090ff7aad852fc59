import type { KnownValue } from './vocabulary.ts';

/**
 * Whether a supply tagged `seasonal=*` gives on a day. `unknown`: no day given, or the words do not tell the months.
 */
export type SeasonState = 'always' | 'in' | 'out' | 'unknown';

/** Meteorological seasons of the northern half of the Earth, months 1 to 12 (WMO practice; from memory). */
const NORTHERN_MONTHS: Record<Exclude<KnownValue<'seasonal'>, 'yes' | 'no'>, readonly number[]> = {
  spring: [3, 4, 5],
  summer: [6, 7, 8],
  autumn: [9, 10, 11],
  winter: [12, 1, 2],
};

/**
 * @param words value of `seasonal`, several joined by ";"
 * @param on ISO date, null when there is none
 * @param lat degrees; south of the equator the seasons lie six months later
 * Wet and dry seasons differ from land to land, and `yes` names none: both are `unknown`.
 */
export function seasonState(words: string | undefined, on: string | null, lat: number): SeasonState {
  if (words === undefined || words === 'no') return 'always';
  if (on === null) return 'unknown';
  const month = Number(on.slice(5, 7));
  const northernMonth = lat < 0 ? ((month + 5) % 12) + 1 : month;
  let told = true;
  for (const word of words.split(';')) {
    const months = Object.entries(NORTHERN_MONTHS).find(([season]) => season === word.trim())?.[1];
    if (months === undefined) told = false;
    else if (months.includes(northernMonth)) return 'in';
  }
  return told ? 'out' : 'unknown';
}
