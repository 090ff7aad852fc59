import type { PressureDrop } from '../../../../contract/treatment.ts';

/** Water at 20 °C, kg/m3 and m2/s (check against the Darcy-Weisbach example). */
const DENSITY = 998.2;
const VISCOSITY = 1.0034e-6;
/** Roughness of a smooth hose, metres. */
const ROUGHNESS_M = 1.5e-6;
/** Below this Reynolds number flow is laminar (textbook). */
const LAMINAR_BELOW = 2300;

export interface Hose {
  lengthM: number;
  boreMm: number;
}

/** Speed of the water in a hose, metres per second. */
export const hoseSpeed = (hose: Hose, lPerMin: number): number =>
  lPerMin / 60_000 / ((Math.PI / 4) * (hose.boreMm / 1000) ** 2);

/**
 * Pressure lost in a smooth hose, kPa: Darcy-Weisbach, dp = f (L/D) rho v2/2, with Swamee and Jain's factor for turbulent
 * and 64/Re for laminar flow. Water at 20 °C; bends and couplings are not in it.
 */
export function hoseDropKPa(hose: Hose, lPerMin: number): number {
  if (lPerMin <= 0) return 0;
  const boreM = hose.boreMm / 1000;
  const speed = hoseSpeed(hose, lPerMin);
  const reynolds = (speed * boreM) / VISCOSITY;
  // With 64/Re the speed stands once only: written so that next to no flow loses next to nothing.
  if (reynolds < LAMINAR_BELOW) return (32 * VISCOSITY * DENSITY * hose.lengthM * speed) / boreM ** 2 / 1000;
  const factor = 0.25 / Math.log10(ROUGHNESS_M / (3.7 * boreM) + 5.74 / reynolds ** 0.9) ** 2;
  return (factor * (hose.lengthM / boreM) * DENSITY * speed ** 2) / 2 / 1000;
}

/**
 * Head lost by Hazen and Williams's formula in SI, metres of water: for comparison only, it is poor for bores below
 * 50 mm. `roughness` is their C.
 */
export const hazenWilliamsM = (hose: Hose, lPerMin: number, roughness: number): number =>
  (10.67 * hose.lengthM * (lPerMin / 60_000) ** 1.852) /
  (roughness ** 1.852 * (hose.boreMm / 1000) ** 4.8704);

/** How a drop stated at one flow grows with the flow. */
export type DropLaw = 'linear' | 'square';

/** A stated drop at another flow, kPa: through a filter in proportion (Darcy's law), through fittings by the square. */
export const dropKPa = (drop: PressureDrop, law: DropLaw, lPerMin: number): number =>
  drop.kPa * (lPerMin / drop.atLPerMin) ** (law === 'linear' ? 1 : 2);

export interface Pump {
  noFlowKPa: number;
  ratedKPa: number;
  ratedLPerMin: number;
}

/** Pressure of a pump at a flow: a straight line between its two stated points, kPa. */
export const pumpKPa = (pump: Pump, lPerMin: number): number =>
  pump.noFlowKPa - ((pump.noFlowKPa - pump.ratedKPa) * lPerMin) / pump.ratedLPerMin;

/** Halvings of the interval: leaves less than a billionth of it. */
const HALVINGS = 40;

/**
 * The flow at which a pump and what the line takes are in balance, litres per minute, at most the pump's rated flow:
 * beyond that its line is not stated. `lostKPa` rises with the flow or stays.
 */
export function balancedFlow(pump: Pump, lostKPa: (lPerMin: number) => number): number {
  const spare = (flow: number) => pumpKPa(pump, flow) - lostKPa(flow);
  if (spare(pump.ratedLPerMin) >= 0) return pump.ratedLPerMin;
  let low = 0;
  let high = pump.ratedLPerMin;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (spare(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
}
