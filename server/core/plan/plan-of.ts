import type { Reckoned } from '../analyse/analyse.ts';
import type { CodedCaution } from '../phrases/cautions.ts';
import { COMMODITIES } from '../quantity/commodities.ts';
import { driveActual, type HeldPlan } from './drive/drive-actual.ts';
import { massesAlong } from './drive/masses.ts';
import { canBeDone, type SolveOptions, solveCarry } from './model/solve.ts';
import type { CarryProblem } from './question/problem.ts';
import { problemOf } from './question/problem-of.ts';
import type { PlainPlan } from './shown/plan.ts';
import { cansToGet, cansToGetCautions, restsOn, waysLeftOut } from './shown/rests-on.ts';
import { carriesOf, legShown, levelsShown, stopsShown } from './shown/show.ts';
import { breaksOf, MASS_BREAK } from './ways-out/breaks.ts';
import { allowing, fewestMoreCans, mostCansOf } from './ways-out/more-cans.ts';

export interface PlannedCarry {
  plan: PlainPlan;
  /** Null where there is no plan. */
  held: HeldPlan | null;
  /** With the cans there are there is no plan: one that was found has more, which are to be got. */
  tooFewCans: boolean;
}

/**
 * The carry plan of an analysed trip: chosen with the heaviest masses, driven with those of the plan, and shown only
 * when that keeps every reserve and every permitted mass. It has the cans that are owned, or as many as the trip's limit
 * says; where those are too few, and no limit is set, the fewest more that make a plan.
 */
export function planCarry(reckoned: Reckoned, options: SolveOptions): PlannedCarry {
  const startS = options.clock();
  const left = (): SolveOptions => ({
    ...options,
    seconds: Math.max(0, options.seconds - (options.clock() - startS)),
  });
  const { problem, cautions } = problemOf(reckoned);
  const outOfTime = (tooFewCans: boolean): PlannedCarry => ({
    plan: { ...noPlan(reckoned, problem, cautions), status: 'out-of-time' },
    held: null,
    tooFewCans,
  });

  const solved = solveCarry(problem, options);
  if (solved.status === 'out-of-time') return outOfTime(false);
  if (solved.status === 'found') {
    const held = driveActual(reckoned, problem, solved.choice);
    return { plan: foundPlan(reckoned, held, cautions), held, tooFewCans: false };
  }
  const { mostCans } = reckoned.analysis.trip.plan ?? {};
  const open = COMMODITIES.filter((commodity) => mostCans?.[commodity] === undefined);
  const more = open.length === 0 ? null : fewestMoreCans({ reckoned, open, anyMass: false }, left());
  if (more?.status === 'out-of-time') return outOfTime(true);
  if (more?.status === 'found') {
    const asked = problemOf(allowing(reckoned, more.mostCans));
    const again = solveCarry(asked.problem, left());
    if (again.status === 'found') {
      const held = driveActual(reckoned, asked.problem, again.choice);
      return { plan: foundPlan(reckoned, held, asked.cautions), held, tooFewCans: true };
    }
    if (again.status === 'out-of-time') return outOfTime(true);
  }
  const breaks = breaksOf(problem, () => canBeDone({ ...problem, room: null }, left()));
  // Where cans could be got, and still there is no plan, the masses may be why.
  const tooHeavy =
    more !== null &&
    problem.room !== null &&
    breaks.every(({ cause }) => cause !== 'mass') &&
    fewestMoreCans({ reckoned, open, anyMass: true }, left()).status === 'found';
  const notAll = waysLeftOut(solved.complete, problem);
  return {
    plan: {
      ...noPlan(reckoned, problem, [...cautions, ...notAll]),
      breaks: tooHeavy ? [...breaks, MASS_BREAK] : breaks,
    },
    held: null,
    tooFewCans: true,
  };
}

/** Nothing but what it would rest on. */
function noPlan({ analysis }: Reckoned, problem: CarryProblem, cautions: readonly CodedCaution[]): PlainPlan {
  return {
    status: 'none',
    aims: [],
    cans: { fuel: 0, water: 0 },
    mostCans: mostCansOf(problem),
    getCans: { fuel: 0, water: 0 },
    stops: [],
    legs: { fuel: [], water: [] },
    carries: [],
    levels: { fuel: [], water: [] },
    masses: null,
    restsOn: [...analysis.cautions.filter(({ code }) => code === 'start-assumed-full'), ...cautions],
    breaks: [],
  };
}

function foundPlan(reckoned: Reckoned, held: HeldPlan, cautions: readonly CodedCaution[]): PlainPlan {
  const { rig, trip, passings } = reckoned.analysis;
  const { problem, driven, choice } = held;
  const { sides } = problem;
  const getCans = cansToGet(rig, choice.cans);
  const nothing = noPlan(reckoned, problem, cautions);
  return {
    ...nothing,
    status: 'found',
    aims: choice.aims,
    cans: choice.cans,
    getCans,
    stops: stopsShown(passings, trip.plan?.stops ?? [], sides, driven),
    legs: {
      fuel: driven.fuel.map((leg) => legShown(sides.fuel, leg)),
      water: driven.water.map((leg) => legShown(sides.water, leg)),
    },
    carries: carriesOf(sides, driven),
    levels: {
      fuel: levelsShown(rig, sides.fuel, driven.fuel),
      water: levelsShown(rig, sides.water, driven.water),
    },
    masses: massesAlong(rig, choice.cans, driven)?.levels ?? null,
    restsOn: [...nothing.restsOn, ...cansToGetCautions(rig, getCans), ...restsOn(held)],
  };
}
