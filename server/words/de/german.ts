import type { Catalogue } from '../parts/catalogue.ts';
import { GAP_TERMS } from './gaps.ts';
import { LOG_CAUTIONS, LOG_OMISSIONS, LOG_PHRASES } from './log.ts';
import { LOG_FAULTS, logPlaceText } from './log-faults.ts';
import { MISFITS } from './misfits.ts';
import { NOTE_CAUTIONS, NOTE_PHRASES } from './notes.ts';
import { PACE_CAUTIONS, PACE_PHRASES } from './pace.ts';
import { PLAN_CAUTIONS, PLAN_PHRASES } from './plan/plan.ts';
import { COMPARISON_CAUTIONS, WHAT_IF_CAUTIONS, WHAT_IF_PHRASES } from './plan/what-if.ts';
import { READER_CAUTIONS, READER_PHRASES } from './readers.ts';
import { CREW_CAUTIONS, CREW_PHRASES } from './rig/crew.ts';
import { DEFAULT_REASONS, DEFAULT_VALUES } from './rig/defaults.ts';
import { FUEL_CAUTIONS, FUEL_PHRASES } from './rig/fuel.ts';
import { FUEL_RULES, MASS_CAUTIONS, MASS_PHRASES } from './rig/mass.ts';
import { TREATMENT_CAUTIONS, TREATMENT_PHRASES } from './rig/treatment.ts';
import { STAGE_PHRASES } from './rig/treatment-stages.ts';
import { WATER_PHRASES } from './rig/treatment-waters.ts';
import { LINE_CAUTIONS, ROUTE_CAUTIONS, ROUTE_REFUSALS } from './route.ts';
import { STANDING_REASONS } from './standing.ts';
import { SUPPLY_REASONS } from './supply.ts';
import { SUPPLY_KINDS } from './supply-kinds.ts';

/** Everything that is said, in German: the compiler finds what is missing. */
export const GERMAN: Catalogue = {
  cautions: {
    ...COMPARISON_CAUTIONS,
    ...CREW_CAUTIONS,
    ...FUEL_CAUTIONS,
    ...LINE_CAUTIONS,
    ...LOG_CAUTIONS,
    ...MASS_CAUTIONS,
    ...NOTE_CAUTIONS,
    ...PACE_CAUTIONS,
    ...PLAN_CAUTIONS,
    ...READER_CAUTIONS,
    ...ROUTE_CAUTIONS,
    ...TREATMENT_CAUTIONS,
    ...WHAT_IF_CAUTIONS,
  },
  reasons: {
    ...LOG_OMISSIONS,
    ...FUEL_RULES,
    ...STANDING_REASONS,
    ...SUPPLY_REASONS,
  },
  phrases: {
    ...CREW_PHRASES,
    ...DEFAULT_REASONS,
    ...DEFAULT_VALUES,
    ...FUEL_PHRASES,
    ...GAP_TERMS,
    ...LOG_PHRASES,
    ...MASS_PHRASES,
    ...NOTE_PHRASES,
    ...PACE_PHRASES,
    ...PLAN_PHRASES,
    ...TREATMENT_PHRASES,
    ...READER_PHRASES,
    ...STAGE_PHRASES,
    ...SUPPLY_KINDS,
    ...WATER_PHRASES,
    ...WHAT_IF_PHRASES,
  },
  misfits: MISFITS,
  routeRefusals: ROUTE_REFUSALS,
  logFaults: LOG_FAULTS,
  logPlace: logPlaceText,
};
