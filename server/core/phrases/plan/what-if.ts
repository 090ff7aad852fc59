import type { Commodity } from '../../../contract/common.ts';
import type { NoFacts } from '../said/said.ts';
import type { PlaceName } from '../said/supply-kinds.ts';
import type { NamedPlace } from './plan.ts';

/** What the what-ifs could not reckon. */
export interface WhatIfCautions {
  'turn-round-off-route': { atM: number };
  'standing-fuel-not-told': NoFacts;
  'past-end-not-told': NoFacts;
  'mishap-before-bound-stop': NoFacts;
  'heat-not-told': NoFacts;
  'what-if-rows-left-out': { failures: number; rows: number };
}

/** What happens, steps of assumptions, and where to turn back. */
export interface WhatIfPhrases {
  /** `others` are objects of the stop that count and were not to be used. */
  'stop-gives-none': { commodity: Commodity; names: readonly PlaceName[]; others: number };
  /** `tank` null: a can. */
  'container-loses-all': { commodity: Commodity; tank: string | null };
  'water-pump-fails': { tanksApart: boolean; raw: boolean };
  waiting: { days: number };
  /** `rate`: litres per 100 km, of water litres a day. */
  'use-all-the-way': { commodity: Commodity; end: 'low' | 'typical' | 'high'; rate: number };
  'hotter-than-told': { byC: number; waterLPerDay: number | null };
  'treatment-line-fails': { waters: number };
  'treatment-line-fails-under-way': { name: PlaceName | null };
  'turning-round': { atM: number | null };
  'step-more-use': { percent: number };
  'step-slower': { percent: number };
  'step-more-allowance': { points: number };
  'step-hotter': { byC: number };
  'back-with-the-reserve': { commodity: Commodity; atM: number; backTo: NamedPlace };
}
