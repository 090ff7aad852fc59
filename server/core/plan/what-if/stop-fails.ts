import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Basis } from '../drive/basis.ts';
import { pointsAt, type Run, runOf } from '../drive/run.ts';
import type { Stretch } from '../drive/stretch.ts';
import { overBack } from '../drive/turn-back.ts';
import { refill } from '../legs/stock.ts';
import { drawableOf } from '../side/carry-side.ts';
import { planEdge } from '../side/plan-edge.ts';
import { isBound, type SupplyEdge } from '../side/supply-edge.ts';
import { stockAfter } from './changed-runs.ts';
import { type FailedStretch, failedStretches } from './failed-stretches.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** A row of a stop that fails, and the stop. */
export interface StopFailure {
  readonly row: WhatIfRow;
  readonly stop: SupplyEdge;
}

/** Every stop that is used failing in turn, wherever it is passed; one row for each commodity that it gives. */
export function stopFailures(basis: Basis): StopFailure[] {
  const used = COMMODITIES.flatMap((commodity) => basis.sides[commodity].stretches.map(({ to }) => to))
    .filter(({ kind }) => kind === 'passing')
    .sort((a, b) => a.atM - b.atM);
  const ids = new Set(used.flatMap(({ id }) => (id === null ? [] : [id])));
  return [...ids].flatMap((id) =>
    COMMODITIES.flatMap((commodity) => {
      const failed = failedStretches(basis, commodity, (edge) => edge.id === id);
      const worst = worstOf(failed);
      return worst === null ? [] : [failureRow(basis, { commodity, id, ...worst })];
    }),
  );
}

export const stopFailsRows = (basis: Basis): WhatIfRow[] => stopFailures(basis).map(({ row }) => row);

/** A stretch over stops that fail, driven. */
export interface WorstStretch {
  readonly run: Run;
  readonly over: FailedStretch;
}

/** Of several stretches the one with the least margin; null without any. */
export function worstOf(failed: readonly FailedStretch[]): WorstStretch | null {
  const drives = failed.map((over) => ({ run: runOf(over.stretch), over }));
  const tightest = tightestOf(drives.map(({ run }) => run));
  return drives.find(({ run }) => run === tightest) ?? null;
}

interface FailureFacts extends WorstStretch {
  readonly commodity: Commodity;
  readonly id: string;
}

function failureRow(basis: Basis, { commodity, id, run, over }: FailureFacts): StopFailure {
  const stop = over.stops.at(-1) ?? over.stops[0];
  const row: WhatIfRow = {
    ...stretchFigures(run),
    kind: 'stop-fails',
    commodity,
    id,
    text: { phrase: 'stop-gives-none', facts: { commodity, name: stop.name ?? id } },
    atM: stop.atM,
    lostL: null,
    backMarginL: backFrom(run, stop),
    instead: run.marginL >= -SLACK ? null : insteadOf(basis, commodity, over),
  };
  return { row, stop };
}

/** Going back from the last stop that failed, having gone there: what is left above the reserve. */
function backFrom(run: Run, stop: SupplyEdge): number | null {
  const there = pointsAt(run, stop.atM);
  return overBack(run, there.at(-1) ?? there[0]);
}

/** Of the supplies that count and are passed by, the one that keeps the reserve best both to it and on from it. */
function insteadOf(basis: Basis, commodity: Commodity, over: FailedStretch): WhatIfRow['instead'] {
  const { stretch, stops } = over;
  const failing = new Set(stops.map(({ id }) => id));
  let best: { at: SupplyEdge; marginL: number } | null = null;
  for (const at of basis.sides[commodity].side.edges) {
    const isOnWay = at.kind === 'passing' && at.atM > stretch.from.atM && at.atM < stretch.to.atM;
    if (!isOnWay || failing.has(at.id)) continue;
    const marginL = marginBy(basis, stretch, at);
    if (marginL >= -SLACK && (best === null || marginL > best.marginL + SLACK)) best = { at, marginL };
  }
  return best === null ? null : { at: planEdge(best.at), marginL: best.marginL };
}

/** The lesser margin of going to a supply on the way of a stretch, and on from it. */
function marginBy(basis: Basis, stretch: Stretch, at: SupplyEdge): number {
  const { side, cans } = basis.sides[stretch.course.commodity];
  const before = stretch.detours.filter(({ atM }) => atM <= at.atM);
  const after = stretch.detours.filter(({ atM }) => atM > at.atM);
  // With cans that the plan does not have full the vehicle is heavier than planned.
  const heaviest = { ...stretch, course: side.course };
  const there = runOf({ ...heaviest, to: at, detours: before });
  const { tankL, cans: full } = isBound(at)
    ? refill(side, at, stockAfter(side, there), cans)
    : { tankL: drawableOf(stretch), cans };
  const on = runOf({ ...heaviest, tankL, cans: full, from: at, detours: after });
  return Math.min(there.marginL, on.marginL);
}
