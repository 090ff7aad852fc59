import { type FormItem, says, tick, when } from '../form/items.ts';
import { cans, tanks } from './container-items.tsx';
import { ratesOfUse, reserve, shareOfNeed } from './use-items.ts';

/** What is used in a day, held and kept. */
export const WATER_ITEMS: readonly FormItem[] = [
  when(
    ({ said }) => said.rig.crew === undefined,
    ratesOfUse('All aboard use', '/water/litresPerDay', 'waterUse'),
  ),
  when(
    ({ said }) => said.rig.crew !== undefined,
    [says('What all aboard use stands under “Crew and heat”, below.')],
  ),
  tanks('water'),
  cans('water'),
  reserve('water', { key: 'days', words: 'days of drinking', kind: 'days', start: 2 }),
  shareOfNeed('water'),
  tick('Rope and bucket aboard, for wells without a pump', '/equipment/ropeAndBucket'),
];
