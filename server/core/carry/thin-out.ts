import type { Evidence } from '../../contract/common.ts';
import { anyChain } from './any-chain.ts';
import type { CarrySide, SupplyEdge } from './problem.ts';

/** With more supplies of one commodity than this not all are looked at (ours): a model of all would not end in time. */
export const MOST_SUPPLIES = 100;
/** The first distance within which one supply stands for another, metres; doubled until few enough are left (ours). */
const FIRST_WITHIN_M = 500;

export interface ThinnedOut {
  edges: SupplyEdge[];
  /** A supply that is left out has a better one so near along the route, metres; null where none is. */
  withinM: number | null;
}

/**
 * Of supplies close together those that are best known and nearest to the route, in route order: each one left out has
 * one within `withinM` along the route that is known as well or better and no farther off. What `always` names stays,
 * and so does what the user told something of.
 */
export function thinOut(
  edges: readonly SupplyEdge[],
  always: ReadonlySet<SupplyEdge>,
  most = MOST_SUPPLIES,
): ThinnedOut {
  const plain = edges.filter((edge) => isPlain(edge) && !always.has(edge));
  let kept = new Set(plain);
  let withinM: number | null = null;
  const best = [...plain].sort(
    (a, b) => rankOf(b) - rankOf(a) || a.detourM - b.detourM || a.atM - b.atM || (idOf(a) < idOf(b) ? -1 : 1),
  );
  for (let reachM = FIRST_WITHIN_M; kept.size > most; reachM *= 2) {
    kept = new Set();
    for (const edge of best) if (![...kept].some((other) => standsFor(other, edge, reachM))) kept.add(edge);
    withinM = reachM;
    // Each is better than every other in something: there are only so many ways to be.
    if (reachM > edges.at(-1)!.atM) break;
  }
  const dropped = new Set(plain.filter((edge) => !kept.has(edge)));
  return { edges: edges.filter((edge) => !dropped.has(edge)), withinM };
}

/** As thinOut, of a side; where that leaves no chain of legs to the end, the supplies of one that there is stay as well. */
export function fewerSupplies(side: CarrySide, always: ReadonlySet<SupplyEdge>): ThinnedOut {
  const few = thinOut(side.edges, always);
  if (few.withinM === null || anyChain({ ...side, edges: few.edges }) !== null) return few;
  const chain = anyChain(side);
  return chain === null ? few : thinOut(side.edges, new Set([...always, ...chain]));
}

const isPlain = ({ kind, terms, waitDays }: SupplyEdge): boolean =>
  kind === 'passing' && terms === undefined && waitDays === undefined;

const standsFor = (better: SupplyEdge, edge: SupplyEdge, withinM: number): boolean =>
  Math.abs(better.atM - edge.atM) <= withinM &&
  rankOf(better) >= rankOf(edge) &&
  better.detourM <= edge.detourM;

const RANKS: readonly Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const rankOf = ({ evidence }: SupplyEdge): number => (evidence === null ? -1 : RANKS.indexOf(evidence));
const idOf = ({ id }: SupplyEdge): string => id ?? '';
