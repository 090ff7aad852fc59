import type { Passing } from '../../../server/contract/analysis.ts';
import type { Facts } from './facts.ts';
import type { End } from './leg.ts';

/** Passings this near to the first of them are one stop, km. */
const STOP_KM = 3;

/** Supplies close together that fail together, with all their objects wherever these are passed. */
export interface FailingStop {
  readonly ids: ReadonlySet<string>;
  /** Where the route comes by them, in route order: at each the crew may find out. */
  readonly places: readonly (readonly Passing[])[];
}

/** Every stop that may fail, each set of objects once, in route order. */
export function failingStops({ passings }: Facts): FailingStop[] {
  const stops = new Map<string, FailingStop>();
  for (const group of groupsOf(passings)) {
    const ids = new Set(group.map(({ id }) => id));
    const name = [...ids].sort().join(' ');
    if (!stops.has(name))
      stops.set(name, { ids, places: groupsOf(passings.filter(({ id }) => ids.has(id))) });
  }
  return [...stops.values()];
}

function groupsOf(passings: readonly Passing[]): Passing[][] {
  const groups: Passing[][] = [];
  for (const passing of passings) {
    const open = groups.at(-1);
    if (open?.[0] !== undefined && passing.atKm - open[0].atKm <= STOP_KM) open.push(passing);
    else groups.push([passing]);
  }
  return groups;
}

export const failsWith = ({ ids }: FailingStop, { id }: Pick<End, 'id'>): boolean =>
  id !== null && ids.has(id);
