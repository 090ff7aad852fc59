import type { Catalogue } from '../parts/catalogue.ts';
import { parts } from '../parts/part.ts';

/** The cautions that every answer carries. */
export const STANDING_REASONS = {
  'planning-aid': () => parts`A planning aid, not a guarantee.`,
  'confirm-points': () =>
    parts`Map data can be wrong, old or missing: confirm every point you depend on before you leave.`,
  'carry-reserve': () => parts`Carry the reserve.`,
  drink: () => parts`Heat, illness and breakdowns multiply the need for water. Never ration drinking water.`,
  'treat-water': () => parts`Treat doubtful water. Filters and chlorine do not remove salt or chemicals.`,
  'fuel-cans': () => parts`Fuel cans: approved ones, not in the cabin, ventilated, within the local limits.`,
  masses: () => parts`Mind the vehicle's permitted mass and axle loads.`,
  'tell-somebody': () => parts`Leave the plan with somebody.`,
  'local-law': () => parts`Local law and licensed practice come first.`,
} satisfies Partial<Catalogue['reasons']>;
