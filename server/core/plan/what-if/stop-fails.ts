import type { Commodity } from '../../../contract/common.ts';
import type { EdgeM } from '../../gaps/course.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Detour } from '../drive/level-points.ts';
import { pointsAt, type Run, runOf } from '../drive/run.ts';
import type { Stretch } from '../drive/stretch.ts';
import { arriveWith, leaveBound } from '../question/bound-stop.ts';
import { planEdge } from '../question/plan-edge.ts';
import { haltsBetween, inVainM, isBound, otherOf, placeKey } from '../question/problem.ts';
import type { Basis } from './basis.ts';
import { stretchFigures, tightestOf } from './stretch-row.ts';
import type { WhatIfRow } from './what-if-row.ts';

/** A stretch over stops that fail: each is gone to in vain. */
export interface Failed {
  stretch: Stretch;
  /** In route order. */
  stops: EdgeM[];
}

/** The stretches that come of it when every stop for which `fails` holds gives nothing, the others left out. */
export function failedStretches(
  basis: Basis,
  commodity: Commodity,
  fails: (edge: EdgeM) => boolean,
): Failed[] {
  const { stretches } = basis.sides[commodity];
  const failed: Failed[] = [];
  for (let index = 0; index < stretches.length; index += 1) {
    const first = stretches[index]!;
    const stops: EdgeM[] = [];
    let last = first;
    while (last.to.kind === 'passing' && fails(last.to)) {
      stops.push(last.to);
      index += 1;
      last = stretches[index]!;
    }
    if (stops.length === 0) continue;
    const to = last.to;
    const halts = haltsBetween(basis.halts[otherOf(commodity)], first.from, to);
    const known = new Set(halts.map(({ key }) => key));
    const inVain = stops
      .filter((stop) => !known.has(placeKey(stop)))
      .map((stop): Detour => ({ atM: stop.atM, bothWaysM: inVainM(first.course, stop) }))
      .filter(({ bothWaysM }) => bothWaysM > 0);
    const made = halts.map(({ atM, costM }): Detour => ({ atM, bothWaysM: costM }));
    const detours = [...made, ...inVain].sort((a, b) => a.atM - b.atM);
    failed.push({ stretch: { ...first, to, detours }, stops });
  }
  return failed;
}

/** Going back from the last stop that failed, having gone there: what is left above the reserve. */
function backFrom(run: Run, stop: EdgeM): number | null {
  const there = pointsAt(run, stop.atM).at(-1)!;
  return there.backL === null ? null : there.litres - there.backL - run.keepL;
}

/** Every stop that is used failing in turn, wherever it is passed; one row for each commodity that it gives. */
export function stopFailsRows(basis: Basis): WhatIfRow[] {
  const ids: string[] = [];
  const used = COMMODITIES.flatMap((commodity) =>
    basis.sides[commodity].stretches.map(({ to }) => to).filter(({ kind }) => kind === 'passing'),
  ).sort((a, b) => a.atM - b.atM);
  for (const { id } of used) if (id !== null && !ids.includes(id)) ids.push(id);
  return ids.flatMap((id) =>
    COMMODITIES.flatMap((commodity): WhatIfRow[] => {
      const failed = failedStretches(basis, commodity, (edge) => edge.id === id);
      const runs = failed.map(({ stretch }) => runOf(stretch));
      const worst = tightestOf(runs);
      if (worst === null) return [];
      const { stops, stretch } = failed[runs.indexOf(worst)]!;
      const stop = stops.at(-1)!;
      const name = stop.name ?? id;
      return [
        {
          ...stretchFigures(worst),
          kind: 'stop-fails',
          commodity,
          id,
          text: { phrase: 'stop-gives-none', facts: { commodity, name } },
          atM: stop.atM,
          lostL: null,
          backMarginL: backFrom(worst, stop),
          instead: worst.marginL >= -SLACK ? null : insteadOf(basis, commodity, stretch, stops),
        },
      ];
    }),
  );
}

/** Of the supplies that count and are passed by, the one that keeps the reserve best both to it and on from it. */
function insteadOf(
  basis: Basis,
  commodity: Commodity,
  stretch: Stretch,
  stops: readonly EdgeM[],
): WhatIfRow['instead'] {
  const { side, cans } = basis.sides[commodity];
  const { drawableL } = stretch.course.rig[commodity];
  const failing = new Set(stops.map(({ id }) => id));
  let best: { at: EdgeM; marginL: number } | null = null;
  for (const at of side.edges) {
    if (at.kind !== 'passing' || failing.has(at.id) || at.atM <= stretch.from.atM || at.atM >= stretch.to.atM)
      continue;
    const before = stretch.detours.filter(({ atM }) => atM <= at.atM);
    const after = stretch.detours.filter(({ atM }) => atM > at.atM);
    // With cans that the plan does not have full the vehicle is heavier than planned.
    const heaviest = { ...stretch, course: side.course };
    const there = runOf({ ...heaviest, to: at, detours: before });
    const held = arriveWith(side, there.stretch, there.figures.needL);
    const left = isBound(at)
      ? leaveBound(side, at, { ...held, tankL: Math.max(0, held.tankL) }, cans)
      : { tankL: drawableL, cans };
    const on = runOf({ ...heaviest, ...left, from: at, detours: after });
    const marginL = Math.min(there.marginL, on.marginL);
    if (marginL >= -SLACK && (best === null || marginL > best.marginL + SLACK)) best = { at, marginL };
  }
  return best === null ? null : { at: planEdge(best.at), marginL: best.marginL };
}
