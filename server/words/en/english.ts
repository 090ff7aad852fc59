import type { Catalogue } from '../catalogue.ts';
import { GAP_TERMS } from './gaps.ts';
import { LOG_CAUTIONS, LOG_OMISSIONS, LOG_PHRASES } from './log.ts';
import { LOG_FAULTS, logPlaceText } from './log-faults.ts';
import { MISFITS } from './misfits.ts';
import { PACE_CAUTIONS, PACE_PHRASES } from './pace.ts';
import { ROUTE_CAUTIONS } from './route.ts';
import { STANDING_REASONS } from './standing.ts';

/** Everything that is said, in English. */
export const ENGLISH: Catalogue = {
  cautions: { ...ROUTE_CAUTIONS, ...PACE_CAUTIONS, ...LOG_CAUTIONS },
  reasons: { ...STANDING_REASONS, ...LOG_OMISSIONS },
  phrases: { ...GAP_TERMS, ...PACE_PHRASES, ...LOG_PHRASES },
  misfits: MISFITS,
  logFaults: LOG_FAULTS,
  logPlace: logPlaceText,
};
