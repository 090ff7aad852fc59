import type { Misfit } from '../phrases/misfits.ts';
import type { UseRange } from './use-range.ts';

/** The misfit of a range whose three numbers are out of order; null for one in order, and for a single number. */
export function rangeInOrder(use: number | UseRange, path: string): Misfit | null {
  if (typeof use === 'number') return null;
  const { low, typical, high } = use;
  if (low <= typical && typical <= high) return null;
  return { path, misfit: 'range-order', facts: { low, typical, high } };
}
