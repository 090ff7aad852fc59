import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { NoFacts } from '../said/said.ts';
import type { PlaceName, SupplyKind } from '../said/supply-kinds.ts';

/** A supply, start or end that a sentence names; metres along the route. */
export interface NamedPlace {
  readonly kind: 'start' | 'passing' | 'end';
  readonly name: PlaceName | null;
  readonly atM: number;
}

/** A stop that a caution concerns: by its name, or where it has none by its kind and its place. */
export type NamedStop = { readonly name: string } | { readonly kind: SupplyKind; readonly atM: number };

interface ConcernedStops {
  readonly stops: readonly NamedStop[];
}

/** What a carry plan rests on that is not known, and what was left out of the looking. */
export interface PlanCautions {
  'water-not-planned': NoFacts;
  'fuel-not-planned': NoFacts;
  'plan-lets-go': { commodity: Commodity; litres: number };
  'plan-across-no-data': { commodity: Commodity };
  'plan-across-sketch': { commodity: Commodity };
  'plan-cans-at-start': { commodity: Commodity; cans: number };
  'plan-waits-for-opening': { name: PlaceName | null; hours: number };
  'plan-weak-evidence': { name: PlaceName | null; evidence: Evidence };
  'plan-onward-unknown': { commodity: Commodity };
  'plan-ways-left-out': NoFacts;
  'plan-cans-to-get': { commodity: Commodity; cans: number; owned: number };
  'plan-supplies-left-out': { commodity: Commodity; passings: number; lookedAt: number; withinM: number };
  'can-place-unknown': { commodity: Commodity };
  'plan-stop-unknown': ConcernedStops;
  'plan-must-stop-uncounted': ConcernedStops;
  'plan-stop-shut': ConcernedStops;
  'plan-treats-too-little': ConcernedStops;
  'plan-flow-unknown': ConcernedStops;
  'plan-night-at-supply': { name: PlaceName | null };
  'plan-flows-too-little': ConcernedStops;
  'plan-untreated-water': ConcernedStops;
}

/** A supply laid beforehand. */
export interface LaidDepot {
  readonly commodity: Commodity;
  readonly cans: number;
  readonly litres: number;
  readonly atM: number;
  /** Where it is laid at the latest place that is reached from there with the reserve. */
  readonly latestFrom: NamedPlace | null;
}

/** A stop off the plan by which it can be done. */
export interface OtherStop {
  readonly name: string | null;
  readonly kind: SupplyKind;
  readonly commodity: Commodity;
  readonly atM: number;
  readonly detourM: number;
  readonly counts: boolean;
}

/** Why there is no plan, and with what there would be one. */
export interface PlanPhrases {
  'stretch-lacks': {
    commodity: Commodity;
    from: NamedPlace;
    to: NamedPlace;
    missingL: number;
    cans: number;
    /** Aboard, where it begins at the start and the tanks are not full there; else null. */
    startL: number | null;
    littleLeftOut: boolean;
  };
  'masses-forbid': NoFacts;
  /** `lessL`: litres less at the start that bring it down; null where they do not. */
  'over-at-start': {
    mass: 'total' | 'front' | 'rear';
    overKg: number;
    lessL: Readonly<Record<Commodity, number | null>>;
  };
  'detours-forbid': NoFacts;
  'together-not-found-out': NoFacts;
  'plans-hang-on': { names: readonly (PlaceName | null)[]; atM: number };
  'with-filling-first': { fills: readonly { commodity: Commodity; litres: number }[] };
  'with-more-cans': { cans: readonly { commodity: Commodity; count: number }[]; moreKg: number };
  'with-less-washing': { cutPercent: number; savedL: number };
  'with-longer-days': { hours: number; insteadOfHours: number };
  'with-depots': { depots: readonly LaidDepot[] };
  'by-other-stops': { stops: readonly OtherStop[] };
}
