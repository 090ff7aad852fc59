/** Plan, what-ifs and gauge of core as answers have them: in kilometres and in words. */
import { aimToContract, plainPlanToContract } from '../../../../server/app/plan-to-contract.ts';
import { type Contracted, toContract } from '../../../../server/app/to-contract.ts';
import * as failures from '../../../../server/core/plan/drive/failures/driven-failures.ts';
import * as turns from '../../../../server/core/plan/drive/turn-back/turn-backs.ts';
import * as gauge from '../../../../server/core/plan/gauge/gauge-of.ts';
import * as failure from '../../../../server/core/plan/one-failure.ts';
import * as plan from '../../../../server/core/plan/plan-of.ts';
import * as shown from '../../../../server/core/plan/shown/plan-legs.ts';
import * as model from '../../../../server/core/plan/solve/solve.ts';
import * as ways from '../../../../server/core/plan/ways-out/ways-out.ts';
import * as mishaps from '../../../../server/core/plan/what-if/mishap-rows.ts';
import * as stops from '../../../../server/core/plan/what-if/stop-fails.ts';
import * as what from '../../../../server/core/plan/what-if/what-if.ts';

const contracted =
  <Facts extends unknown[], T>(of: (...facts: Facts) => T) =>
  (...facts: Facts): Contracted<T> =>
    toContract(of(...facts));

export function planCarry(...facts: Parameters<typeof plan.planCarry>) {
  const { plan: found, ...rest } = plan.planCarry(...facts);
  return { ...rest, plan: plainPlanToContract(found) };
}
export const oneFailure = contracted(failure.oneFailure);
export const failuresOf = contracted(failures.failuresOf);
export const planLeg = contracted(shown.planLeg);
export const waysOut = contracted(ways.waysOut);
export const whatIf = contracted(what.whatIf);
export const stopFailsRows = contracted(stops.stopFailsRows);
export const turnBacksOf = contracted(turns.turnBacksOf);
export const containerLostRows = contracted(mishaps.containerLostRows);
export const pumpFailsRows = contracted(mishaps.pumpFailsRows);
export const waitRows = contracted(mishaps.waitRows);
export const turnRoundRows = contracted(mishaps.turnRoundRows);
export const gaugeOf = contracted(gauge.gaugeOf);

/** A solution with its aims in kilometres, and one of the solver alone. */
export const solveCarry = (...facts: Parameters<typeof model.solveCarry>) => inKm(model.solveCarry(...facts));
export const solvedByModel = (...facts: Parameters<typeof model.solvedByModel>) =>
  inKm(model.solvedByModel(...facts));

function inKm(solution: ReturnType<typeof model.solveCarry>) {
  if (solution.status !== 'found') return solution;
  const { choice } = solution;
  return { ...solution, choice: { ...choice, aims: choice.aims.map(aimToContract) } };
}
export type ChoiceInKm = Extract<ReturnType<typeof solveCarry>, { status: 'found' }>['choice'];
