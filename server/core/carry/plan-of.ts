import type { Caution } from '../../contract/common.ts';
import type { Plan } from '../../contract/plan.ts';
import type { Reckoned } from '../analyse.ts';
import { sketchyM } from '../gaps/course.ts';
import { massesAlong } from '../levels/masses.ts';
import { breaksOf } from './breaks.ts';
import { driveActual, type HeldPlan } from './drive-actual.ts';
import { COMMODITIES } from './problem.ts';
import { problemOf } from './problem-of.ts';
import { carriesOf, legShown, levelsShown, stopsShown } from './show.ts';
import { type SolveOptions, solveCarry } from './solve.ts';

/** The plan without what only some ask for: no ways out, nothing about failures. */
export type PlainPlan = Omit<Plan, 'waysOut' | 'waysOutComplete' | 'oneFailure'>;

/**
 * The carry plan of an analysed trip: chosen with the heaviest masses, driven with those of the plan, and shown only
 * when that keeps every reserve and every permitted mass.
 */
export function planCarry(
  reckoned: Reckoned,
  options: SolveOptions,
): { plan: PlainPlan; held: HeldPlan | null } {
  const { problem, cautions: own } = problemOf(reckoned);
  const cautions = [
    ...reckoned.analysis.cautions.filter(({ code }) => code === 'start-assumed-full'),
    ...own,
  ];
  const mostCans = { fuel: problem.sides.fuel.mostCans, water: problem.sides.water.mostCans };
  const empty: PlainPlan = {
    status: 'none',
    aims: [],
    cans: { fuel: 0, water: 0 },
    mostCans,
    getCans: { fuel: 0, water: 0 },
    stops: [],
    legs: { fuel: [], water: [] },
    carries: [],
    levels: { fuel: [], water: [] },
    masses: null,
    restsOn: cautions,
    breaks: [],
  };
  const solved = solveCarry(problem, options);
  if (solved.status === 'out-of-time') return { plan: { ...empty, status: 'out-of-time' }, held: null };
  if (solved.status === 'none') {
    const breaks = breaksOf(
      problem,
      () => solveCarry({ ...problem, room: null }, options).status === 'found',
    );
    return { plan: { ...empty, breaks }, held: null };
  }
  const held = driveActual(reckoned, problem, solved.choice);
  const { sides } = held.problem;
  const { driven, choice } = held;
  return {
    plan: {
      ...empty,
      status: 'found',
      aims: choice.aims,
      cans: choice.cans,
      stops: stopsShown(reckoned.analysis.passings, sides, driven),
      legs: {
        fuel: driven.fuel.map((leg) => legShown(sides.fuel, leg)),
        water: driven.water.map((leg) => legShown(sides.water, leg)),
      },
      carries: carriesOf(sides, driven),
      levels: { fuel: levelsShown(sides.fuel, driven.fuel), water: levelsShown(sides.water, driven.water) },
      masses:
        massesAlong(reckoned.analysis.rig, choice.cans, driven)?.levels.map(
          ({ atM, totalKg, frontKg, rearKg }) => ({ atKm: atM / 1000, totalKg, frontKg, rearKg }),
        ) ?? null,
      restsOn: [...cautions, ...restsOn(held)],
    },
    held,
  };
}

/** What the plan rests on that nobody knows for sure. */
function restsOn({ problem, driven }: HeldPlan): Caution[] {
  const cautions: Caution[] = [];
  for (const commodity of COMMODITIES) {
    const { course } = problem.sides[commodity];
    for (const [index, { from, to, cans, figures }] of driven[commodity].entries()) {
      const next = driven[commodity][index + 1];
      const tooMuchL = next === undefined ? 0 : figures.arriveL - next.figures.departL;
      if (tooMuchL > 1e-6) {
        const text = `${Math.ceil(tooMuchL * 10) / 10} l of ${commodity} have to be let go here: with all of it and the other supplies filled, a permitted mass is broken.`;
        cautions.push({ code: 'plan-lets-go', text, fromKm: to.atM / 1000, toKm: to.atM / 1000 });
      }
      const place = { fromKm: from.atM / 1000, toKm: to.atM / 1000 };
      if (figures.acrossNoData) {
        const text = `No extract shows ${commodity} on part of this stretch: the plan takes it as dry.`;
        cautions.push({ code: 'plan-across-no-data', text, ...place });
      }
      if (sketchyM(course, from.atM, to.atM) > 0) {
        const text = `Part of this stretch is a straight line where a road is meant: the ${commodity} it takes is a guess.`;
        cautions.push({ code: 'plan-across-sketch', text, ...place });
      }
      if (from.kind === 'start' && cans > 0) {
        const text = `${cans} ${commodity} ${cans === 1 ? 'can is' : 'cans are'} to be filled before the start.`;
        cautions.push({ code: 'plan-cans-at-start', text, fromKm: 0, toKm: 0 });
      }
      if (to.evidence === 'implied' || to.evidence === 'doubtful') {
        const text = `${to.name ?? to.id ?? 'A supply'} is known only as ${to.evidence}: telephone before you depend on it.`;
        cautions.push({ code: 'plan-weak-evidence', text, fromKm: place.toKm, toKm: place.toKm });
      }
    }
    if (course.onward === null) {
      const endKm = course.lengthM / 1000;
      const text = `How far the next ${commodity} is past the end was not told: the plan reaches to the end of the route and no farther.`;
      cautions.push({ code: 'plan-onward-unknown', text, fromKm: endKm, toKm: endKm });
    }
  }
  return cautions;
}
