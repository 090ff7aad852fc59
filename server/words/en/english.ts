import type { Catalogue } from '../catalogue.ts';
import { CREW_CAUTIONS, CREW_PHRASES } from './crew.ts';
import { DEFAULT_REASONS, DEFAULT_VALUES } from './defaults.ts';
import { GAP_TERMS } from './gaps.ts';
import { LOG_CAUTIONS, LOG_OMISSIONS, LOG_PHRASES } from './log.ts';
import { LOG_FAULTS, logPlaceText } from './log-faults.ts';
import { MISFITS } from './misfits.ts';
import { PACE_CAUTIONS, PACE_PHRASES } from './pace.ts';
import { PLAN_CAUTIONS, PLAN_PHRASES } from './plan.ts';
import { ROUTE_CAUTIONS } from './route.ts';
import { STANDING_REASONS } from './standing.ts';
import { WHAT_IF_CAUTIONS, WHAT_IF_PHRASES } from './what-if.ts';

/** Everything that is said, in English. */
export const ENGLISH: Catalogue = {
  cautions: {
    ...ROUTE_CAUTIONS,
    ...PACE_CAUTIONS,
    ...LOG_CAUTIONS,
    ...PLAN_CAUTIONS,
    ...WHAT_IF_CAUTIONS,
    ...CREW_CAUTIONS,
  },
  reasons: { ...STANDING_REASONS, ...LOG_OMISSIONS },
  phrases: {
    ...GAP_TERMS,
    ...PACE_PHRASES,
    ...LOG_PHRASES,
    ...PLAN_PHRASES,
    ...WHAT_IF_PHRASES,
    ...CREW_PHRASES,
    ...DEFAULT_VALUES,
    ...DEFAULT_REASONS,
  },
  misfits: MISFITS,
  logFaults: LOG_FAULTS,
  logPlace: logPlaceText,
};
