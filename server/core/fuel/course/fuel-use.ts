import type { Surface } from '../../../contract/surface.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { Term } from '../../quantity/term.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { Rate } from './fuel-facts.ts';

/** How far one full load of the fixed tanks goes: to the last drop, and to the reserve. */
export interface FuelRange {
  readonly litresPer100Km: number;
  readonly beforeM: number;
  readonly afterM: number;
}

/** One row of the surfaces: what is reckoned with, and beside it what physics would say. */
export interface SurfaceRow {
  readonly surface: Surface;
  /** Metres of this route. */
  readonly m: number;
  readonly allowancePercent: number;
  /** Multiple of the use on sealed road, and who says so. */
  readonly tableFactor: number;
  readonly from: 'rig' | 'ours';
  /** Multiple of the user's own rate: the table's factor over that of the surface where the rate was observed. */
  readonly factor: number;
  /** The same multiple from rolling resistance and air drag; null where the mass is not told. */
  readonly estimate: UseRange | null;
  readonly trust: Phrase;
}

/** Mass reckoned with against the mass at which the rate was observed. */
export interface LoadRow {
  readonly massKg: number;
  readonly observedKg: number;
  readonly percentPer100Kg: number;
  readonly factor: number;
}

export interface ClimbRow {
  readonly upM: number;
  readonly downM: number;
  /** Before smoothing. */
  readonly rawUpM: number;
  readonly thresholdM: number;
  readonly efficiency: number;
  readonly giveBack: number;
  /** Null where the mass is not told: then no climb is reckoned. */
  readonly litres: number | null;
}

/** How far a container may be filled cool so that it is not full when hot, and by how much its filling grows. */
export interface FillingRow {
  readonly name: Phrase;
  readonly litres: number;
  /** As reckoned with. */
  readonly fillPercent: number;
  /** Highest filling at 15 °C for packagings of dangerous goods, by expansion (ADR 4.1.1.4 (b)). */
  readonly safePercent: number;
  /** The same by where the fuel begins to boil (ADR 4.1.1.4 (a)): either rule may be kept to. */
  readonly boilingPercent: number;
  /** Litres by which a full container's filling grows from 15 to 50 °C. */
  readonly growsL: number;
}

export interface UreaUse {
  readonly needL: number;
  readonly tankL: number;
  /** What must still be in it. */
  readonly reserveL: number;
  readonly rangeM: number;
  /** The longest way between places that sell it, start and end included; the start is taken as full. */
  readonly longestM: number;
  /** Missing on that way. */
  readonly shortL: number;
  readonly points: readonly {
    readonly id: string;
    readonly name: string | null;
    readonly atM: number;
    readonly detourM: number;
  }[];
}

/** The fuel of a trip in full: what the litres were reckoned with and how far they go. */
export interface FuelUse {
  /** `even`: one rate all the way, as nothing more was said. `full`: by surface, load, climb and hour. */
  readonly model: 'even' | 'full';
  /** At the rig's own rate, on the surface and with the load at which it was observed. */
  readonly range: Readonly<Record<Rate, FuelRange>>;
  /** At the mean rate of this route, allowance and all terms included. */
  readonly onRoute: Readonly<Record<Rate, FuelRange>>;
  /** Litres of the whole route. */
  readonly routeL: UseRange;
  /** What the litres of the whole route were summed from, at the rate the verdict uses. */
  readonly terms: readonly Term[];
  readonly observed: { readonly surface: Surface; readonly massKg: number | null };
  readonly surfaces: readonly SurfaceRow[];
  /** Null where the observed mass was not told. */
  readonly load: LoadRow | null;
  /** Null where the route has no elevations. */
  readonly climb: ClimbRow | null;
  readonly fuel: {
    readonly label: Phrase;
    readonly densityKgPerM3: UseRange;
    readonly energyMJPerL: UseRange;
    readonly source: Phrase;
  };
  /** Liquids only. */
  readonly filling: readonly FillingRow[];
  readonly urea: UreaUse | null;
}
