import type { Evidence } from '../../../contract/common.ts';
import { bearableL } from '../legs/bearable.ts';
import { alongL } from '../legs/leg-need.ts';
import { fullDeparture } from '../legs/stock.ts';
import { type CarrySide, cansAllowed, edgesAfter } from '../side/carry-side.ts';
import { isBound, type SupplyEdge, type SupplyTerms } from '../side/supply-edge.ts';
import { anyChain } from './any-chain.ts';

/** With more supplies of one commodity than this not all are looked at (ours): a model of all would not end in time. */
const MOST_SUPPLIES = 100;
/**
 * But where all give all that is wanted, and there are no more ways from one to another than this, all are searched; fewer
 * where any one stop may fail, since each way is held against each that may follow (ours).
 */
export const MOST_WAYS = { plain: 40_000, failing: 8000 } as const;
/** The first distance within which one supply stands for another, metres; doubled until few enough are left (ours). */
const FIRST_WITHIN_M = 500;

export interface FewSupplies {
  readonly edges: readonly SupplyEdge[];
  /** A supply that is left out has a better one so near along the route, metres; null where none is. */
  readonly withinM: number | null;
}

/**
 * Of supplies close together those that are best known and nearest to the route, in route order: each one left out has
 * one within `withinM` along the route that is known as well or better, no farther off, and keeps waiting no longer and
 * gives no less. What `always` names stays, and so does what the user said something of.
 */
export function thinOut(
  edges: readonly SupplyEdge[],
  always: ReadonlySet<SupplyEdge>,
  most = MOST_SUPPLIES,
): FewSupplies {
  const plain = edges.filter((edge) => mayGo(edge) && !always.has(edge));
  let kept: readonly SupplyEdge[] = plain;
  let withinM: number | null = null;
  const lengthM = edges.at(-1)?.atM ?? 0;
  const best = [...plain].sort(
    (a, b) =>
      rankOf(b) - rankOf(a) ||
      (a.waitDays ?? 0) - (b.waitDays ?? 0) ||
      Number(isBound(a)) - Number(isBound(b)) ||
      a.detourM - b.detourM ||
      a.atM - b.atM ||
      (idOf(a) < idOf(b) ? -1 : 1),
  );
  for (let reachM = FIRST_WITHIN_M; kept.length > most; reachM *= 2) {
    const better: SupplyEdge[] = [];
    for (const edge of best) if (!better.some((other) => standsFor(other, edge, reachM))) better.push(edge);
    kept = better;
    withinM = reachM;
    // Each is better than every other in something: there are only so many ways to be.
    if (reachM > lengthM) break;
  }
  const goes = new Set(plain);
  for (const edge of kept) goes.delete(edge);
  return { edges: edges.filter((edge) => !goes.has(edge)), withinM };
}

/** As thinOut, of a side; where that leaves no chain of legs to the end, the supplies of one that there is stay as well. */
export function fewerSupplies(
  side: CarrySide,
  always: ReadonlySet<SupplyEdge>,
  mostWays: number,
): FewSupplies {
  if (isSearchable(side, mostWays)) return { edges: side.edges, withinM: null };
  const few = thinOut(side.edges, always);
  if (few.withinM === null || anyChain({ ...side, edges: few.edges }) !== null) return few;
  const chain = anyChain(side);
  return chain === null ? few : thinOut(side.edges, new Set([...always, ...chain]));
}

function isSearchable(side: CarrySide, mostWays: number): boolean {
  if (side.edges.some(isBound)) return false;
  let ways = 0;
  for (const from of side.edges.keys()) {
    const mostL = bearableL(side, fullDeparture(side, from, cansAllowed(side, from)), null);
    for (const [to] of edgesAfter(side, from)) {
      if (alongL(side, { from, to }) > mostL + 1) break;
      ways += 1;
      if (ways > mostWays) return false;
    }
  }
  return true;
}

const mayGo = ({ kind, ofUser }: SupplyEdge): boolean => kind === 'passing' && ofUser !== true;

function standsFor(better: SupplyEdge, edge: SupplyEdge, withinM: number): boolean {
  const [good, poor] = [better.terms ?? ALL, edge.terms ?? ALL];
  return (
    Math.abs(better.atM - edge.atM) <= withinM &&
    rankOf(better) >= rankOf(edge) &&
    better.detourM <= edge.detourM &&
    (better.waitDays ?? 0) <= (edge.waitDays ?? 0) &&
    (good.mostL ?? Number.POSITIVE_INFINITY) >= (poor.mostL ?? Number.POSITIVE_INFINITY) &&
    (good.fillsCans || !poor.fillsCans) &&
    good.daysPerLitre <= poor.daysPerLitre
  );
}

const ALL: SupplyTerms = { mostL: null, fillsCans: true, daysPerLitre: 0 };

const RANKS: readonly Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const rankOf = ({ evidence }: SupplyEdge): number => (evidence === null ? -1 : RANKS.indexOf(evidence));
const idOf = ({ id }: SupplyEdge): string => id ?? '';
