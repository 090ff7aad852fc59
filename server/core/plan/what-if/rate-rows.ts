import type { Commodity } from '../../../contract/common.ts';
import type { WhatIfKind } from '../../../contract/whatif.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import type { Phrase } from '../../phrases/phrases.ts';
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
import { ALL_THE_WAY, type WhatIfRow } from './what-if-row.ts';

/** What one assumption does to the least margin of a commodity when it is moved by one step. */
export interface Matter {
  readonly assumption: 'use' | 'pace' | 'allowance' | 'heat';
  readonly step: Phrase;
  readonly commodity: Commodity;
  readonly beforeL: number;
  readonly afterL: number;
  /** Never invented odds: only what the step does. */
  readonly changeL: number;
  /** The change as a share of what the fixed tanks give. */
  readonly ofTanks: number;
}

/** One step of each assumption (ours). */
const STEPS = { useFactor: 1.1, paceFactor: 0.9, allowancePoints: 5 } as const;

const asPlanned = ({ sides }: Basis): ChangedRuns => ({
  fuel: sides.fuel.stretches.map(runOf),
  water: sides.water.stretches.map(runOf),
});

function rateRow(kind: WhatIfKind, commodity: Commodity, text: Phrase, runs: readonly Run[]): WhatIfRow[] {
  const worst = tightestOf(runs);
  if (worst === null) return [];
  return [
    {
      ...stretchFigures(worst),
      ...ALL_THE_WAY,
      kind,
      commodity,
      text,
      id: null,
      instead: null,
    },
  ];
}

/** Rates other than those the verdict uses, all the way, and what one step of each assumption does. */
export function rateRows(
  reckoned: Reckoned,
  basis: Basis,
  hotterByC: number,
): { rows: WhatIfRow[]; matters: Matter[]; cautions: CodedCaution[] } {
  const planned = asPlanned(basis);
  const rows: WhatIfRow[] = [];
  for (const end of ['low', 'typical', 'high'] as const) {
    const runs = end === 'high' ? planned : runsWith(reckoned, basis, atUse(reckoned, end));
    for (const commodity of COMMODITIES) {
      const rate = runs[commodity][0]?.stretch.course.rig;
      if (rate === undefined) continue;
      const facts = { commodity, end, rate: rateOf(rate, commodity) };
      const text = { phrase: 'use-all-the-way', facts } as const;
      rows.push(...rateRow(`${end}-use`, commodity, text, runs[commodity]));
    }
  }

  const cautions: CodedCaution[] = [];
  const heat = hotter(reckoned, hotterByC);
  const heatRuns = heat === null ? null : runsWith(reckoned, basis, heat);
  if (heatRuns === null) {
    cautions.push({ code: 'heat-not-told', facts: {} });
  } else {
    const rate = heatRuns.water[0]?.stretch.course.rig;
    const waterLPerDay = rate === undefined ? null : rateOf(rate, 'water');
    const text = { phrase: 'hotter-than-told', facts: { byC: hotterByC, waterLPerDay } } as const;
    rows.push(...rateRow('hotter', 'water', text, heatRuns.water));
  }

  const before = leastMargins(planned);
  const matters: Matter[] = [];
  const weigh = (assumption: Matter['assumption'], step: Phrase, runs: ChangedRuns) => {
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
  weigh(
    'use',
    { phrase: 'step-more-use', facts: { percent: percent(STEPS.useFactor) } },
    changed(moreUse(reckoned, STEPS.useFactor)),
  );
  weigh(
    'pace',
    { phrase: 'step-slower', facts: { percent: percent(STEPS.paceFactor) } },
    changed(slower(reckoned, STEPS.paceFactor)),
  );
  weigh(
    'allowance',
    { phrase: 'step-more-allowance', facts: { points: STEPS.allowancePoints } },
    changed(moreAllowance(reckoned, STEPS.allowancePoints)),
  );
  if (heatRuns !== null) weigh('heat', { phrase: 'step-hotter', facts: { byC: hotterByC } }, heatRuns);
  return { rows, matters: matters.sort((a, b) => a.ofTanks - b.ofTanks), cautions };
}
