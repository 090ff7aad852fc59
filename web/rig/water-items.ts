import { type FormItem, says, tick, when } from '../form/items.ts';
import { t } from '../language/t.ts';
import { cans, tanks } from './container-items.tsx';
import { ratesOfUse, reserve, shareOfNeed } from './use-items.ts';

/** What is used in a day, held and kept. */
export const WATER_ITEMS: readonly FormItem[] = [
  when(
    ({ said }) => said.rig.crew === undefined,
    ratesOfUse(t('All aboard use'), '/water/litresPerDay', 'waterUse'),
  ),
  when(
    ({ said }) => said.rig.crew !== undefined,
    [says(t('What all aboard use stands under “Crew and heat”, below.'))],
  ),
  tanks('water'),
  cans('water'),
  reserve('water', { key: 'days', words: t('days of drinking'), kind: 'days', start: 2 }),
  shareOfNeed('water'),
  tick(t('Rope and bucket aboard, for wells without a pump'), '/equipment/ropeAndBucket'),
];
