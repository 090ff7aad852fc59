import type { MassState, WorstFor } from '../../server/contract/vehicle.ts';
import { t } from '../language/t.ts';
import { formatAtKm, type UnitSystem } from '../units/units.ts';

const WORST_WORDS: Record<WorstFor, string> = {
  total: t('total'),
  front: t('front axle'),
  rear: t('rear axle'),
  side: t('left against right'),
  stability: t('stability'),
};

/** A state of the masses in a few words: "at departure", "km 418, worst for total, rear axle". */
export function stateWords({ kind, atKm, worstFor }: MassState, units: UnitSystem): string {
  if (kind === 'departure') return t('at departure');
  if (kind === 'full') return t('all full, cans too');
  if (kind === 'empty') return t('nothing usable left');
  const place = atKm === null ? t('on the way') : formatAtKm(atKm, units);
  return t`${place}, worst for ${worstFor.map((respect) => WORST_WORDS[respect]).join(', ')}`;
}
