import type { Commodity } from '../../../contract/common.ts';

export const otherOf = (commodity: Commodity): Commodity => (commodity === 'fuel' ? 'water' : 'fuel');

/** The same of each commodity. */
export const byCommodity = <T>(of: (commodity: Commodity) => T): Record<Commodity, T> => ({
  fuel: of('fuel'),
  water: of('water'),
});
