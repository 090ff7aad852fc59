import type { Catalogue } from '../catalogue.ts';
import { GAP_TERMS } from './gaps.ts';
import { MISFITS } from './misfits.ts';
import { ROUTE_CAUTIONS } from './route.ts';
import { STANDING_REASONS } from './standing.ts';

/** Everything that is said, in English. */
export const ENGLISH: Catalogue = {
  cautions: { ...ROUTE_CAUTIONS },
  reasons: { ...STANDING_REASONS },
  phrases: { ...GAP_TERMS },
  misfits: MISFITS,
};
