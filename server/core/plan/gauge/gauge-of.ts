import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { Basis } from '../drive/basis.ts';
import { runOf } from '../drive/run.ts';
import type { TurnBack } from '../drive/turn-back/turn-backs.ts';
import { byCommodity } from '../side/other-of.ts';
import { isSamePlace, type SupplyEdge } from '../side/supply-edge.ts';
import type { Gauge, GaugeRow, GaugeSide } from './gauge.ts';
import { type GaugeRun, gaugeRunOf } from './gauge-run.ts';
import { leastAt } from './least-at.ts';

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
  const runs = byCommodity((commodity) =>
    basis.sides[commodity].stretches.map((stretch) => gaugeRunOf(runOf(stretch))),
  );
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

/** Stops that are used, both commodities of one point at one place together. */
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
  return stops.map(({ edge, commodities }) => ({ atM: edge.atM, name: edge.name, commodities }));
}

/** One commodity of a line. */
function sideAt(runs: readonly GaugeRun[], line: Line, commodity: Commodity): GaugeSide {
  const own = line.commodities.includes(commodity);
  const { run, point, onL, backL } = leastAt(runs, { atM: line.atM, at: line.at, own });
  return { onL, backL, plannedL: point.litres, from: run.from, to: run.to };
}
