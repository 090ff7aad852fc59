import type { Commodity } from '../../contract/common.ts';
import type { LogCautions } from './log.ts';
import type { PlanCautions } from './plan.ts';
import type { NoFacts, Said } from './said.ts';
import type { WhatIfCautions } from './what-if.ts';

/** Cautions on the route and on what is aboard at its start. */
interface RouteCautions {
  'no-cover': { commodity: Commodity };
  'start-assumed-full': { commodity: Commodity };
  'onward-unknown': NoFacts;
  'camp-off-route': { name: string | null; offM: number };
  'stay-off-route': { atM: number };
}

/** Every caution that core and the readers give: its code, and what has to be known to say it. */
export interface CautionFacts extends RouteCautions, LogCautions, PlanCautions, WhatIfCautions {}

/** One that is still in words; goes as soon as all are said by code. */
export interface WordedCaution {
  readonly code: string;
  readonly text: string;
  readonly fromKm?: number;
  readonly toKm?: number;
}

/** A caution with the stretch of the route it speaks of, where it has one; metres along. */
export type CodedCaution = Said<CautionFacts> & { readonly fromM?: number; readonly toM?: number };
export type Caution = WordedCaution | CodedCaution;
export type CautionCode = keyof CautionFacts;
