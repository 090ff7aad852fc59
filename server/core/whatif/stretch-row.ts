import type { WhatIfRow } from '../../contract/whatif.ts';
import { edgeOf } from '../carry/show.ts';
import { SLACK } from '../gaps/need.ts';
import { VERDICT_RANK } from '../gaps/verdict.ts';
import { type Run, turnBackOf } from './run.ts';

/** The least of all margins; among alike the worse verdict, then the first. Null without runs. */
export function tightestOf(runs: readonly Run[]): Run | null {
  let tightest: Run | null = null;
  for (const run of runs) {
    if (tightest === null) tightest = run;
    const [a, b] = [VERDICT_RANK[run.figures.verdict], VERDICT_RANK[tightest.figures.verdict]];
    if (run.marginL < tightest.marginL - SLACK || (run.marginL <= tightest.marginL + SLACK && a < b))
      tightest = run;
  }
  return tightest;
}

/** The figures of a row that holds all along a stretch. */
export function stretchFigures(
  run: Run,
): Omit<WhatIfRow, 'kind' | 'commodity' | 'text' | 'id' | 'atKm' | 'lostL' | 'instead' | 'backMarginL'> {
  const { arriveL, marginL, figures, stretch } = run;
  const turnM = turnBackOf(run);
  const missing = arriveL < -SLACK;
  const coverL = marginL < -SLACK ? -marginL : 0;
  return {
    from: edgeOf(stretch.from),
    to: edgeOf(stretch.to),
    next: 'on',
    verdict: figures.verdict,
    arriveL,
    marginL,
    endsAtKm: missing ? (figures.runsDryM ?? stretch.to.atM) / 1000 : null,
    missingL: missing ? -arriveL : 0,
    coverL,
    coverCans: coverL === 0 ? 0 : Math.ceil(coverL / stretch.canL - SLACK),
    turnBackKm: turnM === null ? null : turnM / 1000,
  };
}
