import type { WhatIfRow } from '../../contract/whatif.ts';
import type { Reckoned } from '../analyse.ts';
import type { Basis } from './basis.ts';
import { runOf } from './run.ts';
import { failedStretches } from './stop-fails.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';

/** The treatment line failing before the first water that counts only thanks to it: none of those can be used. */
export function treatmentFailsRows({ analysis }: Reckoned, basis: Basis): WhatIfRow[] {
  const line = analysis.treatment;
  if (line === null) return [];
  const treatable = new Set(
    analysis.passings
      .filter(({ commodity, waterClass }) => commodity === 'water' && waterClass === 'treatable')
      .map(({ id, atKm }) => `${id} ${atKm * 1000}`),
  );
  const failed = failedStretches(basis, 'water', ({ id, atM }) => treatable.has(`${id} ${atM}`));
  const hit = failed.map(({ stretch }) => runOf(stretch));
  const worst = tightestOf(hit.length > 0 ? hit : basis.sides.water.stretches.map(runOf));
  if (worst === null) return [];
  const count = failed.reduce((sum, { stops }) => sum + stops.length, 0);
  const atTap =
    analysis.waterUse.treatAt === 'tap' ? ' What is in the tanks from such a water is not fit either.' : '';
  const text =
    count === 0
      ? 'The treatment line fails: no water that is used counts only thanks to it, so nothing changes.'
      : `The treatment line fails: ${count === 1 ? 'one water that is' : `${count} waters that are`} used no longer ${count === 1 ? 'counts' : 'count'}.${atTap}`;
  return [
    {
      ...stretchFigures(worst),
      kind: 'treatment-fails',
      commodity: 'water',
      text,
      id: null,
      atKm: count === 0 ? null : (failed[hit.indexOf(worst)]?.stops[0]?.atM ?? 0) / 1000,
      lostL: null,
      backMarginL: null,
      instead: null,
    },
  ];
}
