import type { Position } from '../../server/contract/vehicle.ts';
import { optional, type PartItem, quantity } from '../form/items.ts';

/** Where something stands; `start` is where it is put at first, `whose`: "the tank's". */
export const positionItem = (start: Position, whose: string): PartItem => ({
  item: 'part',
  what: `${whose} place`,
  at: '/position',
  without: 'Place not told: axle loads cannot be reckoned.',
  start: { ...start },
  items: [
    quantity('Behind the front axle', '/behindFrontAxleM', 'length', {
      typical: start.behindFrontAxleM,
      hint: 'to its middle; negative ahead',
    }),
    quantity('Above the ground', '/heightM', 'length', { typical: start.heightM, hint: 'to its middle' }),
    optional('Right of the middle', '/sideM', 'length', 'negative on the left'),
  ],
});
