import { ENGLISH } from '../en/english.ts';
import type { Catalogue } from '../parts/catalogue.ts';
import { GAP_TERMS } from './gaps.ts';
import { PACE_CAUTIONS, PACE_PHRASES } from './pace.ts';
import { PLAN_CAUTIONS, PLAN_PHRASES } from './plan/plan.ts';
import { COMPARISON_CAUTIONS, WHAT_IF_CAUTIONS, WHAT_IF_PHRASES } from './plan/what-if.ts';
import { READER_CAUTIONS } from './readers.ts';
import { LINE_CAUTIONS, ROUTE_CAUTIONS } from './route.ts';
import { STANDING_REASONS } from './standing.ts';
import { SUPPLY_REASONS } from './supply.ts';
import { SUPPLY_KINDS } from './supply-kinds.ts';

/** Everything that is said, in German; what has no German yet is said in English. */
export const GERMAN: Catalogue = {
  ...ENGLISH,
  cautions: {
    ...ENGLISH.cautions,
    ...COMPARISON_CAUTIONS,
    ...LINE_CAUTIONS,
    ...PACE_CAUTIONS,
    ...PLAN_CAUTIONS,
    ...READER_CAUTIONS,
    ...ROUTE_CAUTIONS,
    ...WHAT_IF_CAUTIONS,
  },
  reasons: {
    ...ENGLISH.reasons,
    ...STANDING_REASONS,
    ...SUPPLY_REASONS,
  },
  phrases: {
    ...ENGLISH.phrases,
    ...GAP_TERMS,
    ...PACE_PHRASES,
    ...PLAN_PHRASES,
    ...SUPPLY_KINDS,
    ...WHAT_IF_PHRASES,
  },
};
