import { WATER_HIGH } from '../../defaults/rig-defaults.ts';
import type { UseRange } from '../../quantity/use-range.ts';

export const NOTHING: UseRange = { low: 0, typical: 0, high: 0 };

/** A range made end by end. */
export const atEnds = (of: (end: keyof UseRange) => number): UseRange => ({
  low: of('low'),
  typical: of('typical'),
  high: of('high'),
});

export const plus = (a: UseRange, b: UseRange): UseRange => atEnds((end) => a[end] + b[end]);
export const times = (range: UseRange, factor: number): UseRange => atEnds((end) => range[end] * factor);
export const sumOf = (ranges: readonly UseRange[]): UseRange => ranges.reduce(plus, NOTHING);

/** One number is the typical value. */
export const rangeOf = (use: number | UseRange): UseRange =>
  typeof use === 'number' ? { low: use / WATER_HIGH, typical: use, high: use * WATER_HIGH } : use;
