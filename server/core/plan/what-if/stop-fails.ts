import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Basis } from '../drive/basis.ts';
import { type Run, runOf } from '../drive/run.ts';
import type { Stretch } from '../drive/stretch.ts';
import { type FailingStop, failingStops, failsWith } from '../failure/failing-stops.ts';
import { backMarginL } from '../failure/reach.ts';
import { countingOf } from '../side/carry-side.ts';
import { byCommodity, otherOf } from '../side/other-of.ts';
import { planEdge } from '../side/plan-edge.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import { type FailedStops, type FailedStretch, failedStretches } from './changed/failed-stretches.ts';
import { type Onward, onwardOver } from './changed/onward.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** A row of a stop that fails, and the supplies of it that were to be used for that commodity. */
export interface StopFailure {
  readonly row: WhatIfRow;
  readonly used: readonly SupplyEdge[];
}

/**
 * Every stop of which something is used failing in turn, with all its objects wherever they are passed; one row for each
 * commodity that is missed.
 */
export function stopFailures(basis: Basis): StopFailure[] {
  return failingStops(byCommodity((commodity) => countingOf(basis.sides[commodity].side))).flatMap((stop) =>
    COMMODITIES.flatMap((commodity) => {
      const failed = failedStretches(basis, commodity, (edge) => failsWith(stop, edge));
      const ways = failed.map((over) => ({ over, onward: onwardOver(basis, commodity, over, stop) }));
      const tightest = tightestOf(ways.map(({ onward }) => onward.run));
      const worst = ways.find(({ onward }) => onward.run === tightest);
      return worst === undefined ? [] : [failureOf({ basis, commodity, stop, failed, ...worst })];
    }),
  );
}

export const stopFailsRows = (basis: Basis): WhatIfRow[] => stopFailures(basis).map(({ row }) => row);

interface FailureFacts {
  readonly basis: Basis;
  readonly commodity: Commodity;
  readonly stop: FailingStop;
  readonly failed: readonly FailedStretch[];
  /** The worst of them, and what is best done there. */
  readonly over: FailedStretch;
  readonly onward: Onward;
}

function failureOf({ basis, commodity, stop, failed, over, onward }: FailureFacts): StopFailure {
  const used = failed.flatMap(({ stops }) => stops);
  const there = placeOf(stop, over.stops);
  const names = [...new Set(used.map(({ name, id }) => name ?? id ?? ''))];
  const others = [...stop.ids].filter((id) => !used.some((edge) => edge.id === id)).length;
  const row: WhatIfRow = {
    ...stretchFigures(onward.run),
    kind: 'stop-fails',
    commodity,
    id: there.id,
    text: { phrase: 'stop-gives-none', facts: { commodity, names, others } },
    atM: there.atM,
    lostL: null,
    backMarginL: backFrom(basis, over.stretch, there),
    instead: onward.by === null ? null : { at: planEdge(onward.by), marginL: onward.run.marginL },
  };
  return { row, used };
}

/** Where the crew knows that nothing is to be had: the last supply that was to be used at the first place of the stop. */
function placeOf({ places }: FailingStop, stops: FailedStops): SupplyEdge {
  const [first] = stops;
  const place = places.find((edges) => edges.some((edge) => isSamePlace(edge, first))) ?? [];
  return stops.findLast((edge) => place.some((other) => isSamePlace(edge, other))) ?? first;
}

/** Going back from the supply that failed, having gone there: what is left above the reserve. By the rule of the plan. */
function backFrom({ sides, halts }: Basis, stretch: Stretch, there: SupplyEdge): number | null {
  const { course, from } = stretch;
  const side = { ...sides[course.commodity].side, course };
  const failing = { side, foreign: halts[otherOf(course.commodity)], spendReserve: false };
  return backMarginL(failing, { from, stock: stretch, place: there });
}

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
