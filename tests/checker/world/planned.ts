import { fitPlan } from '../../../server/app/input/plan-input.ts';
import type { PlannedTrip } from '../../../server/app/plan-trip.ts';
import { planTrip } from '../../../server/app/plan-trip.ts';
import { problemLine } from '../../../server/core/input/problem.ts';
import { processorClock } from '../../../server/io/processor-clock.ts';
import { loadSolver } from '../../../server/io/solver.ts';
import type { World } from './world.ts';

/** Wide: a plan that takes longer is none that is checked. */
const PLAN_SECONDS = 10;

const solver = await loadSolver();

/**
 * What the command line answers to a trip. Where there is no plan, ways out and the plan against one failure are left out:
 * nothing of them is checked.
 */
export function plannedTrip({ loaded, rig, trip }: World): PlannedTrip {
  const fits = fitPlan(rig, trip);
  if (!fits.ok) throw new Error(problemLine(fits.problem));
  const plan = (extras: boolean): PlannedTrip => {
    const outcome = planTrip(loaded, fits.value, {
      solver,
      seconds: PLAN_SECONDS,
      clock: processorClock(),
      extras,
      today: '2026-05-01',
    });
    if (!outcome.ok) throw new Error(problemLine(outcome.problem));
    return outcome.value;
  };
  const plain = plan(false);
  return plain.plan.status === 'found' ? plan(true) : plain;
}
