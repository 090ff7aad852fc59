import type { Gap, Report } from '../../server/contract/analysis.ts';

/** A gap from its route km and verdict; the rest as of a gap that is enough. */
export function gapOf(fromKm: number, toKm: number, changes: Partial<Gap> = {}): Gap {
  return {
    from: { kind: 'passing', id: 'node/1', name: `at ${fromKm}`, atKm: fromKm, detourKm: 0 },
    to: { kind: 'passing', id: 'node/2', name: `at ${toKm}`, atKm: toKm, detourKm: 0 },
    lengthKm: toKm - fromKm,
    wayKm: toKm - fromKm,
    days: (toKm - fromKm) / 245,
    departL: 100,
    needL: 10,
    reserveL: 20,
    arriveL: 90,
    marginL: 70,
    verdict: 'enough',
    acrossNoData: false,
    doubt: null,
    weakest: 'stated',
    extraL: 0,
    extraCans: 0,
    turnBackKm: toKm,
    skipHelps: false,
    ifToFails: null,
    reserveFromKm: null,
    runsDryKm: null,
    levels: [
      { atKm: fromKm, litres: 100 },
      { atKm: toKm, litres: 90 },
    ],
    rescue: [],
    working: { wayKm: [], needL: [], reserveL: [] },
    ...changes,
  };
}

export function reportOf(gaps: Gap[], changes: Partial<Report> = {}): Report {
  return {
    capacityL: 100,
    canL: 20,
    cansOwned: 2,
    takesCans: true,
    cover: [{ fromKm: 0, toKm: gaps.at(-1)?.to.atKm ?? 0 }],
    gaps,
    longest: 0,
    tightest: 0,
    ...changes,
  };
}
