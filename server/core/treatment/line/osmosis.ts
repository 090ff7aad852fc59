import { pumpKPa } from './flow/hydraulics.ts';
import type { MembraneFault, Stage, Treatment } from './treatment.ts';

/** Gas constant, J/(mol K), and grams of salt in a mole of NaCl, which gives two ions (CODATA; IUPAC). */
const GAS_CONSTANT = 8.314462618;
const NACL_G_PER_MOL = 58.44;
const IONS = 2;
const ZERO_C_IN_K = 273.15;
/** Where nobody measured: warm water asks for more pressure, °C (ours). */
const WARM_C = 30;
/** Milligrams of salt in a litre for each microsiemens per centimetre: 0.5 to 0.7, the high end (from memory). */
const TDS_PER_CONDUCTIVITY = 0.7;

/** Salt of a water, mg/l, as noted or from its conductivity; null where neither was measured. */
export function tdsOf(
  note: { tdsMgPerLitre?: number; conductivityMicroSPerCm?: number } | null,
): number | null {
  if (note?.tdsMgPerLitre !== undefined) return note.tdsMgPerLitre;
  const conductivity = note?.conductivityMicroSPerCm;
  return conductivity === undefined ? null : conductivity * TDS_PER_CONDUCTIVITY;
}

/**
 * Osmotic pressure, kPa, by van 't Hoff: i c R T, all salt taken as NaCl. For seawater of 35 g/l at 25 °C 2,970 kPa,
 * some tenth above what is measured.
 */
export const osmoticKPa = (tdsMgPerLitre: number, temperatureC: number): number =>
  (IONS * (tdsMgPerLitre / NACL_G_PER_MOL) * GAS_CONSTANT * (temperatureC + ZERO_C_IN_K)) / 1000;

/** Whether a membrane presses the salt out, and the figures: what holds against the pump is the salt left behind. */
export interface Pressing {
  readonly tdsMgPerLitre: number;
  readonly osmoticKPa: number;
  readonly pumpKPa: number;
}

/** What the pump has against the salt of what the membrane leaves: concentrated by its recovery. */
export function pressingOf(
  line: Treatment,
  membrane: Stage,
  water: { tdsMgPerLitre: number; temperatureC: number | null },
): Pressing | null {
  if (line.pump === null) return null;
  const recovery = Math.min(membrane.recovery ?? 0, 0.99);
  // The pump gives the feed: what the membrane makes and what it throws away.
  const feedLPerMin = recovery === 0 ? 0 : (membrane.flowLPerMin ?? 0) / recovery;
  const flowLPerMin = Math.min(feedLPerMin, line.pump.ratedLPerMin);
  return {
    tdsMgPerLitre: water.tdsMgPerLitre,
    osmoticKPa: osmoticKPa(water.tdsMgPerLitre / (1 - recovery), water.temperatureC ?? WARM_C),
    pumpKPa: pumpKPa(line.pump, flowLPerMin),
  };
}

/** The fault of a stage in its line; null for one that has none, and for all other kinds. */
export function membraneFault(stages: readonly Pick<Stage, 'kind'>[], index: number): MembraneFault | null {
  if (stages[index]?.kind !== 'reverse-osmosis') return null;
  const before = stages.slice(0, index).map(({ kind }) => kind);
  const carbon = before.lastIndexOf('carbon');
  if (before.lastIndexOf('chlorine') > carbon) return 'chlorine-before';
  return carbon < 0 ? 'no-carbon' : null;
}
