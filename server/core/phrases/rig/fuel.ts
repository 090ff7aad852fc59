import type { FuelKind } from '../../../contract/rig.ts';
import type { Surface } from '../../../contract/surface.ts';
import type { NoFacts, Phrased } from '../said/said.ts';

/** What to know of the fuel of a trip. */
export interface FuelCautions {
  'surface-off-route': { fromM: number };
  'elevation-absurd': { count: number };
  /** Metres of the route without elevations; null where it has none at all. */
  'climb-unknown': { m: number | null };
  'climb-not-reckoned': { upM: number };
  'load-not-reckoned': NoFacts;
  /** Null where no class of the standard is made for that night. */
  'cold-diesel': { nightC: number; arctic: { name: string; pluggingC: number } | null };
  'cng-kilograms': { tanksKg: number; kgPer100Km: number; kgPerLitre: number };
  'urea-short': { longestM: number; rangeM: number; shortL: number };
}

/** At which rate a surface is driven. */
interface RatePhrases {
  'rate-by-hour': { litresPerHour: number; kmPerHour: number };
  'rate-by-distance': { litresPer100Km: number; surfaceFactor: number; loadFactor: number };
}
export type RatePhrase = Phrased<RatePhrases>;

/** Labels of litres, names of fuels, and how far estimates can be trusted. */
export interface FuelPhrases extends RatePhrases {
  'way-at-rate': { wayM: number; surface: Surface; rate: RatePhrase };
  climbs: { kg: number };
  'by-the-hour': NoFacts;
  'less-where-lighter': NoFacts;
  'fuel-kind': { kind: FuelKind };
  'fuel-kind-source': { kind: FuelKind };
  'rolling-trust': { surface: Surface };
  can: NoFacts;
}
