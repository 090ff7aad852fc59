import type { Commodity } from '../../../contract/common.ts';

/** Words of the report of an analysis. */
export const REPORT_WORDS = {
  unnamedRig: 'unnamed rig',
  route: (name: string, length: string, rig: string) => `${name}: ${length}, ${rig}`,
  longest: (commodity: string, stretch: string, sentences: string) =>
    `Longest stretch without ${commodity}: ${stretch}. ${sentences}`,
  toDo: 'What to do',
  fuel: (kind: string, carried: string) => `Fuel (${kind}): ${carried}`,
  water: (carried: string) => `Drinking water: ${carried}`,
  cautions: 'Cautions',
  assumed: 'Not said, so assumed',
  assumption: (path: string, value: string, why: string) => `${path}: ${value}, ${why}`,
  passedOver: (count: number) => `Passed over: ${count} objects`,
  furtherSkipped: (rest: number) => ` and ${rest} more (--json names them all)`,
  spot: (from: string, text: string) => `km ${from}: ${text}`,
  stretch: (from: string, to: string, text: string) => `km ${from} to ${to}: ${text}`,
  suppliesThatCount: (commodity: Commodity) => `What to know of the ${commodity} supplies that count`,
  suppliesOfPlan: 'What to know of these stops',
  supply: (km: string, name: string, texts: string) => `km ${km}, ${name}: ${texts}`,
};
