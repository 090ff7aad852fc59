import { GRAVITY_M_S2 } from './load.ts';

/** Energy to lift a mass, MJ: m g h. */
export const liftMJ = (massKg: number, riseM: number): number => (massKg * GRAVITY_M_S2 * riseM) / 1e6;

/** Litres that lifting takes: m g h / (efficiency × energy of a litre). */
export const liftL = (massKg: number, riseM: number, efficiency: number, energyMJPerL: number): number =>
  liftMJ(massKg, riseM) / (efficiency * energyMJPerL);
