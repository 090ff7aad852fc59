import type { Surface } from '../../../contract/surface.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { GRAVITY_M_S2 } from './load.ts';

type Rolled = Exclude<Surface, 'unknown'>;

/** Density of air, kg/m³: about 20 °C at sea level (ours; heat and height thin it). */
const AIR_KG_M3 = 1.2;

/**
 * Rolling resistance of pneumatic tyres by surface, as a share of the weight: bounds from the source, `typical` between
 * them is ours. F14 to F16 are rows of check-values with their addresses; sources and how far each can be trusted stand
 * with the words (fuel.ts of server/words), as people are told of them.
 */
export const ROLLING: Record<Rolled, UseRange> = {
  sealed: { low: 0.01, typical: 0.013, high: 0.02 },
  gravel: { low: 0.012, typical: 0.02, high: 0.04 },
  track: { low: 0.02, typical: 0.04, high: 0.08 },
  sand: { low: 0.04, typical: 0.12, high: 0.4 },
  rock: { low: 0.02, typical: 0.03, high: 0.05 },
  mud: { low: 0.04, typical: 0.08, high: 0.2 },
  salt: { low: 0.015, typical: 0.03, high: 0.06 },
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

/**
 * By how much more the typical rolling resistance of a surface is than where the rate was observed, share of the weight;
 * never less than nothing. Unknown ground is taken like gravel, and like the observed one where that is unknown too.
 */
export function moreRolling(surface: Surface, observed: Surface): number {
  if (surface === observed) return 0;
  const typical = (of: Surface, unknown: Rolled): number => ROLLING[of === 'unknown' ? unknown : of].typical;
  return Math.max(0, typical(surface, 'gravel') - typical(observed, 'sealed'));
}

/** With the tyre pressure told, sealed road has one figure from the formula. */
function coefficientsOf(surface: Rolled, facts: EstimateFacts): UseRange {
  if (surface !== 'sealed' || facts.tyreBar === null) return ROLLING[surface];
  const coefficient = tyreCoefficient(facts.tyreBar, facts.kmPerHour('sealed'));
  return { low: coefficient, typical: coefficient, high: coefficient };
}
