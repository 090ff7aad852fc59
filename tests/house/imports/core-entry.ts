// All of the core that others call, for core-in-browser.test.ts to bundle.
export { analyse, reckonTrip } from '../../../server/core/analyse/analyse.ts';
export { learnFromLog } from '../../../server/core/log/learn.ts';
export { mapDataOf } from '../../../server/core/mapview/map-data.ts';
export { gaugeOf } from '../../../server/core/plan/gauge/gauge-of.ts';
export { oneFailure } from '../../../server/core/plan/one-failure.ts';
export { planCarry } from '../../../server/core/plan/plan-of.ts';
export { waysOut } from '../../../server/core/plan/ways-out/ways-out.ts';
export { whatIf } from '../../../server/core/plan/what-if/what-if.ts';
