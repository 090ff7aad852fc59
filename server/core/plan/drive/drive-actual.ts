import type { Commodity } from '../../../contract/common.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Course } from '../../gaps/course.ts';
import { amountBetween } from '../../gaps/profile.ts';
import { evenLoad, type Load } from '../../mass/load.ts';
import type { Choice } from '../model/solve.ts';
import type { CarryProblem, CarrySide } from '../question/problem.ts';
import { loadKg } from '../question/problem-of.ts';
import { brokenLegs, type Driven, drive } from './drive.ts';
import { loadsAlong } from './loads.ts';
import { massesAlong } from './masses.ts';

/** A choice that was driven and held. */
export interface HeldPlan {
  /** With the fuel that goes at the mass which the vehicle has at each place. */
  problem: CarryProblem;
  /** As the choice was made: with the heaviest mass that it might have. */
  heaviest: Record<Commodity, CarrySide>;
  load: Load;
  choice: Choice;
  driven: Driven;
}

/**
 * Each round drives with the masses that the drive before came to. With the heaviest too much is used, so that the next
 * masses are too low; with those too little is used, so that the ones after are on the high side again, where they stay:
 * a litre more aboard makes the way dearer by some hundredths of a litre.
 */
const ROUNDS = 2;
/** Solver and float noise, litres. */
const NOISE_L = 1e-6;

/**
 * Drives a choice with the mass that it has, not the heaviest that was allowed for. Throws where it does not hold: the
 * model and the simulation then disagree, which is a fault of the program and never an answer.
 */
export function driveActual(reckoned: Reckoned, problem: CarryProblem, choice: Choice): HeldPlan {
  const overOf = ({ driven }: HeldPlan) =>
    massesAlong(reckoned.analysis.rig, choice.cans, driven)?.over ?? [];
  // What comes full stays full, unless that is too heavy.
  const keeping = withOwnMass(reckoned, problem, choice, true);
  const held = overOf(keeping).length === 0 ? keeping : withOwnMass(reckoned, problem, choice, false);
  const [broken] = brokenLegs(held.driven);
  if (broken !== undefined) {
    const { commodity, leg, missingL } = broken;
    throw new Error(
      `the plan fails its own simulation: ${missingL} l of ${commodity} from km ${leg.from.atM / 1000} to km ${leg.to.atM / 1000}`,
    );
  }
  const [over] = overOf(held);
  if (over !== undefined) {
    throw new Error(
      `the plan fails its own simulation: ${over.overKg} kg over the ${over.limit} limit at km ${over.atM / 1000}`,
    );
  }
  return held;
}

function withOwnMass(
  reckoned: Reckoned,
  problem: CarryProblem,
  choice: Choice,
  keepsCans: boolean,
): HeldPlan {
  const { rig } = reckoned.analysis;
  const { sides } = problem;
  const mostKg = loadKg(rig, { fuel: sides.fuel.mostCans, water: sides.water.mostCans });
  if (rig.vehicle === undefined)
    return {
      problem,
      heaviest: sides,
      load: evenLoad(mostKg),
      choice,
      driven: drive(sides, choice, keepsCans),
    };
  const withLoad = (load: Load) => ({
    ...sides,
    fuel: { ...sides.fuel, course: reckoned.fuelWithLoads(load) },
  });
  const along = [{ fromM: 0, toM: sides.fuel.course.lengthM, moreKg: loadKg(rig, choice.cans) }];
  let load: Load = { mostKg, along };
  let actual = withLoad(load);
  let driven = drive(actual, choice, keepsCans);
  for (let round = 0; round < ROUNDS; round += 1) {
    load = { mostKg, along: loadsAlong(rig, choice.cans, actual, driven) };
    actual = withLoad(load);
    driven = drive(actual, choice, keepsCans);
  }
  const { course } = sides.fuel;
  for (const { from, to } of driven.fuel) {
    const takesL = ({ litres }: Course) => amountBetween(litres.out, from.atM, to.atM);
    if (takesL(actual.fuel.course) <= takesL(course) + NOISE_L) continue;
    throw new Error(`lighter, the plan takes more fuel from km ${from.atM / 1000} to km ${to.atM / 1000}`);
  }
  return { problem: { ...problem, sides: actual }, heaviest: sides, load, choice, driven };
}
