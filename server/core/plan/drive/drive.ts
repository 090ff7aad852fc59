import type { Commodity } from '../../../contract/common.ts';
import { type Reckoning, reckon } from '../../gaps/reckon.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { SLACK } from '../../quantity/slack.ts';
import type { Choice, PlannedLeg } from '../model/solve.ts';
import { arriveWith, type Held, leaveBound } from '../question/bound-stop.ts';
import { leaving } from '../question/leg.ts';
import {
  type CarrySide,
  type Halt,
  haltsBetween,
  haltsOf,
  otherOf,
  type SupplyEdge,
} from '../question/problem.ts';
import { type ContainerLevel, containersAlong } from './containers.ts';
import { type Detour, levelPoints } from './level-points.ts';

/** A leg as it is driven. */
export interface DrivenLeg {
  from: SupplyEdge;
  to: SupplyEdge;
  /** Full on leaving. */
  cans: number;
  /** In the fixed tanks on leaving. */
  tankL: number;
  shortL: number;
  /** Halts of the other commodity on the way that cost something. */
  detours: readonly Detour[];
  /** With all that is aboard, cans included, and every halt of the other commodity on the way. */
  figures: Reckoning;
  levels: ContainerLevel[];
  /** Metres along the route, first can to last; those still full on arrival are not among them. */
  poursM: number[];
  /** The least of what is left above the reserve, of drinking grade as well where it is known. */
  marginL: number;
}

export type Driven = Record<Commodity, DrivenLeg[]>;

/**
 * Drives the route with a plan: the one source of levels for every view and check. With `keepsCans` a can that comes
 * full to a stop stays full, also where the plan needs fewer from there.
 */
export function drive(
  sides: Record<Commodity, CarrySide>,
  choice: Pick<Choice, 'legs'>,
  keepsCans = false,
): Driven {
  const made = (commodity: Commodity) => {
    const side = sides[commodity];
    const stops = choice.legs[commodity].flatMap(({ hops }) => hops.map(({ to }) => side.edges[to]!));
    return haltsOf({ ...side, edges: stops }, sides[otherOf(commodity)].course);
  };
  const halts = { fuel: made('fuel'), water: made('water') };
  const driven: Driven = { fuel: [], water: [] };
  for (const commodity of COMMODITIES) {
    const foreign = halts[otherOf(commodity)];
    for (const leg of choice.legs[commodity]) {
      const before = keepsCans ? driven[commodity].at(-1) : undefined;
      driven[commodity].push(...driveLeg(sides[commodity], leg, foreign, before));
    }
  }
  return driven;
}

/** Hop by hop: at a supply that does not give all that is wanted, what it is left with hangs on what was left. */
function driveLeg(
  side: CarrySide,
  { hops, shortL }: PlannedLeg,
  foreign: readonly Halt[],
  keeps: DrivenLeg | undefined,
): DrivenLeg[] {
  const { edges, canL } = side;
  const driven: DrivenLeg[] = [];
  const [first] = hops;
  const still = keeps === undefined ? 0 : arriveWith(side, keeps, keeps.figures.needL).cans;
  let left = {
    tankL: first.tankL - shortL,
    cans: Math.max(first.cans, still),
    filledL: first.filledL,
  };
  for (const [index, { from, to }] of hops.entries()) {
    const before = driven.at(-1);
    if (before !== undefined) {
      const arrived = arriveWith(side, before, before.figures.needL);
      left = leaveBound(side, edges[from]!, arrived, hops[index]!.cans);
    }
    const halts = haltsBetween(foreign, edges[from]!, edges[to]!);
    const detours = halts.map(({ atM, costM }): Detour => ({ atM, bothWaysM: costM }));
    driven.push(
      driveHop(
        side,
        leaving(edges[from]!, left.filledL),
        edges[to]!,
        left,
        detours,
        canL,
        index === 0 ? shortL : 0,
      ),
    );
  }
  return driven;
}

function driveHop(
  { course, cansDrinkable }: CarrySide,
  from: SupplyEdge,
  to: SupplyEdge,
  { tankL, cans }: Held,
  detours: readonly Detour[],
  canL: number,
  shortL: number,
): DrivenLeg {
  const viaM = detours.reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const washingCansL = cansDrinkable ? 0 : cans * canL;
  const figures = reckon(course, from, to, tankL + cans * canL, viaM, washingCansL);
  const points = levelPoints(course, from, to, figures, detours);
  const capacityL = course.rig[course.commodity].drawableL;
  const { levels, poursM } = containersAlong(points, { capacityL, tankL, canL, cans });
  const { grades } = figures;
  return {
    from,
    to,
    cans,
    tankL,
    shortL,
    detours,
    figures,
    levels,
    poursM,
    marginL: grades === null ? figures.marginL : Math.min(figures.marginL, grades.drinking.marginL),
  };
}

/** A litre this small is float noise of the way through the solver. */
const NOISE_L = 1e-6;

/** Legs that do not keep the reserve, or whose tanks are fuller than they can be: none, if the plan is one. */
export function brokenLegs(driven: Driven): { commodity: Commodity; leg: DrivenLeg; missingL: number }[] {
  return COMMODITIES.flatMap((commodity) =>
    driven[commodity]
      .filter((leg) => leg.marginL < -NOISE_L - SLACK)
      .map((leg) => ({ commodity, leg, missingL: -leg.marginL })),
  );
}
