import type { Commodity, Evidence, Verdict } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { VERDICT_RANK } from '../../gaps/verdict.ts';
import type { Tags } from '../../input/sources.ts';
import type { PlanEdge } from '../question/plan-edge.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** A stop to telephone before leaving: the first are those without which most fails. */
export interface CallFirst {
  readonly id: string;
  readonly name: string | null;
  readonly kind: string;
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
  /** As its tags say; null where they do not. */
  readonly phone: string | null;
  readonly website: string | null;
  readonly openingHours: string | null;
}

const EVIDENCE_RANK: Record<Evidence, number> = { doubtful: 0, implied: 1, stated: 2, confirmed: 3 };

/** Two places that are nearer than this, metres, are one. */
const SAME_M = 1e-3;

/** Keys under which mappers put it, the first that is there holds. */
const PHONE = ['phone', 'contact:phone', 'mobile', 'contact:mobile'];
const WEBSITE = ['website', 'contact:website', 'url'];

/**
 * The stops that are used, those without which most fails first: by verdict, then by the litres that would be missing
 * as a share of the tanks, then the weaker known, then in route order.
 */
export function callFirst({ analysis, points, sides }: Reckoned, rows: readonly WhatIfRow[]): CallFirst[] {
  const ofStops = rows.filter(({ kind, id }) => kind === 'stop-fails' && id !== null);
  const ids = [...new Set(ofStops.map(({ id }) => id!))];
  const ranked = ids.flatMap((id) => {
    const own = ofStops.filter((row) => row.id === id);
    const passing = analysis.passings.find(
      (each) =>
        each.id === id &&
        own.some(
          ({ commodity, atM }) => commodity === each.commodity && Math.abs((atM ?? 0) - each.atM) < SAME_M,
        ),
    );
    if (passing === undefined) return [];
    const tags: Tags = Object.assign(
      {},
      ...points.filter((point) => point.id === id).map((point) => point.tags),
    );
    const verdict = own.map((row) => row.verdict).sort((a, b) => VERDICT_RANK[a] - VERDICT_RANK[b])[0]!;
    const harm = Math.min(
      ...own.map(({ commodity, marginL }) => marginL / sides[commodity].course.rig[commodity].drawableL),
    );
    const call: CallFirst = {
      id,
      name: passing.name,
      kind: passing.kind,
      atM: passing.atM,
      lon: passing.lon,
      lat: passing.lat,
      evidence: passing.evidence,
      verdict,
      fails: own.map(({ commodity, verdict: each, to, marginL, coverL }) => ({
        commodity,
        verdict: each,
        to,
        marginL,
        coverL,
      })),
      phone: firstOf(tags, PHONE),
      website: firstOf(tags, WEBSITE),
      openingHours: firstOf(tags, ['opening_hours']),
    };
    return [{ call, harm }];
  });
  return ranked
    .sort(
      (a, b) =>
        VERDICT_RANK[a.call.verdict] - VERDICT_RANK[b.call.verdict] ||
        a.harm - b.harm ||
        EVIDENCE_RANK[a.call.evidence] - EVIDENCE_RANK[b.call.evidence] ||
        a.call.atM - b.call.atM,
    )
    .map(({ call }) => call);
}

function firstOf(tags: Tags, keys: readonly string[]): string | null {
  for (const key of keys) {
    const value = tags[key]?.trim();
    if (value !== undefined && value !== '') return value;
  }
  return null;
}
