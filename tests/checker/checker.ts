import type { PlannedTrip } from '../../server/app/plan-trip.ts';
import { checkFailures } from './checks/check-failures.ts';
import { checkGauge } from './checks/check-gauge.ts';
import { checkCans, checkLegs } from './checks/check-legs.ts';
import { checkLevels } from './checks/check-levels.ts';
import { checkMasses } from './checks/check-masses.ts';
import { checkTurnBacks } from './checks/check-turn-backs.ts';
import { checkStopFails } from './checks/check-what-ifs.ts';
import { factsOf } from './reckoning/facts.ts';
import { Notebook } from './reckoning/notebook.ts';
import type { World } from './world/world.ts';

/** Holds a plan, and all that is told beside it, against what the checker makes of the same trip. */
export function checkPlan(world: World, planned: PlannedTrip): Notebook {
  const book = new Notebook();
  const facts = factsOf(world, planned);
  const { plan, whatIf, gauge } = planned;
  if (plan.status !== 'found') return book;
  checkLegs(book, facts, plan, plan.mostCans);
  checkCans(book, facts, plan);
  checkLevels(book, facts, plan);
  checkTurnBacks(book, facts, plan, whatIf);
  checkGauge(book, facts, plan, gauge);
  checkFailures(book, facts, plan);
  checkStopFails(book, facts, plan, whatIf);
  checkMasses(book, facts, plan);
  return book;
}
