import type { Reckoned } from '../../analyse/analyse.ts';
import type { Basis } from '../drive/basis.ts';
import { runOf } from '../drive/run.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import { failedStretches } from './changed/failed-stretches.ts';
import { type Mishap, worstPlace } from './mishap.ts';
import { worstOf } from './stop-fails.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import { struckFigures } from './struck-figures.ts';
import { ALL_THE_WAY, type WhatIfRow } from './what-if-row.ts';

/** Whether a supply counts only thanks to the treatment line. */
type NeedsLine = (edge: SupplyEdge) => boolean;

function needsLineOf({ analysis }: Reckoned): NeedsLine {
  if (analysis.treatment === null) return () => false;
  const treatable = analysis.passings.filter(
    ({ commodity, waterClass }) => commodity === 'water' && waterClass === 'treatable',
  );
  return (edge) => treatable.some((passing) => isSamePlace(passing, edge));
}

/** Whether what is filled at a supply is raw in the containers: treated only at the tap. */
export const isRawFrom = (reckoned: Reckoned): NeedsLine =>
  reckoned.analysis.treatment?.at === 'tap' ? needsLineOf(reckoned) : () => false;

/** The treatment line failing before the first water that counts only thanks to it: none of those can be used. */
export function treatmentFailsRows(reckoned: Reckoned, basis: Basis): WhatIfRow[] {
  const { analysis } = reckoned;
  if (analysis.treatment === null) return [];
  const needsLine = needsLineOf(reckoned);
  const underWay = analysis.waterUse.treatAt === 'tap' ? underWayRows(basis, needsLine) : [];
  return [...underWay, ...fromTheStartRows(basis, needsLine)];
}

function fromTheStartRows(basis: Basis, needsLine: NeedsLine): WhatIfRow[] {
  const failed = failedStretches(basis, 'water', needsLine);
  const worst = worstOf(failed);
  const run = worst?.run ?? tightestOf(basis.sides.water.stretches.map(runOf));
  if (run === null) return [];
  const waters = failed.reduce((sum, { stops }) => sum + stops.length, 0);
  return [
    {
      ...stretchFigures(run),
      ...ALL_THE_WAY,
      kind: 'treatment-fails',
      commodity: 'water',
      text: { phrase: 'treatment-line-fails', facts: { waters } },
      id: null,
      atM: worst === null ? null : worst.over.stops[0].atM,
      instead: null,
    },
  ];
}

/** Water treated only at the tap: what was filled untreated is not fit when the line fails under way, at the worst place. */
function underWayRows(basis: Basis, needsLine: NeedsLine): WhatIfRow[] {
  const runs = basis.sides.water.stretches.filter(({ from }) => needsLine(from)).map(runOf);
  const mishap: Mishap = { lostL: ({ litres }) => Math.max(0, litres) };
  const struck = worstPlace(runs, mishap);
  if (struck === null) return [];
  const { name, id } = struck.run.stretch.from;
  return [
    {
      ...struckFigures(struck, mishap),
      kind: 'treatment-fails',
      commodity: 'water',
      text: { phrase: 'treatment-line-fails-under-way', facts: { name: name ?? id } },
      id: null,
      instead: null,
    },
  ];
}
