const LAID = 'laid/';

/** The id of a supply of the user's own, by its place in the trip's list, from 0. */
export const laidId = (index: number): string => `${LAID}${index + 1}`;

/** Whether a supply is the user's own: a depot, what others bring, a second vehicle's cans. */
export const isLaid = ({ id }: { readonly id: string }): boolean => id.startsWith(LAID);
