import type { Commodity } from '../../../contract/common.ts';
import type { Edge } from '../../gaps/course/course.ts';
import type { Rescue } from '../../gaps/gap.ts';
import type { OtherStop } from '../../phrases/plan/plan.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Cans } from '../question/can-limits.ts';
import { type QuestionChanges, questionOf } from '../question/question-of.ts';
import { byCommodity } from '../side/other-of.ts';
import { brokenStretches } from './broken-stretches.ts';
import { cansWith, isOver, type WaysOutContext, withEdges } from './try-change.ts';
import { type StopOnWayOut, WAY_OUT, type WayOut } from './way-out.ts';

/** No more points than this are looked at for a commodity (ours). */
const MOST_POINTS = 8;
/** So many plans with one point more, and with two, are made at the most (ours). */
const MOST_SINGLE = 8;
const MOST_PAIRS = 12;
/** More pairs than this nobody reads (ours). */
const PAIRS_SHOWN = 4;

interface Candidate {
  /** Of all candidates. */
  readonly number: number;
  readonly commodity: Commodity;
  readonly point: Pick<Rescue, 'id' | 'name' | 'kind' | 'atM' | 'detourM' | 'evidence' | 'counts'>;
}

/** One stop more, or several. */
type Candidates = readonly [Candidate, ...Candidate[]];

/**
 * Ways round by another stop: one that counts but lies farther off, and those that do not count, to telephone first.
 * By two stops where no single one is enough.
 */
export function otherStopWays(context: WaysOutContext): WayOut[] {
  const points = candidatesOf(context);
  const isBridged = bridgeTest(context);
  const singles = points.map((point): Candidates => [point]).filter(isBridged);
  const ways = waysBy(context, singles, MOST_SINGLE, MOST_SINGLE);
  if (ways.length > 0) return ways;
  const pairs = points
    .flatMap((first, index) => points.slice(index + 1).map((second): Candidates => [first, second]))
    .filter((pair) => !isOver(context) && isBridged(pair))
    .sort((a, b) => callsOf(a) - callsOf(b) || drivingMOf(a) - drivingMOf(b));
  return waysBy(context, pairs, MOST_PAIRS, PAIRS_SHOWN);
}

/** Ways with such stops that were planned again and found, of the first so many. */
function waysBy(
  context: WaysOutContext,
  choices: readonly Candidates[],
  most: number,
  shown: number,
): WayOut[] {
  const ways: WayOut[] = [];
  for (const stops of choices.slice(0, most)) {
    if (isOver(context) || ways.length === shown) break;
    const cans = cansWith(context.reckoned, context, { moreEdges: edgesOf(stops) });
    if (cans !== null) ways.push(wayBy(stops, cans));
  }
  return ways;
}

const callsOf = (stops: Candidates): number => stops.filter(({ point }) => !point.counts).length;

/** There and back to each. */
const drivingMOf = (stops: Candidates): number =>
  stops.reduce((sum, { point }) => sum + 2 * point.detourM, 0);

const edgesOf = (stops: Candidates): NonNullable<QuestionChanges['moreEdges']> =>
  byCommodity((commodity) => stops.filter((stop) => stop.commodity === commodity).map(edgeOf));

const edgeOf = ({ point }: Candidate): Edge => ({
  kind: 'passing',
  id: point.id,
  name: point.name ?? point.kind,
  atM: point.atM,
  detourM: point.detourM,
  evidence: point.evidence,
});

function wayBy(stops: Candidates, cans: Cans): WayOut {
  const [first, ...more] = stops;
  const inOrder = [first, ...more].sort((a, b) => a.point.atM - b.point.atM);
  const { commodity, point } = inOrder[0] ?? first;
  return {
    ...WAY_OUT,
    kind: 'other-stop',
    telephoneFirst: callsOf(stops) > 0,
    text: { phrase: 'by-other-stops', facts: { stops: inOrder.map(otherStop) } },
    cans,
    amount: drivingMOf(stops),
    unit: 'm of way',
    atM: point.atM,
    id: point.id,
    commodity,
    stops: inOrder.map(stopOnWay),
  };
}

const otherStop = ({ commodity, point }: Candidate): OtherStop => {
  const { name, kind, atM, detourM, counts } = point;
  return { name, kind, commodity, atM, detourM, counts };
};

const stopOnWay = ({ commodity, point }: Candidate): StopOnWayOut => ({
  id: point.id,
  name: point.name,
  kind: point.kind,
  commodity,
  atM: point.atM,
  drivingM: 2 * point.detourM,
  evidence: point.evidence,
  counts: point.counts,
});

/** Whether no stretch is broken any more with such stops: told quickly, before a plan is made. */
function bridgeTest({ reckoned }: WaysOutContext): (stops: Candidates) => boolean {
  const { sides } = questionOf(reckoned).question;
  const known = new Map<string, boolean>();
  return (stops) =>
    COMMODITIES.every((commodity) => {
      const own = stops.filter((stop) => stop.commodity === commodity);
      const name = [commodity, ...own.map(({ number }) => number)].join(' ');
      const isBridged =
        known.get(name) ?? brokenStretches(withEdges(sides[commodity], own.map(edgeOf))).length === 0;
      known.set(name, isBridged);
      return isBridged;
    });
}

/** Points that rescue a short gap, then those of the corridor that do not count; each once. */
function candidatesOf({ reckoned }: WaysOutContext): Candidate[] {
  const points = COMMODITIES.flatMap((commodity) =>
    pointsOf(reckoned.analysis, commodity).map((point) => ({ commodity, point })),
  );
  return points.map((point, number) => ({ number, ...point }));
}

function pointsOf(
  analysis: WaysOutContext['reckoned']['analysis'],
  commodity: Commodity,
): Candidate['point'][] {
  const { gaps } = analysis[commodity];
  const failing = gaps.filter(({ verdict }) => verdict !== 'enough');
  const rescues = gaps.flatMap(({ rescue }) => rescue);
  const inCorridor = analysis.passings.filter(
    (passing) =>
      passing.commodity === commodity &&
      !passing.counts &&
      passing.waterClass !== 'none' &&
      failing.some(({ from, to }) => passing.atM > from.atM && passing.atM < to.atM),
  );
  const byId = new Map<string, Candidate['point']>();
  for (const point of [...rescues, ...inCorridor]) if (!byId.has(point.id)) byId.set(point.id, point);
  return [...byId.values()].slice(0, MOST_POINTS);
}
