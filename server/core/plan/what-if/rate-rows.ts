import type { Caution, Commodity } from '../../../contract/common.ts';
import type { Matter, WhatIfKind, WhatIfRow } from '../../../contract/whatif.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type Run, runOf } from '../drive/run.ts';
import type { Basis } from './basis.ts';
import {
  atUse,
  type Changed,
  type ChangedRuns,
  hotter,
  leastMargins,
  moreAllowance,
  moreUse,
  rateOf,
  runsWith,
  slower,
} from './changes.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';

/** One step of each assumption (ours). */
export const STEPS = { useFactor: 1.1, paceFactor: 0.9, allowancePoints: 5 } as const;

const asPlanned = ({ sides }: Basis): ChangedRuns => ({
  fuel: sides.fuel.stretches.map(runOf),
  water: sides.water.stretches.map(runOf),
});

function rateRow(kind: WhatIfKind, commodity: Commodity, text: string, runs: readonly Run[]): WhatIfRow[] {
  const worst = tightestOf(runs);
  if (worst === null) return [];
  return [
    {
      ...stretchFigures(worst),
      kind,
      commodity,
      text,
      id: null,
      atKm: null,
      lostL: null,
      backMarginL: null,
      instead: null,
    },
  ];
}

/** Rates other than those the verdict uses, all the way, and what one step of each assumption does. */
export function rateRows(
  reckoned: Reckoned,
  basis: Basis,
  hotterByC: number,
): { rows: WhatIfRow[]; matters: Matter[]; cautions: Caution[] } {
  const planned = asPlanned(basis);
  const rows: WhatIfRow[] = [];
  for (const end of ['low', 'typical', 'high'] as const) {
    const runs = end === 'high' ? planned : runsWith(reckoned, basis, atUse(reckoned, end));
    for (const commodity of COMMODITIES) {
      const rate = runs[commodity][0]?.stretch.course.rig;
      if (rate === undefined) continue;
      const text = `${END_WORDS[end]} use of ${commodity} all the way (${rateOf(rate, commodity)}).`;
      rows.push(...rateRow(`${end}-use`, commodity, text, runs[commodity]));
    }
  }

  const cautions: Caution[] = [];
  const heat = hotter(reckoned, hotterByC);
  const heatRuns = heat === null ? null : runsWith(reckoned, basis, heat);
  if (heatRuns === null) {
    const text =
      'How hot it will be was not told with the crew: what more heat does is not reckoned. Tell it: heat can multiply the need for water.';
    cautions.push({ code: 'heat-not-told', text });
  } else {
    const rate = heatRuns.water[0]?.stretch.course.rig;
    const text = `${hotterByC} °C hotter than told${rate === undefined ? '' : ` (${rateOf(rate, 'water')})`}.`;
    rows.push(...rateRow('hotter', 'water', text, heatRuns.water));
  }

  const before = leastMargins(planned);
  const matters: Matter[] = [];
  const weigh = (assumption: Matter['assumption'], step: string, runs: ChangedRuns) => {
    const after = leastMargins(runs);
    for (const commodity of COMMODITIES) {
      const { drawableL } = basis.sides[commodity].side.course.rig[commodity];
      const changeL = after[commodity] - before[commodity];
      matters.push({
        assumption,
        step,
        commodity,
        beforeL: before[commodity],
        afterL: after[commodity],
        changeL,
        ofTanks: changeL / drawableL,
      });
    }
  };
  const changed = (change: Changed) => runsWith(reckoned, basis, change);
  const percent = (factor: number) => Math.round(Math.abs(factor - 1) * 100);
  weigh('use', `${percent(STEPS.useFactor)} % more use`, changed(moreUse(reckoned, STEPS.useFactor)));
  weigh('pace', `${percent(STEPS.paceFactor)} % slower`, changed(slower(reckoned, STEPS.paceFactor)));
  weigh(
    'allowance',
    `${STEPS.allowancePoints} percent points more allowance for bends`,
    changed(moreAllowance(reckoned, STEPS.allowancePoints)),
  );
  if (heatRuns !== null) weigh('heat', `${hotterByC} °C hotter`, heatRuns);
  return { rows, matters: matters.sort((a, b) => a.ofTanks - b.ofTanks), cautions };
}

const END_WORDS = { low: 'Low', typical: 'Typical', high: 'High' } as const;
