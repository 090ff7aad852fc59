/** Plan, what-ifs and gauge of core as answers have them: in kilometres and in words. */
import { type Contracted, toContract } from '../../../server/app/to-contract.ts';
import * as gauge from '../../../server/core/plan/gauge/gauge-of.ts';
import * as failure from '../../../server/core/plan/one-failure.ts';
import * as plan from '../../../server/core/plan/plan-of.ts';
import * as shown from '../../../server/core/plan/shown/show.ts';
import * as ways from '../../../server/core/plan/ways-out/ways-out.ts';
import * as mishaps from '../../../server/core/plan/what-if/mishap-rows.ts';
import * as stops from '../../../server/core/plan/what-if/stop-fails.ts';
import * as turns from '../../../server/core/plan/what-if/turn-backs.ts';
import * as what from '../../../server/core/plan/what-if/what-if.ts';

const contracted =
  <Facts extends unknown[], T>(of: (...facts: Facts) => T) =>
  (...facts: Facts): Contracted<T> =>
    toContract(of(...facts));

export function planCarry(...facts: Parameters<typeof plan.planCarry>) {
  const { plan: found, ...rest } = plan.planCarry(...facts);
  return { ...rest, plan: toContract(found) };
}
export const oneFailure = contracted(failure.oneFailure);
export const failuresOf = contracted(failure.failuresOf);
export const legShown = contracted(shown.legShown);
export const waysOut = contracted(ways.waysOut);
export const whatIf = contracted(what.whatIf);
export const stopFailsRows = contracted(stops.stopFailsRows);
export const turnBacksOf = contracted(turns.turnBacksOf);
export const containerLostRows = contracted(mishaps.containerLostRows);
export const pumpFailsRows = contracted(mishaps.pumpFailsRows);
export const waitRows = contracted(mishaps.waitRows);
export const turnRoundRows = contracted(mishaps.turnRoundRows);
export const gaugeOf = contracted(gauge.gaugeOf);
