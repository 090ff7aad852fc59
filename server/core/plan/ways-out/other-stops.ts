import type { Commodity } from '../../../contract/common.ts';
import type { EdgeM } from '../../gaps/course.ts';
import type { Rescue } from '../../gaps/gap.ts';
import type { OtherStop } from '../../phrases/plan.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { type ProblemChanges, problemOf } from '../question/problem-of.ts';
import { brokenStretches } from './breaks.ts';
import { plannedCans, type WaysOutContext, withEdges } from './try-change.ts';
import { WAY_OUT, type WayOut } from './way-out.ts';

/** No more points than this are looked at for a commodity (ours). */
const MOST_POINTS = 8;
/** So many plans with one point more, and with two, are made at the most (ours). */
const MOST_SINGLE = 8;
const MOST_PAIRS = 12;
/** More pairs than this nobody reads (ours). */
const PAIRS_SHOWN = 4;

interface Candidate {
  commodity: Commodity;
  point: Pick<Rescue, 'id' | 'name' | 'kind' | 'atM' | 'detourM' | 'evidence' | 'counts'>;
}

/**
 * Ways round by another stop: one that counts but lies farther off, and those that do not count, to telephone first.
 * By two stops where no single one is enough.
 */
export function otherStopWaysOut(context: WaysOutContext): WayOut[] {
  const points = candidates(context);
  const bridged = bridging(context);
  const single = tried(context, points.map((point) => [point]).filter(bridged), MOST_SINGLE, MOST_SINGLE);
  if (single.length > 0) return single;
  const pairs = points
    .flatMap((first, index) => points.slice(index + 1).map((second) => [first, second]))
    .filter((pair) => context.clock() < context.until && bridged(pair))
    .sort((a, b) => callsOf(a) - callsOf(b) || drivingMOf(a) - drivingMOf(b));
  return tried(context, pairs, MOST_PAIRS, PAIRS_SHOWN);
}

/** Ways with such stops that were planned again and found, of the first so many. */
function tried(
  context: WaysOutContext,
  choices: readonly (readonly Candidate[])[],
  most: number,
  shown: number,
): WayOut[] {
  const ways: WayOut[] = [];
  for (const stops of choices.slice(0, most)) {
    if (context.clock() >= context.until || ways.length === shown) break;
    const cans = plannedCans(context.reckoned, context, { moreEdges: edgesOf(stops) });
    if (cans !== null) ways.push(wayBy(stops, cans));
  }
  return ways;
}

const callsOf = (stops: readonly Candidate[]): number => stops.filter(({ point }) => !point.counts).length;

/** There and back to each. */
const drivingMOf = (stops: readonly Candidate[]): number =>
  stops.reduce((sum, { point }) => sum + 2 * point.detourM, 0);

function edgesOf(stops: readonly Candidate[]): NonNullable<ProblemChanges['moreEdges']> {
  const edges = (of: Commodity) =>
    stops
      .filter(({ commodity }) => commodity === of)
      .map(
        ({ point }): EdgeM => ({
          kind: 'passing',
          id: point.id,
          name: point.name ?? point.kind,
          atM: point.atM,
          detourM: point.detourM,
          evidence: point.evidence,
        }),
      );
  return { fuel: edges('fuel'), water: edges('water') };
}

function wayBy(stops: readonly Candidate[], cans: WayOut['cans']): WayOut {
  const inOrder = [...stops].sort((a, b) => a.point.atM - b.point.atM);
  const { commodity, point } = inOrder[0]!;
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
    stops: inOrder.map((stop) => ({
      id: stop.point.id,
      name: stop.point.name,
      kind: stop.point.kind,
      commodity: stop.commodity,
      atM: stop.point.atM,
      drivingM: 2 * stop.point.detourM,
      evidence: stop.point.evidence,
      counts: stop.point.counts,
    })),
  };
}

const otherStop = ({ commodity, point }: Candidate): OtherStop => {
  const { name, kind, atM, detourM, counts } = point;
  return { name, kind, commodity, atM, detourM, counts };
};

/** Whether no stretch is broken any more with such stops: told quickly, before a plan is made. */
function bridging({ reckoned }: WaysOutContext): (stops: readonly Candidate[]) => boolean {
  const { sides } = problemOf(reckoned).problem;
  const known = new Map<string, boolean>();
  return (stops) => {
    const moreEdges = edgesOf(stops);
    return COMMODITIES.every((commodity) => {
      const more = moreEdges[commodity] ?? [];
      const key = JSON.stringify([commodity, ...more.map(({ id, atM }) => [id, atM])]);
      const bridged = known.get(key) ?? brokenStretches(withEdges(sides[commodity], more)).length === 0;
      known.set(key, bridged);
      return bridged;
    });
  };
}

/** Points that rescue a short gap, then those of the corridor that do not count; each once. */
function candidates({ reckoned }: WaysOutContext): Candidate[] {
  const { analysis } = reckoned;
  return COMMODITIES.flatMap((commodity) => {
    const gaps = analysis[commodity].gaps;
    const failing = gaps.filter(({ verdict }) => verdict !== 'enough');
    const rescues = gaps.flatMap(({ rescue }) => rescue);
    const inCorridor = analysis.passings.filter(
      (passing) =>
        passing.commodity === commodity &&
        !passing.counts &&
        passing.waterClass !== 'none' &&
        failing.some(({ from, to }) => passing.atM > from.atM && passing.atM < to.atM),
    );
    const seen = new Set<string>();
    return [...rescues, ...inCorridor]
      .filter(({ id }) => !seen.has(id) && seen.add(id))
      .slice(0, MOST_POINTS)
      .map((point): Candidate => ({ commodity, point }));
  });
}
