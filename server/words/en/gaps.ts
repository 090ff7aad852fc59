import type { Catalogue } from '../catalogue.ts';
import { parts } from '../part.ts';

/** Labels of the terms of a gap. */
export const GAP_TERMS = {
  'along-the-route': () => parts`along the route`,
  'back-to-the-route': () => parts`from the supply back to the route`,
  'failing-supply-and-back': () => parts`to a supply that fails, and back`,
  'to-the-supply': () => parts`from the route to the supply`,
  'past-the-end': () => parts`past the end of the route`,
  'allowance-for-bends': ({ straightLines }) =>
    parts`allowance for bends${straightLines ? ' and straight lines' : ''}`,
} satisfies Partial<Catalogue['phrases']>;
