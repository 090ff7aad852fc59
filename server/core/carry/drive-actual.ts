import type { Reckoned } from '../analyse.ts';
import { brokenLegs, type Driven, drive } from '../levels/drive.ts';
import { massesAlong } from '../levels/masses.ts';
import type { CarryProblem } from './problem.ts';
import { loadKg } from './problem-of.ts';
import type { Choice } from './solve.ts';

/** A choice that was driven and held. */
export interface HeldPlan {
  problem: CarryProblem;
  choice: Choice;
  driven: Driven;
}

/**
 * Drives a choice with the mass that it has, not the heaviest that was allowed for. Throws where it does not hold: the
 * model and the simulation then disagree, which is a fault of the program and never an answer.
 */
export function driveActual(reckoned: Reckoned, problem: CarryProblem, choice: Choice): HeldPlan {
  const { rig } = reckoned.analysis;
  const fuel = { ...problem.sides.fuel, course: reckoned.fuelWithLoad(loadKg(rig, choice.cans)) };
  const actual = { ...problem, sides: { ...problem.sides, fuel } };
  const driven = drive(actual.sides, choice);
  const [broken] = brokenLegs(driven);
  if (broken !== undefined) {
    const { commodity, leg, missingL } = broken;
    throw new Error(
      `the plan fails its own simulation: ${missingL} l of ${commodity} from km ${leg.from.atM / 1000} to km ${leg.to.atM / 1000}`,
    );
  }
  const [over] = massesAlong(rig, choice.cans, driven)?.over ?? [];
  if (over !== undefined) {
    throw new Error(
      `the plan fails its own simulation: ${over.overKg} kg over the ${over.limit} limit at km ${over.atM / 1000}`,
    );
  }
  return { problem: actual, choice, driven };
}
