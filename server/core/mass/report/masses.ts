import type { Position, WorstFor } from '../../../contract/vehicle.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { ContainerName, FuelRules } from '../../phrases/rig/mass.ts';
import type { Term } from '../../quantity/term.ts';

/** An axle's load against its limit; negative `leftKg`: over it. */
export interface AxleLoad {
  readonly kg: number;
  readonly limitKg: number | null;
  readonly leftKg: number | null;
}

/** The loaded vehicle at one moment. What is null could not be told from what the rig says. */
export interface MassState {
  /** `departure`; `full`: all tanks and all owned cans; `empty`: nothing usable left; `along`: a worst place on the way. */
  readonly kind: 'departure' | 'full' | 'empty' | 'along';
  /** Among all places of the route; only of `along`. */
  readonly worstFor: readonly WorstFor[];
  readonly atM: number | null;
  /** Usable litres aboard, cans included. */
  readonly fuelL: number;
  readonly waterL: number;
  readonly totalKg: number;
  /** Permitted less total; negative: over it. */
  readonly payloadLeftKg: number | null;
  readonly front: AxleLoad | null;
  readonly rear: AxleLoad | null;
  /** On the right wheels less on the left ones. */
  readonly sideKg: number | null;
  readonly cgHeightM: number | null;
  /** Static stability factor: track / (2 × height of the centre of gravity). */
  readonly stabilityFactor: number | null;
}

/** What one tank, or the cans of one commodity together, do to the vehicle. */
export interface ContainerEffect {
  /** In the rig file: "/fuel/tanks/0", "/water/cans". */
  readonly path: string;
  readonly name: ContainerName;
  readonly commodity: 'fuel' | 'water';
  readonly fixed: boolean;
  /** When filled as far as it may be. */
  readonly litres: number;
  readonly unusableLitres: number;
  /** Mass added to the vehicle's own by the container itself; 0 for a tank that the kerb mass includes. */
  readonly emptyKg: number;
  readonly kgPerLitre: number;
  readonly position: Position | null;
  readonly marking: string | null;
  /** Added by one litre. */
  readonly perLitre: {
    readonly frontKg: number;
    readonly rearKg: number;
    readonly sideKg: number | null;
  } | null;
  /** Added by it and a filling, to the vehicle with all containers empty and without this one. */
  readonly whenFull: {
    readonly totalKg: number;
    readonly frontKg: number | null;
    readonly rearKg: number | null;
    readonly sideKg: number | null;
    readonly cgHeightM: number | null;
    readonly stabilityFactor: number | null;
  };
}

/** What is carried against a rule of some country: an example, the rules of the place come first. */
export type FuelLimit = {
  readonly [Code in keyof FuelRules]: {
    readonly code: Code;
    readonly facts: FuelRules[Code];
    readonly carried: number;
    readonly limit: number;
    readonly unit: 'l' | 'kg';
    readonly over: boolean;
    readonly source: string;
  };
}[keyof FuelRules];

/** What the loaded vehicle weighs, and where. */
export interface MassReport {
  /** Departure, full, empty, then the worst places along the route in its order. */
  readonly states: readonly MassState[];
  readonly containers: readonly ContainerEffect[];
  /** Null where the roof's height is not told. */
  readonly roof: { readonly kg: number; readonly limitKg: number | null } | null;
  /** Behind the rear axle when full: its mass, and what it does to the axles. */
  readonly behindRearAxle: {
    readonly kg: number;
    readonly frontKg: number;
    readonly rearKg: number;
  } | null;
  readonly fuelLimits: readonly FuelLimit[];
  /** What a litre is taken to weigh, and who says so. */
  readonly densities: readonly Density[];
  /** Paths in the rig of what is missing for a figure that is null. */
  readonly missing: readonly string[];
  /** What the figures at departure were summed from. */
  readonly working: Readonly<Record<'totalKg' | 'frontKg' | 'rearKg', readonly Term[]>>;
}

export interface Density {
  readonly what: Phrase;
  readonly kgPerLitre: number;
  readonly source: Phrase;
}
