import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Cans } from '../question/can-limits.ts';
import { type Cost, compareRanks, NO_COST, withCansToGet } from './cost.ts';
import type { SearchFacts } from './search-facts.ts';
import { toGoOf } from './to-go.ts';

const NO_CANS: Cans = { fuel: 0, water: 0 };

/**
 * How many of the aims, from the first on, a plan reaches as well as the commodities do by themselves, masses and each
 * other left out: in these no plan is better. A commodity of which supplies were left out may be had for nothing.
 */
export function provenAims(
  { tables, failures }: SearchFacts,
  owned: Cans,
  { cost, cans }: { readonly cost: Cost; readonly cans: Cans },
): number {
  const leasts = COMMODITIES.map((commodity): readonly number[] => {
    const table = tables[commodity];
    const nothing = withCansToGet(NO_COST, NO_CANS, owned);
    if (table.side.counting !== undefined) return nothing;
    const counts = [...new Set([0, ...table.legs.map(({ hop }) => hop.cans)])];
    // With more of the cans that are owned it costs no more.
    const free = Math.max(...counts.filter((count) => count <= owned[commodity]));
    const ranks = counts.flatMap((count) => {
      if (count < free) return [];
      const { start } = toGoOf(table, count, failures?.[commodity] ?? null);
      return start === null ? [] : [withCansToGet(start, { ...NO_CANS, [commodity]: count }, owned)];
    });
    return ranks.length === 0 ? nothing : ranks.reduce((a, b) => (compareRanks(b, a) < 0 ? b : a));
  });
  const reached = withCansToGet(cost, cans, owned);
  const first = reached.findIndex(
    (value, part) => value > leasts.reduce((sum, least) => sum + (least[part] ?? 0), 0),
  );
  return first < 0 ? reached.length : first;
}
