import { locale } from '../language/language.ts';
export type Direction = 'ascending' | 'descending';
export type SortValue = string | number | null;

const collator = new Intl.Collator(locale, { numeric: true, sensitivity: 'base' });

function compare(a: string | number, b: string | number): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  return collator.compare(String(a), String(b));
}

/** A sorted copy; equal rows keep their order, and rows without a value come last either way. */
export function sortedBy<Row>(
  rows: readonly Row[],
  value: (row: Row) => SortValue,
  direction: Direction,
): Row[] {
  const sign = direction === 'ascending' ? 1 : -1;
  return [...rows].sort((a, b) => {
    const left = value(a);
    const right = value(b);
    if (left === null || right === null) return Number(left === null) - Number(right === null);
    return sign * compare(left, right);
  });
}
