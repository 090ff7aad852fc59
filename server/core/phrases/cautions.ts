import type { Commodity } from '../../contract/common.ts';
import type { LogCautions } from './log.ts';
import type { NoteCautions } from './notes.ts';
import type { ComparisonCautions } from './plan/comparison.ts';
import type { PlanCautions } from './plan/plan.ts';
import type { WhatIfCautions } from './plan/what-if.ts';
import type { ReaderCautions } from './readers.ts';
import type { CrewCautions } from './rig/crew.ts';
import type { FuelCautions } from './rig/fuel.ts';
import type { MassCautions } from './rig/mass.ts';
import type { TreatmentCautions } from './rig/treatment.ts';
import type { LineCautions } from './route.ts';
import type { NoFacts, Said } from './said/said.ts';
import type { PlaceName } from './said/supply-kinds.ts';

/** Cautions on the route and on what is aboard at its start. */
interface RouteCautions {
  'no-cover': { commodity: Commodity };
  'start-assumed-full': { commodity: Commodity };
  'onward-unknown': NoFacts;
  'camp-off-route': { name: string | null; offM: number } | { pastEndAtM: number };
  'stay-off-route': { atM: number };
  'laid-off-route': { atM: number };
}

/** Cautions on days, nights and hours. Times are local, "2027-05-03T14:05". */
interface PaceCautions {
  'camp-twice': { atM: number; withinM: number };
  'camp-after-hours-late': { askedHours: number; rigHours: number };
  'opening-hours-unread': { name: PlaceName; hours: string };
  'opening-hours-unknown': { name: PlaceName; earliest: string; latest: string; why: string | null };
  'shut-on-arrival': {
    name: PlaceName;
    earliest: string;
    latest: string;
    /** The longest wait and the water that goes meanwhile; null where no opening is found. */
    wait: { hours: number; waterL: number } | null;
  };
  /** `emptied`: the water does not last; else the reserve is touched. */
  'night-may-fall-inside': { moreL: number; emptied: boolean };
}

/** Every caution that is given: its code, and what has to be known to say it. */
export interface CautionFacts
  extends TreatmentCautions,
    RouteCautions,
    LineCautions,
    PaceCautions,
    LogCautions,
    NoteCautions,
    PlanCautions,
    WhatIfCautions,
    CrewCautions,
    FuelCautions,
    MassCautions,
    ComparisonCautions,
    ReaderCautions {}

/** A caution with the stretch of the route it speaks of, where it has one; metres along. */
export type Caution = Said<CautionFacts> & { readonly fromM?: number; readonly toM?: number };
