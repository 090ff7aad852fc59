import type { Analysis, Report } from '../../contract/analysis.ts';
import type { RoutePiece } from '../../contract/answers/map.ts';
import type { Commodity, Verdict } from '../../contract/common.ts';
import { type KeptCommodity, type KeptResults, PICTURE_PIECES } from '../../contract/kept.ts';
import { VERDICT_RANK } from '../../core/gaps/verdict.ts';
import type { MapTold } from '../to-contract.ts';

/** What an analysis comes to in short, as it is kept with its trip. `at` is an ISO time. */
export function keptResults(
  { route: { lengthKm }, fuel, water }: Analysis,
  { route }: MapTold,
  at: string,
): KeptResults {
  const pieces = route.features.map(({ properties }) => properties);
  const commodity = (name: Commodity, report: Report) => pictureOf(pieces, { name, report, lengthKm });
  return { at, lengthKm, fuel: commodity('fuel', fuel), water: commodity('water', water) };
}

interface Pictured {
  name: Commodity;
  report: Report;
  lengthKm: number;
}

function pictureOf(pieces: readonly RoutePiece[], { name, report, lengthKm }: Pictured): KeptCommodity {
  const own = pieces.filter(({ commodity }) => commodity === name);
  const shares: number[] = [];
  const verdicts: KeptCommodity['verdicts'] = [];
  for (let index = 0; index < PICTURE_PIECES; index += 1) {
    const km = ((index + 0.5) / PICTURE_PIECES) * lengthKm;
    const piece = own.find(({ fromKm, toKm }) => fromKm <= km && km <= toKm);
    const gap = report.gaps.find(({ from, to }) => from.atKm <= km && km <= to.atKm);
    shares.push(Math.round((piece?.share ?? 0) * 1000) / 1000);
    verdicts.push(gap?.verdict ?? 'unknown');
  }
  return { verdict: worstOf(report), shares, verdicts };
}

function worstOf({ gaps }: Report): Verdict {
  const worse = (a: Verdict, b: Verdict) => (VERDICT_RANK[b] < VERDICT_RANK[a] ? b : a);
  return gaps.map(({ verdict }) => verdict).reduce(worse, 'enough');
}
