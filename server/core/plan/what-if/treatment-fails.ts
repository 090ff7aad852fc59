import type { Reckoned } from '../../analyse/analyse.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { runOf } from '../drive/run.ts';
import type { Basis } from './basis.ts';
import { type Mishap, struckFigures, worstPlace } from './mishap.ts';
import { failedStretches } from './stop-fails.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** The treatment line failing before the first water that counts only thanks to it: none of those can be used. */
export function treatmentFailsRows({ analysis }: Reckoned, basis: Basis): WhatIfRow[] {
  const line = analysis.treatment;
  if (line === null) return [];
  const treatable = new Set(
    analysis.passings
      .filter(({ commodity, waterClass }) => commodity === 'water' && waterClass === 'treatable')
      .map(({ id, atM }) => keyOf({ id, atM })),
  );
  const failed = failedStretches(basis, 'water', (edge) => treatable.has(keyOf(edge)));
  const hit = failed.map(({ stretch }) => runOf(stretch));
  const worst = tightestOf(hit.length > 0 ? hit : basis.sides.water.stretches.map(runOf));
  if (worst === null) return [];
  const count = failed.reduce((sum, { stops }) => sum + stops.length, 0);
  return [
    ...(analysis.waterUse.treatAt === 'tap' ? underWayRows(basis, treatable) : []),
    {
      ...stretchFigures(worst),
      kind: 'treatment-fails',
      commodity: 'water',
      text: { phrase: 'treatment-line-fails', facts: { waters: count } },
      id: null,
      atM: count === 0 ? null : (failed[hit.indexOf(worst)]?.stops[0]?.atM ?? 0),
      lostL: null,
      backMarginL: null,
      instead: null,
    },
  ];
}

/** Water treated only at the tap: what was filled untreated is not fit when the line fails under way, at the worst place. */
function underWayRows(basis: Basis, treatable: ReadonlySet<string>): WhatIfRow[] {
  const runs = basis.sides.water.stretches.filter(({ from }) => treatable.has(keyOf(from))).map(runOf);
  const mishap: Mishap = { lostL: ({ litres }) => Math.max(0, litres) };
  const struck = worstPlace(runs, mishap);
  if (struck === null) return [];
  const { from } = struck.run.stretch;
  return [
    {
      ...struckFigures(struck, mishap),
      kind: 'treatment-fails',
      commodity: 'water',
      text: { phrase: 'treatment-line-fails-under-way', facts: { name: from.name ?? from.id } },
      id: null,
      instead: null,
    },
  ];
}

const keyOf = ({ id, atM }: Pick<EdgeM, 'id' | 'atM'>): string => `${id} ${atM}`;
