import type { FuelKind } from '../../../contract/rig.ts';
import type { NoFacts, Phrased } from '../said/said.ts';

/** What cannot bear all that rests on it. */
export type Bearer = 'vehicle' | 'front' | 'rear';

/** How containers are named. */
interface ContainerNames {
  /** The user's own name for it. */
  'own-name': { name: string };
  'owned-cans': { commodity: 'fuel' | 'water'; owned: number; litres: number };
}
export type ContainerName = Phrased<ContainerNames>;

/** Examples of rules on carried fuel. */
export interface FuelRules {
  'adr-own-use-tanks': NoFacts;
  'adr-own-use-cans': NoFacts;
  'adr-private-can': NoFacts;
  'adr-private-cans': NoFacts;
  'adr-small-load-petrol': NoFacts;
  'adr-small-load-diesel': NoFacts;
  'uk-petrol-unnotified': NoFacts;
  'uk-petrol-can': NoFacts;
  'uk-petrol-notified': NoFacts;
  'us-materials-of-trade-can': NoFacts;
  'us-materials-of-trade': NoFacts;
}

/** Fuel that is carried against a rule. */
export interface CarriedAgainst {
  readonly code: keyof FuelRules;
  readonly carried: number;
  readonly limit: number;
  readonly unit: 'l' | 'kg';
  readonly source: string;
}

/** What to mind about the vehicle's masses. */
export interface MassCautions {
  'mass-over-limit': { bearer: Bearer; overKg: number };
  'mass-over-limit-full': { bearer: Bearer; overKg: number };
  'axle-lifts': { axle: 'front' | 'rear' };
  /** Paths in the rig. */
  'mass-incomplete': { missing: readonly string[] };
  'mass-limit-unknown': { missing: readonly string[] };
  'axle-lift-few': { steps: number };
  /** `cgHeightM`: with everything filled; null where it is not known. */
  'roof-load': { kg: number; limitKg: number | null; cgHeightM: number | null };
  'roof-over-limit': { kg: number; limitKg: number; cgHeightM: number | null };
  'rear-overhang': { kg: number; rearKg: number; frontKg: number };
  'behind-body': { names: readonly ContainerName[] };
  'fuel-in-cabin': { name: ContainerName };
  'carried-fuel': { over: readonly CarriedAgainst[] };
}

/** Labels of masses, and what a litre is taken to weigh. */
export interface MassPhrases extends ContainerNames {
  'kerb-mass': NoFacts;
  'kerb-driver': NoFacts;
  'kerb-filling': { of: ContainerName };
  'empty-container': { of: ContainerName };
  filling: { litres: number; of: ContainerName };
  rider: { kind: 'person' | 'pet' | 'gear' };
  water: NoFacts;
  'fuel-density-source': { kind: FuelKind };
  'water-density-source': NoFacts;
}
