import type { Evidence } from '../../../contract/common.ts';
import type { CallFirst, WhatIfRow } from '../../../contract/whatif.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { VERDICT_RANK } from '../../gaps/verdict.ts';
import type { Tags } from '../../input/sources.ts';

const EVIDENCE_RANK: Record<Evidence, number> = { doubtful: 0, implied: 1, stated: 2, confirmed: 3 };

/** A route km survives the way through metres to this. */
const SAME_KM = 1e-6;

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
          ({ commodity, atKm }) =>
            commodity === each.commodity && Math.abs((atKm ?? 0) - each.atM / 1000) < SAME_KM,
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
      atKm: passing.atM / 1000,
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
        a.call.atKm - b.call.atKm,
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
