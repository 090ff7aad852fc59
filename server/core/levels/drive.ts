import type { Commodity } from '../../contract/common.ts';
import { tanksL } from '../carry/leg.ts';
import { type CarrySide, COMMODITIES, haltsBetween, haltsOf, otherOf } from '../carry/problem.ts';
import type { Choice, PlannedLeg } from '../carry/solve.ts';
import type { EdgeM } from '../gaps/course.ts';
import { SLACK } from '../gaps/need.ts';
import { type Reckoning, reckon } from '../gaps/reckon.ts';
import { type ContainerLevel, containersAlong } from './containers.ts';
import { type Detour, levelPoints } from './level-points.ts';

/** A leg as it is driven. */
export interface DrivenLeg {
  from: EdgeM;
  to: EdgeM;
  cans: number;
  /** In the fixed tanks on leaving. */
  tankL: number;
  shortL: number;
  /** Halts of the other commodity off the route on the way. */
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

/** Drives the route with a plan: the one source of levels for every view and check. */
export function drive(sides: Record<Commodity, CarrySide>, choice: Pick<Choice, 'legs'>): Driven {
  const made = (commodity: Commodity) => {
    const side = sides[commodity];
    const stops = choice.legs[commodity].map(({ to }) => side.edges[to]!);
    return haltsOf({ ...side, edges: stops });
  };
  const halts = { fuel: made('fuel'), water: made('water') };
  const driven: Driven = { fuel: [], water: [] };
  for (const commodity of COMMODITIES) {
    driven[commodity] = choice.legs[commodity].map((leg) =>
      driveLeg(
        sides[commodity],
        leg,
        haltsBetween(
          halts[otherOf(commodity)],
          sides[commodity].edges[leg.from]!,
          sides[commodity].edges[leg.to]!,
        ),
      ),
    );
  }
  return driven;
}

function driveLeg(side: CarrySide, leg: PlannedLeg, detours: readonly Detour[]): DrivenLeg {
  const { course, edges, canL } = side;
  const from = edges[leg.from]!;
  const to = edges[leg.to]!;
  const tankL = tanksL(side, leg.from) - leg.shortL;
  const viaM = detours.reduce((sum, { bothWaysM }) => sum + bothWaysM, 0);
  const figures = reckon(course, from, to, tankL + leg.cans * canL, viaM);
  const points = levelPoints(course, from, to, figures, detours);
  const capacityL = course.rig[course.commodity].drawableL;
  const { levels, poursM } = containersAlong(points, { capacityL, tankL, canL, cans: leg.cans });
  const { grades } = figures;
  return {
    from,
    to,
    cans: leg.cans,
    tankL,
    shortL: leg.shortL,
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
