import { COMMODITIES } from '../../quantity/commodities.ts';
import { type CarrySides, countingOf } from '../side/carry-side.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import { groupedBySpan } from './supply-stops.ts';

/** Sides are never changed: the numbers known already. */
const known = new WeakMap<CarrySides, ReadonlyMap<SupplyEdge, number>>();

/**
 * The supply stop of each passing, by number: what lies so close together is one halt, and fuel and water of it one detour,
 * the longer of the two.
 */
export function stopNumbers(sides: CarrySides): ReadonlyMap<SupplyEdge, number> {
  const numbers = known.get(sides) ?? new Map(numbered(sides));
  known.set(sides, numbers);
  return numbers;
}

function* numbered(sides: CarrySides): Generator<[SupplyEdge, number]> {
  const all = COMMODITIES.flatMap((commodity) => [
    ...countingOf(sides[commodity]),
    ...sides[commodity].edges,
  ]);
  const passings = [...new Set(all)].filter(({ kind }) => kind === 'passing');
  for (const [number, stop] of groupedBySpan(passings).entries())
    for (const edge of stop) yield [edge, number];
}
