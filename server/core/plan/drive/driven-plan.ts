import type { RigFile } from '../../../contract/rig.ts';
import type { Reckoned } from '../../analyse/analyse.ts';
import type { Course } from '../../gaps/course/course.ts';
import { amountBetween } from '../../gaps/course/profile.ts';
import { evenLoad, type Load } from '../../mass/load.ts';
import { kmOf } from '../../quantity/rates.ts';
import type { Choice } from '../model/choice.ts';
import { loadKg } from '../question/can-kg.ts';
import { mostCansOf } from '../question/can-limits.ts';
import type { CarryQuestion } from '../question/carry-question.ts';
import type { CarrySides } from '../side/carry-side.ts';
import { brokenLegs, type DrivenLegs, drive } from './drive.ts';
import { loadsAlong } from './loads.ts';
import { massesAlong } from './masses.ts';

/** A choice that was driven and held. */
export interface DrivenPlan {
  /** With the fuel that goes at the mass which the vehicle has at each place. */
  readonly question: CarryQuestion;
  /** As the choice was made: with the heaviest mass that it might have. */
  readonly heaviest: CarrySides;
  readonly load: Load;
  readonly choice: Choice;
  readonly legs: DrivenLegs;
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
export function driveActual(reckoned: Reckoned, question: CarryQuestion, choice: Choice): DrivenPlan {
  const { rig } = reckoned.analysis;
  // What comes full stays full, unless that is too heavy.
  const keeping = withOwnMass(reckoned, question, choice, true);
  const plan =
    overLimits(rig, keeping).length === 0 ? keeping : withOwnMass(reckoned, question, choice, false);
  throwWhereBroken(plan.legs);
  throwWhereTooHeavy(rig, plan);
  return plan;
}

/** The same with every can that comes full kept so; null where it does not hold. */
export function driveKeeping(reckoned: Reckoned, question: CarryQuestion, choice: Choice): DrivenPlan | null {
  const plan = withOwnMass(reckoned, question, choice, true);
  const holds = brokenLegs(plan.legs).length === 0 && overLimits(reckoned.analysis.rig, plan).length === 0;
  return holds ? plan : null;
}

const overLimits = (rig: RigFile, { choice, legs }: DrivenPlan) =>
  massesAlong(rig, choice.cans, legs)?.over ?? [];

/** Throws where a leg does not keep its reserve. */
export function throwWhereBroken(legs: DrivenLegs): void {
  const [broken] = brokenLegs(legs);
  if (broken === undefined) return;
  const { commodity, leg, missingL } = broken;
  throw new Error(
    `the plan fails its own simulation: ${missingL} l of ${commodity} from km ${kmOf(leg.from.atM)} to km ${kmOf(leg.to.atM)}`,
  );
}

function throwWhereTooHeavy(rig: RigFile, plan: DrivenPlan): void {
  const [over] = overLimits(rig, plan);
  if (over === undefined) return;
  throw new Error(
    `the plan fails its own simulation: ${over.overKg} kg over the ${over.limit} limit at km ${kmOf(over.atM)}`,
  );
}

function withOwnMass(
  reckoned: Reckoned,
  question: CarryQuestion,
  choice: Choice,
  keepsCans: boolean,
): DrivenPlan {
  const { rig } = reckoned.analysis;
  const { sides } = question;
  const mostKg = loadKg(rig, mostCansOf(question));
  const driven = (load: Load, lightened: CarrySides): DrivenPlan => ({
    question: { ...question, sides: lightened },
    heaviest: sides,
    load,
    choice,
    legs: drive(lightened, choice, keepsCans),
  });
  if (rig.vehicle === undefined) return driven(evenLoad(mostKg), sides);
  const withLoad = (along: Load['along']): DrivenPlan => {
    const load = { mostKg, along };
    const course = reckoned.fuelWithLoads(load);
    return driven(load, { ...sides, fuel: { ...sides.fuel, course } });
  };
  const { lengthM } = sides.fuel.course;
  let plan = withLoad([{ fromM: 0, toM: lengthM, moreKg: loadKg(rig, choice.cans) }]);
  for (let round = 0; round < ROUNDS; round += 1)
    plan = withLoad(loadsAlong(rig, choice.cans, plan.question.sides, plan.legs));
  throwWhereDearer(sides.fuel.course, plan);
  return plan;
}

/** Lighter than the heaviest, a plan takes no more fuel anywhere. */
function throwWhereDearer(heaviest: Course, { question, legs }: DrivenPlan): void {
  const { course } = question.sides.fuel;
  for (const { from, to } of legs.fuel) {
    const takesL = ({ litres }: Course) => amountBetween(litres.out, from.atM, to.atM);
    if (takesL(course) <= takesL(heaviest) + NOISE_L) continue;
    throw new Error(`lighter, the plan takes more fuel from km ${kmOf(from.atM)} to km ${kmOf(to.atM)}`);
  }
}
