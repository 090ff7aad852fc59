import type { WorstFor } from '../../../contract/vehicle.ts';
import { column } from './shared/columns.ts';

const WORST: Record<WorstFor, string> = {
  total: 'total',
  front: 'front axle',
  rear: 'rear axle',
  side: 'left against right',
  stability: 'stability',
};

/** Words of the report of masses. Figures come in as they are set. */
export const MASS_WORDS = {
  stateColumns: {
    when: column('when'),
    fuel: column('fuel', 'l'),
    water: column('water', 'l'),
    total: column('total', 'kg'),
    payloadLeft: column('payload left', 'kg'),
    front: column('front', 'kg'),
    frontLeft: column('left', 'kg'),
    rear: column('rear', 'kg'),
    rearLeft: column('left', 'kg'),
    side: column('right - left', 'kg'),
    height: column('cg height', 'm'),
    stability: column('stability', 'track/2h'),
  },
  containerColumns: {
    container: column('container'),
    holds: column('holds', 'l'),
    full: column('full', 'kg'),
    front: column('front', 'kg'),
    rear: column('rear', 'kg'),
    litreFront: column('a litre: front', 'kg'),
    litreRear: column('rear', 'kg'),
  },
  head: 'Vehicle mass',
  density: (what: string, kgPerLitre: number, source: string) => `${what}: ${kgPerLitre} kg/l, ${source}`,
  noLimit: 'limit not told',
  limit: (kg: string) => `limit ${kg} kg`,
  roof: (kg: string, limit: string) => `on the roof, all full: ${kg} kg (${limit})`,
  behindRearAxle: (kg: string, { front, rear }: Record<'front' | 'rear', string>) =>
    `behind the rear axle, all full: ${kg} kg, which put ${front} kg on the front axle and ${rear} kg on the rear one`,
  states: { departure: 'at departure', full: 'tanks and cans full', empty: 'nothing usable left' },
  worst: (km: string, respects: readonly WorstFor[]) =>
    `km ${km}, worst for ${respects.map((respect) => WORST[respect]).join(', ')}`,
};
