import type { Position } from '../../server/contract/vehicle.ts';
import { optional, type PartItem, quantity } from '../form/items.ts';
import { t } from '../language/t.ts';

/** Where something stands; `start` is where it is put at first, `whose`: "the tank's". */
export const positionItem = (start: Position, whose: string): PartItem => ({
  item: 'part',
  what: t`${whose} place`,
  at: '/position',
  without: t('Place not told: axle loads cannot be reckoned.'),
  start: { ...start },
  items: [
    quantity(t('Behind the front axle'), '/behindFrontAxleM', 'length', {
      typical: start.behindFrontAxleM,
      hint: t('to its middle; negative ahead'),
    }),
    quantity(t('Above the ground'), '/heightM', 'length', {
      typical: start.heightM,
      hint: t('to its middle'),
    }),
    optional(t('Right of the middle'), '/sideM', 'length', t('negative on the left')),
  ],
});
