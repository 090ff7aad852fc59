import type { Commodity } from '../../../contract/common.ts';
import { at } from '../../lists/at.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Basis } from '../drive/basis.ts';
import { pointsAt, type Run, type RunPoint, runOf } from '../drive/run.ts';
import type { TurnBack } from '../drive/turn-back/turn-backs.ts';
import { byCommodity } from '../side/other-of.ts';
import { planEdge } from '../side/plan-edge.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import type { Gauge, GaugeRow, GaugeSide } from './gauge.ts';

/** A line of the table at least this often, metres (ours). */
export const STEP_M = 50_000;

/** A line of the table, before litres are put to it. */
type Line = Omit<GaugeRow, Commodity>;

/**
 * The gauge table: the least to have aboard at a place to go on, and to go back, with the reserve. A line every 50 km,
 * at every stop on arriving and on leaving, and at every turn-back point. Without a plan every supply that counts is a
 * stop: where they are many, they have no lines.
 */
export function gaugeOf(basis: Basis, turnBacks: readonly TurnBack[]): Gauge {
  const runs = byCommodity((commodity) => basis.sides[commodity].stretches.map(runOf));
  return {
    basis: basis.kind,
    stepM: STEP_M,
    rows: linesOf(basis, turnBacks).map(
      (line): GaugeRow => ({
        ...line,
        fuel: sideAt(runs.fuel, line, 'fuel'),
        water: sideAt(runs.water, line, 'water'),
      }),
    ),
  };
}

/** Without a plan no more stops than this have lines of their own (ours). */
const MOST_WITHOUT_PLAN = 50;

/** In route order. */
function linesOf(basis: Basis, turnBacks: readonly TurnBack[]): Line[] {
  const { side, stretches } = basis.sides.fuel;
  const { lengthM } = side.course;
  const stops = stopsOf(basis);
  const hasLines = basis.kind === 'plan' || stops.length <= MOST_WITHOUT_PLAN;
  const lines: Line[] = [
    { atM: 0, at: 'start', name: stretches[0]?.from.name ?? null, commodities: [] },
    ...(hasLines ? stops : []).flatMap((stop): Line[] => [
      { ...stop, at: 'arriving' },
      { ...stop, at: 'leaving' },
    ]),
    ...turnBacks.map(
      ({ atM, commodity, backTo }): Line => ({
        atM,
        at: 'turn-back',
        name: backTo.name,
        commodities: [commodity],
      }),
    ),
    { atM: lengthM, at: 'end', name: stretches.at(-1)?.to.name ?? null, commodities: [] },
  ];
  return [...lines, ...stepsBetween(lines, lengthM)].sort(
    (a, b) => a.atM - b.atM || ORDER[a.at] - ORDER[b.at],
  );
}

/** The lines that are there for their distance alone. */
function stepsBetween(lines: readonly Line[], lengthM: number): Line[] {
  const places = new Set(lines.map(({ atM }) => atM));
  const steps: Line[] = [];
  for (let atM = STEP_M; atM < lengthM; atM += STEP_M)
    if (!places.has(atM)) steps.push({ atM, at: 'step', name: null, commodities: [] });
  return steps;
}

const ORDER: Record<GaugeRow['at'], number> = {
  start: 0,
  'turn-back': 1,
  step: 2,
  arriving: 3,
  leaving: 4,
  end: 5,
};

/** Stops that are used, both commodities of one point at one place together, in route order. */
function stopsOf({ sides }: Basis): Omit<Line, 'at'>[] {
  const stops: { readonly edge: SupplyEdge; readonly commodities: Commodity[] }[] = [];
  for (const commodity of COMMODITIES) {
    for (const { to } of sides[commodity].stretches) {
      if (to.kind !== 'passing') continue;
      const known = stops.find(({ edge }) => isSamePlace(edge, to));
      if (known === undefined) stops.push({ edge: to, commodities: [commodity] });
      else known.commodities.push(commodity);
    }
  }
  return stops
    .map(({ edge, commodities }) => ({ atM: edge.atM, name: edge.name, commodities }))
    .sort((a, b) => a.atM - b.atM);
}

/** Before a stop the stretch that ends there speaks, from the moment of leaving the one that begins there. */
function sideAt(runs: readonly Run[], { atM, at: kind, commodities }: Line, commodity: Commodity): GaugeSide {
  const first = at(runs, 0);
  const own = commodities.includes(commodity);
  if (kind === 'start') return leavingSide(first);
  if (own && kind === 'leaving')
    return leavingSide(runs.findLast(({ stretch }) => stretch.from.atM <= atM) ?? first);
  const run =
    own && kind === 'turn-back'
      ? runs.findLast(({ stretch }) => stretch.from.atM <= atM && stretch.to.atM > atM)
      : runs.find(({ stretch }) => stretch.from.atM < atM && stretch.to.atM >= atM);
  const there = pointsAt(run ?? first, atM);
  // Before a halt for the other commodity the way to it is still to come, after it that way is gone.
  return gaugeSide(run ?? first, kind === 'leaving' ? leftWith(run ?? first, there) : there[0]);
}

/** What a place is left with after a halt for the other commodity. Of the end of a stretch a run tells only what it is come to with. */
function leftWith({ stretch }: Run, there: readonly [RunPoint, ...RunPoint[]]): RunPoint {
  const last = there.at(-1) ?? there[0];
  const { course, to, detours } = stretch;
  if (last.atM !== to.atM) return last;
  const haltsM = detours.reduce((sum, { atM, bothWaysM }) => (atM === to.atM ? sum + bothWaysM : sum), 0);
  return { ...last, litres: last.litres - haltsM * course.off.litres };
}

/** At the supply itself: what has to be filled to go on. */
function leavingSide(run: Run): GaugeSide {
  const { departL } = run.figures;
  return gaugeSide(run, { ...at(run.points, 0), litres: departL, backL: 0 });
}

/** The least to have aboard at a point of a stretch. */
function gaugeSide(
  { stretch, figures, marginL, keepL, keepBackL }: Run,
  { litres, backL }: RunPoint,
): GaugeSide {
  const aboveL = Math.min(marginL, figures.arriveL - keepL);
  return {
    onL: litres - aboveL,
    backL: backL === null ? null : backL + keepBackL,
    plannedL: litres,
    from: planEdge(stretch.from),
    to: planEdge(stretch.to),
  };
}
