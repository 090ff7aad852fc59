import type { Commodity } from '../../../../contract/common.ts';
import type { Reckoned } from '../../../analyse/analyse.ts';
import type { Phrase } from '../../../phrases/phrases.ts';
import { COMMODITIES } from '../../../quantity/commodities.ts';
import type { Basis } from '../../drive/basis.ts';
import { measureL } from '../../side/carry-side.ts';
import { type ChangedRuns, runsAsPlanned, runsWith } from './changed-runs.ts';
import { moreAllowance, moreUse, slower } from './changes.ts';

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

/** An assumption moved by one step. */
interface Step extends Pick<Matter, 'assumption' | 'step'> {
  readonly runs: ChangedRuns;
}

/** What matters most first; heat where it can be reckoned. */
export function mattersOf(
  reckoned: Reckoned,
  basis: Basis,
  heat: { runs: ChangedRuns; byC: number } | null,
): Matter[] {
  const { useFactor, paceFactor, allowancePoints: points } = STEPS;
  const steps: Step[] = [
    {
      assumption: 'use',
      step: { phrase: 'step-more-use', facts: { percent: percentOf(useFactor) } },
      runs: runsWith(reckoned, basis, moreUse(reckoned, useFactor)),
    },
    {
      assumption: 'pace',
      step: { phrase: 'step-slower', facts: { percent: percentOf(paceFactor) } },
      runs: runsWith(reckoned, basis, slower(reckoned, paceFactor)),
    },
    {
      assumption: 'allowance',
      step: { phrase: 'step-more-allowance', facts: { points } },
      runs: runsWith(reckoned, basis, moreAllowance(reckoned, points)),
    },
  ];
  if (heat !== null) {
    const step = { phrase: 'step-hotter', facts: { byC: heat.byC } } as const;
    steps.push({ assumption: 'heat', step, runs: heat.runs });
  }
  return steps.flatMap((step) => mattersBy(basis, step)).sort((a, b) => a.ofTanks - b.ofTanks);
}

const percentOf = (factor: number): number => Math.round(Math.abs(factor - 1) * 100);

function mattersBy(basis: Basis, { assumption, step, runs }: Step): Matter[] {
  const planned = runsAsPlanned(basis);
  return COMMODITIES.map((commodity) => {
    const beforeL = leastMarginL(planned, commodity);
    const afterL = leastMarginL(runs, commodity);
    const changeL = afterL - beforeL;
    const ofTanks = changeL / measureL(basis.sides[commodity].side);
    return { assumption, step, commodity, beforeL, afterL, changeL, ofTanks };
  });
}

const leastMarginL = (runs: ChangedRuns, commodity: Commodity): number =>
  Math.min(...runs[commodity].map(({ marginL }) => marginL));
