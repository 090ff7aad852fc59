import type { Commodity } from '../../../contract/common.ts';
import type { WhatIfKind } from '../../../contract/whatif.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Basis } from '../drive/basis.ts';
import type { Run } from '../drive/run.ts';
import { type ChangedRuns, runsAsPlanned, runsWith } from './changed/changed-runs.ts';
import { atUse } from './changed/changes.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import { ALL_THE_WAY, type WhatIfRow } from './what-if-row.ts';

function rateRow(kind: WhatIfKind, commodity: Commodity, text: Phrase, runs: readonly Run[]): WhatIfRow[] {
  const worst = tightestOf(runs);
  if (worst === null) return [];
  return [{ ...stretchFigures(worst), ...ALL_THE_WAY, kind, commodity, text, id: null, instead: null }];
}

/** Use at each end of its range all the way. */
export function rowsByUse(reckoned: Reckoned, basis: Basis): WhatIfRow[] {
  return (['low', 'typical', 'high'] as const).flatMap((end) => {
    const runs = end === 'high' ? runsAsPlanned(basis) : runsWith(reckoned, basis, atUse(reckoned, end));
    return COMMODITIES.flatMap((commodity) => {
      const rig = runs[commodity][0]?.stretch.course.rig;
      if (rig === undefined) return [];
      const facts = { commodity, end, rate: rateOf(rig, commodity) };
      return rateRow(`${end}-use`, commodity, { phrase: 'use-all-the-way', facts }, runs[commodity]);
    });
  });
}

/** Water where it is hotter, with the runs of that. */
export function hotterRows(runs: ChangedRuns, byC: number): WhatIfRow[] {
  const rig = runs.water[0]?.stretch.course.rig;
  const waterLPerDay = rig === undefined ? null : rateOf(rig, 'water');
  return rateRow('hotter', 'water', { phrase: 'hotter-than-told', facts: { byC, waterLPerDay } }, runs.water);
}

/** What a rig uses at the rate the verdict uses: litres per 100 km, of water litres a day. */
const rateOf = (rig: Rig, commodity: Commodity): number =>
  commodity === 'fuel' ? rig.fuel.litresPer100Km.high : rig.water.litresPerDay.high;
