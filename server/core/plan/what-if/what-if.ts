import type { Reckoned } from '../../analyse/analyse.ts';
import { standingLPerDay } from '../../gaps/standing.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { isBound } from '../question/problem.ts';
import type { Basis } from './basis.ts';
import { type CallFirst, callFirst } from './call-first.ts';
import { containerLostRows, pumpFailsRows, turnRoundRows, waitRows } from './mishap-rows.ts';
import { type Matter, rateRows } from './rate-rows.ts';
import { stopFailsRows } from './stop-fails.ts';
import { treatmentFailsRows } from './treatment-fails.ts';
import { type TurnBack, turnBacksOf } from './turn-backs.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** What of the what-ifs can be chosen; each has a default of ours. */
export interface WhatIfAsk {
  readonly waitDays?: number | undefined;
  readonly hotterByC?: number | undefined;
  /** Turn round here, metres along; left out, at the worst place. */
  readonly turnRoundAtM?: number | undefined;
}

/** What happens when something goes wrong. */
export interface WhatIf {
  readonly basis: Basis['kind'];
  readonly rows: readonly WhatIfRow[];
  /** Which assumption matters most first. */
  readonly matters: readonly Matter[];
  /** In route order. */
  readonly turnBacks: readonly TurnBack[];
  readonly callFirst: readonly CallFirst[];
  readonly cautions: readonly CodedCaution[];
}

/** What is taken where nothing is asked for (ours). */
export const WHAT_IF_DEFAULTS = { waitDays: 2, hotterByC: 5 } as const;

/**
 * What happens when something goes wrong, one thing at a time, where it does most harm: stops that fail, containers and
 * pumps, waiting, other rates, the treatment line, turning round. Nobody's odds are invented: only what follows is told.
 */
export function whatIf(reckoned: Reckoned, basis: Basis, ask: WhatIfAsk = {}): WhatIf {
  const facts = {
    basis,
    rig: reckoned.analysis.rig,
    waitDays: ask.waitDays ?? WHAT_IF_DEFAULTS.waitDays,
    turnRoundAtM: ask.turnRoundAtM ?? null,
  };
  const stops = stopFailsRows(basis);
  const turning = turnRoundRows(facts);
  const rates = rateRows(reckoned, basis, ask.hotterByC ?? WHAT_IF_DEFAULTS.hotterByC);
  return {
    basis: basis.kind,
    rows: [
      ...stops,
      ...containerLostRows(facts),
      ...pumpFailsRows(facts),
      ...waitRows(facts),
      ...rates.rows,
      ...treatmentFailsRows(reckoned, basis),
      ...turning,
    ],
    matters: rates.matters,
    turnBacks: turnBacksOf(basis),
    callFirst: callFirst(reckoned, stops),
    cautions: [
      ...rates.cautions,
      ...standingCautions(basis),
      ...offRouteCautions(facts.turnRoundAtM, turning),
      ...boundStopCautions(basis),
      ...pastEndCautions(basis),
    ],
  };
}

const standingCautions = ({ sides }: Basis): CodedCaution[] =>
  standingLPerDay(sides.fuel.side.course) === 0 ? [{ code: 'standing-fuel-not-told', facts: {} }] : [];

const offRouteCautions = (atM: number | null, rows: readonly WhatIfRow[]): CodedCaution[] =>
  atM !== null && rows.length === 0 ? [{ code: 'turn-round-off-route', facts: { atM } }] : [];

const boundStopCautions = ({ sides }: Basis): CodedCaution[] =>
  COMMODITIES.some((commodity) => sides[commodity].stretches.some(({ to }) => isBound(to)))
    ? [{ code: 'mishap-before-bound-stop', facts: {} }]
    : [];

const pastEndCautions = ({ sides }: Basis): CodedCaution[] =>
  sides.fuel.side.course.onward === null ? [{ code: 'past-end-not-told', facts: {} }] : [];
