import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { pointsAt, type Run, type RunPoint, runOf } from '../drive/run.ts';
import { type PlanEdge, planEdge } from '../question/plan-edge.ts';
import type { Basis } from '../what-if/basis.ts';
import type { TurnBack } from '../what-if/turn-backs.ts';

/** The least to have aboard of one commodity at a place, reserve included, litres of all containers. */
export interface GaugeSide {
  readonly onL: number;
  /** Null where the way cannot be driven back. */
  readonly backL: number | null;
  /** As planned. */
  readonly plannedL: number;
  readonly from: PlanEdge;
  readonly to: PlanEdge;
}

export interface GaugeRow {
  readonly atM: number;
  readonly at: 'start' | 'step' | 'arriving' | 'leaving' | 'turn-back' | 'end';
  /** Of the stop, or of what it is turned back to. */
  readonly name: string | null;
  /** What is filled at the stop, or what has to turn back here. */
  readonly commodities: readonly Commodity[];
  readonly fuel: GaugeSide;
  readonly water: GaugeSide;
}

/** The gauge table; metres along the route. */
export interface Gauge {
  readonly basis: Basis['kind'];
  readonly stepM: number;
  readonly rows: readonly GaugeRow[];
}

/** A line of the table at least this often, metres (ours). */
export const STEP_M = 50_000;

/**
 * The gauge table: the least to have aboard at a place to go on, and to go back, with the reserve. A line every 50 km,
 * at every stop on arriving and on leaving, and at every turn-back point.
 */
export function gaugeOf(basis: Basis, turnBacks: readonly TurnBack[]): Gauge {
  const runs = {
    fuel: basis.sides.fuel.stretches.map(runOf),
    water: basis.sides.water.stretches.map(runOf),
  };
  const lengthM = basis.sides.fuel.side.course.lengthM;
  const places: Place[] = [
    { atM: 0, at: 'start', name: runs.fuel[0]?.stretch.from.name ?? null, commodities: [] },
    ...stopsOf(basis).flatMap((stop): Place[] => [
      { ...stop, at: 'arriving' },
      { ...stop, at: 'leaving' },
    ]),
    ...turnBacks.map(
      ({ atM, commodity, backTo }): Place => ({
        atM,
        at: 'turn-back',
        name: backTo.name,
        commodities: [commodity],
      }),
    ),
    { atM: lengthM, at: 'end', name: runs.fuel.at(-1)?.stretch.to.name ?? null, commodities: [] },
  ];
  const taken = new Set(places.map(({ atM }) => atM));
  for (let atM = STEP_M; atM < lengthM; atM += STEP_M)
    if (!taken.has(atM)) places.push({ atM, at: 'step', name: null, commodities: [] });
  places.sort((a, b) => a.atM - b.atM || ORDER[a.at] - ORDER[b.at]);
  return {
    basis: basis.kind,
    stepM: STEP_M,
    rows: places.map(
      (place): GaugeRow => ({
        atM: place.atM,
        at: place.at,
        name: place.name,
        commodities: place.commodities,
        fuel: sideAt(runs.fuel, place, 'fuel'),
        water: sideAt(runs.water, place, 'water'),
      }),
    ),
  };
}

interface Place {
  atM: number;
  at: GaugeRow['at'];
  name: string | null;
  commodities: Commodity[];
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
function stopsOf({ sides }: Basis): Omit<Place, 'at'>[] {
  const stops: (Omit<Place, 'at'> & { id: string | null })[] = [];
  for (const commodity of COMMODITIES) {
    for (const { to } of sides[commodity].stretches) {
      if (to.kind !== 'passing') continue;
      const known = stops.find(({ id, atM }) => id === to.id && atM === to.atM);
      if (known === undefined)
        stops.push({ id: to.id, atM: to.atM, name: to.name, commodities: [commodity] });
      else known.commodities.push(commodity);
    }
  }
  return stops
    .sort((a, b) => a.atM - b.atM)
    .map(({ atM, name, commodities }) => ({ atM, name, commodities }));
}

/** Before a stop the stretch that ends there speaks, from the moment of leaving the one that begins there. */
function sideAt(runs: readonly Run[], { atM, at, commodities }: Place, commodity: Commodity): GaugeSide {
  const own = commodities.includes(commodity);
  if (at === 'start') return leavingSide(runs[0]!);
  if (own && at === 'leaving') return leavingSide(runs.findLast(({ stretch }) => stretch.from.atM <= atM)!);
  const turning = own && at === 'turn-back';
  const run = turning
    ? runs.findLast(({ stretch }) => stretch.from.atM <= atM && stretch.to.atM > atM)
    : runs.find(({ stretch }) => stretch.from.atM < atM && stretch.to.atM >= atM);
  const there = pointsAt(run ?? runs[0]!, atM);
  // Before a halt for the other commodity the way to it is still to come, after it that way is gone.
  return gaugeSide(run ?? runs[0]!, at === 'leaving' ? there.at(-1)! : there[0]!);
}

/** At the supply itself: what has to be filled to go on. */
function leavingSide(run: Run): GaugeSide {
  const { departL } = run.figures;
  return gaugeSide(run, { ...run.points[0]!, litres: departL, backL: 0 });
}

/** The least to have aboard at a point of a stretch. */
function gaugeSide({ stretch, figures, marginL, keepL }: Run, point: RunPoint): GaugeSide {
  const aboveL = Math.min(marginL, figures.arriveL - keepL);
  return {
    onL: point.litres - aboveL,
    backL: point.backL === null ? null : point.backL + keepL,
    plannedL: point.litres,
    from: planEdge(stretch.from),
    to: planEdge(stretch.to),
  };
}
