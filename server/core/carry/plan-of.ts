import type { Plan } from '../../contract/plan.ts';
import type { Reckoned } from '../analyse.ts';
import { massesAlong } from '../levels/masses.ts';
import { breaksOf, MASS_BREAK } from './breaks.ts';
import { driveActual, type HeldPlan } from './drive-actual.ts';
import { fewestMoreCans, mostCansOf } from './more-cans.ts';
import { COMMODITIES } from './problem.ts';
import { problemOf } from './problem-of.ts';
import { cansToGet, cansToGetCautions, restsOn } from './rests-on.ts';
import { carriesOf, legShown, levelsShown, stopsShown } from './show.ts';
import { type SolveOptions, solveCarry } from './solve.ts';

/** The plan without what only some ask for: no ways out, nothing about failures. */
export type PlainPlan = Omit<Plan, 'waysOut' | 'waysOutComplete' | 'oneFailure'>;

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
  const { problem, cautions: own } = problemOf(reckoned);
  const cautions = [
    ...reckoned.analysis.cautions.filter(({ code }) => code === 'start-assumed-full'),
    ...own,
  ];
  const empty: PlainPlan = {
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
    restsOn: cautions,
    breaks: [],
  };
  const outOfTime = (tooFewCans: boolean): PlannedCarry => ({
    plan: { ...empty, status: 'out-of-time' },
    held: null,
    tooFewCans,
  });
  const found = (held: HeldPlan, tooFewCans: boolean): PlannedCarry => ({
    plan: foundPlan(reckoned, held, empty),
    held,
    tooFewCans,
  });

  const solved = solveCarry(problem, options);
  if (solved.status === 'out-of-time') return outOfTime(false);
  if (solved.status === 'found') return found(driveActual(reckoned, problem, solved.choice), false);
  const { mostCans } = reckoned.analysis.trip.plan ?? {};
  const open = COMMODITIES.filter((commodity) => mostCans?.[commodity] === undefined);
  const more = open.length === 0 ? null : fewestMoreCans({ reckoned, open, anyMass: false }, left());
  if (more?.status === 'out-of-time') return outOfTime(true);
  if (more?.status === 'found') {
    const { problem: withMore } = problemOf(reckoned, { mostCans: more.mostCans });
    const again = solveCarry(withMore, left());
    if (again.status === 'found') return found(driveActual(reckoned, withMore, again.choice), true);
    if (again.status === 'out-of-time') return outOfTime(true);
  }
  const breaks = breaksOf(problem, () => solveCarry({ ...problem, room: null }, left()).status === 'found');
  // Where cans could be got, and still there is no plan, the masses may be why.
  const tooHeavy =
    more !== null &&
    problem.room !== null &&
    breaks.every(({ cause }) => cause !== 'mass') &&
    fewestMoreCans({ reckoned, open, anyMass: true }, left()).status === 'found';
  return {
    plan: { ...empty, breaks: tooHeavy ? [...breaks, MASS_BREAK] : breaks },
    held: null,
    tooFewCans: true,
  };
}

function foundPlan(reckoned: Reckoned, held: HeldPlan, empty: PlainPlan): PlainPlan {
  const { rig, trip, passings } = reckoned.analysis;
  const { problem, driven, choice } = held;
  const { sides } = problem;
  const getCans = cansToGet(rig, choice.cans);
  return {
    ...empty,
    status: 'found',
    aims: choice.aims,
    cans: choice.cans,
    mostCans: mostCansOf(problem),
    getCans,
    stops: stopsShown(passings, trip.plan?.stops ?? [], sides, driven),
    legs: {
      fuel: driven.fuel.map((leg) => legShown(sides.fuel, leg)),
      water: driven.water.map((leg) => legShown(sides.water, leg)),
    },
    carries: carriesOf(sides, driven),
    levels: { fuel: levelsShown(sides.fuel, driven.fuel), water: levelsShown(sides.water, driven.water) },
    masses:
      massesAlong(rig, choice.cans, driven)?.levels.map(({ atM, totalKg, frontKg, rearKg }) => ({
        atKm: atM / 1000,
        totalKg,
        frontKg,
        rearKg,
      })) ?? null,
    restsOn: [...empty.restsOn, ...cansToGetCautions(rig, getCans), ...restsOn(held)],
  };
}
