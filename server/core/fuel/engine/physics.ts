import type { Surface } from '../../../contract/surface.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { GRAVITY_M_S2 } from './load.ts';

/** Density of air, kg/m³: about 20 °C at sea level (ours; heat and height thin it). */
const AIR_KG_M3 = 1.2;

interface Rolling {
  /** Rolling resistance as a share of the weight: bounds from the source, `typical` between them is ours. */
  coefficient: UseRange;
  source: string;
  trust: string;
}

/** Rolling resistance of pneumatic tyres by surface; F14 to F16 are rows of check-values with their addresses. */
export const ROLLING: Record<Exclude<Surface, 'unknown'>, Rolling> = {
  sealed: {
    coefficient: { low: 0.01, typical: 0.013, high: 0.02 },
    source: 'engineering table: concrete and new asphalt 0.010 to 0.015, asphalt 0.02',
    trust: 'Fair at steady speed; tyre pressure and tread shift it',
  },
  gravel: {
    coefficient: { low: 0.012, typical: 0.02, high: 0.04 },
    source: 'well-packed gravel 0.012 (Marks), rolled new gravel 0.02, loose worn gravel 0.04',
    trust: 'A hint: packed and loose gravel differ threefold, and corrugations are not in it',
  },
  track: {
    coefficient: { low: 0.02, typical: 0.04, high: 0.08 },
    source: 'between rolled gravel 0.02 and medium hard soil 0.04 to 0.08 (engineering table)',
    trust: 'A hint: ruts, low gears and stopping are not in it',
  },
  sand: {
    coefficient: { low: 0.04, typical: 0.12, high: 0.4 },
    source: 'solid sand 0.04 to 0.08, loose sand 0.2 to 0.4 (engineering table), sand 0.1 to 0.2 (Carvill)',
    trust:
      'Not to be trusted in soft sand: it hangs on tyre pressure, moisture and momentum more than on the table',
  },
  rock: {
    coefficient: { low: 0.02, typical: 0.03, high: 0.05 },
    source: 'engineering table: large worn cobbles 0.03; bounds ours',
    trust: 'Not to be trusted at walking pace in low gear: count litres per hour there',
  },
  mud: {
    coefficient: { low: 0.04, typical: 0.08, high: 0.2 },
    source:
      'medium hard soil 0.04 to 0.08 (engineering table, Carvill), wet loose gravel 0.06 (Marks); upper bound ours',
    trust: 'Not to be trusted: wheelspin and sinking in are not in it',
  },
  salt: {
    coefficient: { low: 0.015, typical: 0.03, high: 0.06 },
    source: 'ours',
    trust: 'Not to be trusted: a hard crust rolls like a road, a broken one like mud',
  },
};

/**
 * Rolling resistance of a car tyre on dry sealed road, and nowhere else: c = 0.005 + (1 / p)(0.01 + 0.0095 (v / 100)²)
 * with p in bar and v in km/h (engineering table, equation 3; check-values F20).
 */
export const tyreCoefficient = (bar: number, kmPerHour: number): number =>
  0.005 + (1 / bar) * (0.01 + 0.0095 * (kmPerHour / 100) ** 2);

/** Newtons that hold a vehicle back on the level at a steady speed. */
export function dragN(massKg: number, coefficient: number, dragAreaM2: number, kmPerHour: number): number {
  const metresPerSecond = kmPerHour / 3.6;
  return coefficient * massKg * GRAVITY_M_S2 + 0.5 * AIR_KG_M3 * dragAreaM2 * metresPerSecond ** 2;
}

/** Litres for 100 km against so many newtons. */
export const litresPer100KmAgainst = (newtons: number, efficiency: number, energyMJPerL: number): number =>
  (newtons * 100_000) / 1e6 / (efficiency * energyMJPerL);

export interface EstimateFacts {
  massKg: number;
  /** The user's own rate, l/100 km, and the surface on which it was observed (sealed where not told). */
  litresPer100Km: number;
  observed: Surface;
  efficiency: number;
  energyMJPerL: number;
  dragAreaM2: number;
  /** Pressure on sealed road; null where not told. */
  tyreBar: number | null;
  kmPerHour: (surface: Surface) => number;
}

/**
 * What physics makes of each surface, as multiples of the user's own rate: the rate on the surface where it was
 * observed stands, and the difference in rolling resistance and air drag at each surface's speed is added or taken
 * off. Null for `unknown`. Never below a third of the own rate: an engine burns fuel whatever it works against (ours).
 */
export function estimateFactors(facts: EstimateFacts): Record<Surface, UseRange | null> {
  const base: Rolled = facts.observed === 'unknown' ? 'sealed' : facts.observed;
  const speed = facts.kmPerHour;
  const newtons = (surface: Rolled, coefficient: number) =>
    dragN(facts.massKg, coefficient, facts.dragAreaM2, speed(surface));
  const baseN = newtons(base, coefficientsOf(base, facts).typical);
  const factorFor = (surface: Rolled, coefficient: number) => {
    const moreL = litresPer100KmAgainst(
      newtons(surface, coefficient) - baseN,
      facts.efficiency,
      facts.energyMJPerL,
    );
    return Math.max(1 / 3, 1 + moreL / facts.litresPer100Km);
  };
  const rowOf = (surface: Rolled): UseRange => {
    if (surface === base) return { low: 1, typical: 1, high: 1 };
    const { low, typical, high } = coefficientsOf(surface, facts);
    return {
      low: factorFor(surface, low),
      typical: factorFor(surface, typical),
      high: factorFor(surface, high),
    };
  };
  return {
    sealed: rowOf('sealed'),
    gravel: rowOf('gravel'),
    track: rowOf('track'),
    sand: rowOf('sand'),
    rock: rowOf('rock'),
    mud: rowOf('mud'),
    salt: rowOf('salt'),
    unknown: null,
  };
}

type Rolled = Exclude<Surface, 'unknown'>;

/** With the tyre pressure told, sealed road has one figure from the formula. */
function coefficientsOf(surface: Rolled, facts: EstimateFacts): UseRange {
  if (surface !== 'sealed' || facts.tyreBar === null) return ROLLING[surface].coefficient;
  const coefficient = tyreCoefficient(facts.tyreBar, facts.kmPerHour('sealed'));
  return { low: coefficient, typical: coefficient, high: coefficient };
}
