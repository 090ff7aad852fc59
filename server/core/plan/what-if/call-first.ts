import type { Commodity, Evidence, Verdict } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { VERDICT_RANK } from '../../gaps/verdict.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import type { SaidBy } from '../../phrases/supply.ts';
import { isLaid, isNotedPoint } from '../../supply/points/laid.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { type Contact, contactOf } from '../sheet/contact.ts';
import { measureL } from '../side/carry-side.ts';
import type { PlanEdge } from '../side/plan-edge.ts';
import { isSamePlace } from '../side/supply-edge.ts';
import type { StopFailure } from './stop-fails.ts';

/** What the user confirmed of a stop that counts by it. */
export interface Confirmed extends SaidBy {
  readonly on: string;
  /** The first day on which it is to be confirmed again before leaving; null where that is not needed. */
  readonly againFrom: string | null;
}

/** A stop to check before leaving: the first are those without which most fails. */
export interface CallFirst extends Contact {
  readonly id: string;
  readonly name: string | null;
  readonly kind: SupplyKind;
  readonly atM: number;
  readonly lon: number;
  readonly lat: number;
  /** What it is and where, for one without a name. */
  readonly where: Phrase;
  readonly evidence: Evidence;
  /** ISO date of the last edit or check on the spot; null where none is known. */
  readonly seenOn: string | null;
  /** Null where nothing is confirmed, or no longer. */
  readonly confirmation: Confirmed | null;
  /** The user's own, on no map: laid, or noted at its place. */
  readonly isOwn: boolean;
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

function rankedCall(reckoned: Reckoned, passing: Passing, own: readonly StopFailure[]): RankedCall {
  const { sides } = reckoned;
  const rows = own.map(({ row }) => row);
  const { id, name, kind, atM, lon, lat, evidence, seenOn } = passing;
  return {
    call: {
      id,
      name,
      kind,
      atM,
      lon,
      lat,
      where: { phrase: 'supply-where', facts: { kind, atM, near: reckoned.nearestPlace(passing) } },
      evidence,
      seenOn,
      confirmation: confirmedOf(passing),
      isOwn: isLaid(passing) || isNotedPoint(passing),
      verdict: rows.map((row) => row.verdict).reduce((a, b) => (VERDICT_RANK[b] < VERDICT_RANK[a] ? b : a)),
      fails: rows.map(({ commodity, verdict, to, marginL, coverL }) => ({
        commodity,
        verdict,
        to,
        marginL,
        coverL,
      })),
      ...contactOf(reckoned, passing),
    },
    harm: Math.min(...rows.map(({ commodity, marginL }) => marginL / measureL(sides[commodity]))),
  };
}

/** What was confirmed of it, where that is what it counts by. */
function confirmedOf({ reasons }: Passing): Confirmed | null {
  const confirmed = reasons.find((reason) => reason.code === 'confirmed')?.facts.findings.at(-1);
  if (confirmed === undefined) return null;
  const again = reasons.find((reason) => reason.code === 'confirm-again')?.facts.findings.at(-1);
  return { ...confirmed, againFrom: again?.from ?? null };
}
