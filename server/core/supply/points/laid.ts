import type { Commodity } from '../../../contract/common.ts';
import { kmOf } from '../../quantity/rates.ts';

const LAID = 'laid/';

/**
 * Ids of supplies of the user's own, by what they are and where: "laid/water-480", and "laid/water-480-2" for the second
 * there. What is told of one stays with it when others are added or taken away.
 */
export function laidIds(laid: readonly { readonly commodity: Commodity; readonly atM: number }[]): string[] {
  const counts = new Map<string, number>();
  return laid.map(({ commodity, atM }) => {
    const id = `${LAID}${commodity}-${kmOf(atM)}`;
    const count = (counts.get(id) ?? 0) + 1;
    counts.set(id, count);
    return count === 1 ? id : `${id}-${count}`;
  });
}

/** Whether a supply is the user's own: a depot, what others bring, a second vehicle's cans. */
export const isLaid = ({ id }: { readonly id: string }): boolean => id.startsWith(LAID);

const NOTED = 'own/noted/';

/** The id among supplies of a point that the user noted at a place. */
export const ownPointId = ({ id }: { readonly id: string }): string => `${NOTED}${id}`;

/** Whether a supply is a point that the user noted at a place. */
export const isNotedPoint = ({ id }: { readonly id: string }): boolean => id.startsWith(NOTED);
