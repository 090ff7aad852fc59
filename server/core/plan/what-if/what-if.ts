import type { Reckoned } from '../../analyse/analyse.ts';
import { standingLPerDay } from '../../gaps/course/standing.ts';
import type { Caution } from '../../phrases/cautions.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Basis } from '../drive/basis.ts';
import { type TurnBack, turnBacksOf } from '../drive/turn-back/turn-backs.ts';
import { isBound } from '../side/supply-edge.ts';
import { type CallFirst, callFirst } from './call-first.ts';
import { type ChangedRuns, runsWith } from './changed/changed-runs.ts';
import { hotter } from './changed/changes.ts';
import { type Matter, mattersOf } from './changed/matters.ts';
import { containerLostRows, pumpFailsRows, turnRoundRows, waitRows } from './mishap-rows.ts';
import { hotterRows, rowsByUse } from './rate-rows.ts';
import { stopFailures } from './stop-fails.ts';
import { isRawFrom, treatmentFailsRows } from './treatment-fails.ts';
import type { WhatIfRow } from './what-if-row.ts';
import { worstFailures } from './worst-failures.ts';

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
  readonly cautions: readonly Caution[];
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
    isRaw: isRawFrom(reckoned),
  };
  const every = stopFailures(basis);
  const failures = worstFailures(basis, every);
  const turning = turnRoundRows(facts);
  const heat = hotterRuns(reckoned, basis, ask.hotterByC ?? WHAT_IF_DEFAULTS.hotterByC);
  return {
    basis: basis.kind,
    rows: [
      ...failures.map(({ row }) => row),
      ...containerLostRows(facts),
      ...pumpFailsRows(facts),
      ...waitRows(facts),
      ...rowsByUse(reckoned, basis),
      ...(heat === null ? [] : hotterRows(heat.runs, heat.byC)),
      ...treatmentFailsRows(reckoned, basis),
      ...turning,
    ],
    matters: mattersOf(reckoned, basis, heat),
    turnBacks: turnBacksOf(basis),
    callFirst: callFirst(reckoned, failures),
    cautions: [
      ...leftOutCautions(every.length, failures.length),
      ...heatCautions(heat),
      ...standingCautions(basis),
      ...offRouteCautions(facts.turnRoundAtM, turning),
      ...boundStopCautions(basis),
      ...pastEndCautions(basis),
    ],
  };
}

/** The stops to check before leaving: of a plan all that it uses, without one the worst of those that count. */
export function checkList(reckoned: Reckoned, basis: Basis): CallFirst[] {
  return callFirst(reckoned, worstFailures(basis, stopFailures(basis)));
}

type HotterRuns = { readonly runs: ChangedRuns; readonly byC: number };

/** Null where no heat is told. */
function hotterRuns(reckoned: Reckoned, basis: Basis, byC: number): HotterRuns | null {
  const change = hotter(reckoned, byC);
  return change === null ? null : { runs: runsWith(reckoned, basis, change), byC };
}

const leftOutCautions = (failures: number, rows: number): Caution[] =>
  rows === failures ? [] : [{ code: 'what-if-rows-left-out', facts: { failures, rows } }];

const heatCautions = (heat: HotterRuns | null): Caution[] =>
  heat === null ? [{ code: 'heat-not-told', facts: {} }] : [];

const standingCautions = ({ sides }: Basis): Caution[] =>
  standingLPerDay(sides.fuel.side.course) === 0 ? [{ code: 'standing-fuel-not-told', facts: {} }] : [];

const offRouteCautions = (atM: number | null, rows: readonly WhatIfRow[]): Caution[] =>
  atM !== null && rows.length === 0 ? [{ code: 'turn-round-off-route', facts: { atM } }] : [];

const boundStopCautions = ({ sides }: Basis): Caution[] =>
  COMMODITIES.some((commodity) => sides[commodity].stretches.some(({ to }) => isBound(to)))
    ? [{ code: 'mishap-before-bound-stop', facts: {} }]
    : [];

const pastEndCautions = ({ sides }: Basis): Caution[] =>
  sides.fuel.side.course.onward === null ? [{ code: 'past-end-not-told', facts: {} }] : [];
