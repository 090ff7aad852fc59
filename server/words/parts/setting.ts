import type { Figure, Parts, Place, Unit } from './part.ts';

/** How figures and places are set for one kind of reader; words stand as they are. */
export interface Setting {
  readonly figure: (part: Figure) => string;
  readonly place: (part: Place) => string;
}

/** Parts as one line of text, figures and places as the reader's setting has them. */
export const setParts = (all: Parts, { figure, place }: Setting): string =>
  all
    .map((part) => {
      if ('figure' in part) return figure(part);
      return 'place' in part ? place(part) : part.text;
    })
    .join('');

/** A number with at most (`fixed`: exactly) so many decimals; all it has where nothing is said. */
export function digits({ decimals, fixed }: Pick<Figure, 'decimals' | 'fixed'>, value: number): string {
  if (decimals === undefined) return String(value);
  if (fixed === true) return value.toFixed(decimals);
  const scale = 10 ** decimals;
  return String(Math.round(value * scale) / scale);
}

/** Whether a figure stands without its unit: it follows later, or there is none. */
export const isBare = ({ bare, unit }: Figure): boolean => bare === true || unit === 'count';

/** Litres, by themselves or on a way: a gallon is too coarse without a decimal. */
const isOfLitres = (unit: Unit): boolean => unit === 'l' || unit.startsWith('l/');
/** More decimals than this are noise of binary fractions. */
const MOST_DECIMALS = 3;

/** Decimals of a figure in other units than it was told in: as exact as it was, and never nothing where there is something. A place has no `unit`. */
export function decimalsOf(told: string, value: number, unit?: Unit): number {
  const own = told.split('.')[1]?.length ?? 0;
  const size = Math.abs(value);
  const least = Math.max(unit !== undefined && isOfLitres(unit) ? 1 : 0, size < 1 ? 2 : size < 10 ? 1 : 0);
  return Math.min(MOST_DECIMALS, Math.max(own, least));
}
