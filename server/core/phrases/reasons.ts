import type { LogOmissions } from './log.ts';
import type { FuelRules } from './rig/mass.ts';
import type { NoFacts, Said } from './said/said.ts';
import type { SupplyReasons } from './supply.ts';

/** What every answer warns of, whatever the route. */
interface StandingReasons {
  'planning-aid': NoFacts;
  'confirm-points': NoFacts;
  'carry-reserve': NoFacts;
  drink: NoFacts;
  'treat-water': NoFacts;
  'fuel-cans': NoFacts;
  masses: NoFacts;
  'tell-somebody': NoFacts;
  'local-law': NoFacts;
}

/** Every reason that is given with a code: its facts. */
export interface ReasonFacts extends FuelRules, StandingReasons, LogOmissions, SupplyReasons {}
export type Reason = Said<ReasonFacts>;
