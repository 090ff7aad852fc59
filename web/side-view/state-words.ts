import type { MassState, WorstFor } from '../../server/contract/vehicle.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';

const WORST_WORDS: Record<WorstFor, string> = {
  total: 'total',
  front: 'front axle',
  rear: 'rear axle',
  side: 'left against right',
  stability: 'stability',
};

/** A state of the masses in a few words: "at departure", "km 418, worst for total, rear axle". */
export function stateWords({ kind, atKm, worstFor }: MassState, units: UnitSystem): string {
  if (kind === 'departure') return 'at departure';
  if (kind === 'full') return 'all full, cans too';
  if (kind === 'empty') return 'nothing usable left';
  const place = atKm === null ? 'on the way' : formatAtKm(atKm, units);
  return `${place}, worst for ${worstFor.map((respect) => WORST_WORDS[respect]).join(', ')}`;
}
