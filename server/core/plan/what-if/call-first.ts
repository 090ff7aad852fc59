import type { Commodity, Evidence, Verdict } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { VERDICT_RANK } from '../../gaps/verdict.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { type Contact, contactOf } from '../sheet/contact.ts';
import { measureL } from '../side/carry-side.ts';
import type { PlanEdge } from '../side/plan-edge.ts';
import { isSamePlace } from '../side/supply-edge.ts';
import type { StopFailure } from './stop-fails.ts';

/** A stop to telephone before leaving: the first are those without which most fails. */
export interface CallFirst extends Contact {
  readonly id: string;
  readonly name: string | null;
  readonly kind: SupplyKind;
  readonly atM: number;
  readonly lon: number;
  readonly lat: number;
  readonly evidence: Evidence;
  /** The worst verdict when it fails. */
  readonly verdict: Verdict;
  readonly fails: readonly {
    readonly commodity: Commodity;
    readonly verdict: Verdict;
    readonly to: PlanEdge;
    readonly marginL: number;
    readonly coverL: number;
  }[];
}

const EVIDENCE_RANK: Record<Evidence, number> = { doubtful: 0, implied: 1, stated: 2, confirmed: 3 };

/** A call, and what would be missing without the stop as a share of the tanks: the less, the worse. */
interface RankedCall {
  readonly call: CallFirst;
  readonly harm: number;
}

/**
 * The stops that are used, those without which most fails first: by verdict, then by the litres that would be missing
 * as a share of the tanks, then the weaker known, then in route order.
 */
export function callFirst(reckoned: Reckoned, failures: readonly StopFailure[]): CallFirst[] {
  const ids = [...new Set(failures.flatMap(({ used }) => used.map(({ id }) => id)))];
  return ids
    .flatMap((id) => {
      const own = failures.filter(({ used }) => used.some((edge) => edge.id === id));
      const passing = passingOf(reckoned, id, own);
      return passing === undefined ? [] : [rankedCall(reckoned, passing, own)];
    })
    .sort(
      (a, b) =>
        VERDICT_RANK[a.call.verdict] - VERDICT_RANK[b.call.verdict] ||
        a.harm - b.harm ||
        EVIDENCE_RANK[a.call.evidence] - EVIDENCE_RANK[b.call.evidence] ||
        a.call.atM - b.call.atM,
    )
    .map(({ call }) => call);
}

/** The first passing of an object that fails. */
const passingOf = (
  { analysis }: Reckoned,
  id: string | null,
  failures: readonly StopFailure[],
): Passing | undefined =>
  analysis.passings.find(
    (passing) =>
      passing.id === id &&
      failures.some(
        ({ row, used }) =>
          row.commodity === passing.commodity && used.some((edge) => isSamePlace(edge, passing)),
      ),
  );

function rankedCall({ points, sides }: Reckoned, passing: Passing, own: readonly StopFailure[]): RankedCall {
  const rows = own.map(({ row }) => row);
  const { id, name, kind, atM, lon, lat, evidence } = passing;
  return {
    call: {
      id,
      name,
      kind,
      atM,
      lon,
      lat,
      evidence,
      verdict: rows.map((row) => row.verdict).reduce((a, b) => (VERDICT_RANK[b] < VERDICT_RANK[a] ? b : a)),
      fails: rows.map(({ commodity, verdict, to, marginL, coverL }) => ({
        commodity,
        verdict,
        to,
        marginL,
        coverL,
      })),
      ...contactOf(points, passing.id),
    },
    harm: Math.min(...rows.map(({ commodity, marginL }) => marginL / measureL(sides[commodity]))),
  };
}
