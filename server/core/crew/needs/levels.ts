import type { UseLevel } from '../../../contract/crew.ts';
import type { UseRange } from '../../quantity/use-range.ts';

/** The uses of one person that a level tells and a person may set. */
export const PERSON_USES = ['drinking', 'cooking', 'washingUp', 'washing', 'shower'] as const;
export type PersonUse = (typeof PERSON_USES)[number];

/** Litres a day of one person, mild weather, at rest. */
export type Level = Readonly<Record<PersonUse, UseRange>>;

/** A US gallon, litres (exact by definition: 231 cubic inches). */
const US_GALLON_L = 3.785411784;
/** A US quart, litres. */
export const US_QUART_L = US_GALLON_L / 4;

const litres = (low: number, typical: number, high: number): UseRange => ({ low, typical, high });
const same = (value: number): UseRange => litres(value, value, value);
const NONE = same(0);

/** Sphere Handbook, water supply standard 1, "Basic survival water needs" (2004, 2011). Middles are ours. */
const SPHERE = {
  drinking: litres(2.5, 2.75, 3),
  hygiene: litres(2, 4, 6),
  cooking: litres(3, 4.5, 6),
};

/**
 * Named levels of use. Where a source gives bounds only, the typical value is their middle (ours). Sources: US FEMA,
 * Ready.gov (emergency: 1 US gallon, 3/4 of it as fluid, the rest for sanitation); Sphere Handbook, water supply
 * standard 1 (basic: 7.5 to 15 l); common practice, 10 to 15 l a day for two people without shower (careful; the split
 * is ours); WHO/WEDC technical note 9, 20 l (plenty; the split and the high end are ours).
 */
export const LEVELS: Record<UseLevel, Level> = {
  emergency: {
    drinking: same(0.75 * US_GALLON_L),
    cooking: NONE,
    washingUp: NONE,
    washing: same(0.25 * US_GALLON_L),
    shower: NONE,
  },
  basic: {
    drinking: SPHERE.drinking,
    cooking: SPHERE.cooking,
    // Washing up is in cooking.
    washingUp: NONE,
    washing: SPHERE.hygiene,
    shower: NONE,
  },
  careful: {
    drinking: litres(3, 3.75, 4.5),
    cooking: litres(1, 1.25, 1.5),
    washingUp: litres(0.5, 0.75, 0.75),
    washing: litres(0.5, 0.75, 0.75),
    shower: NONE,
  },
  plenty: {
    drinking: SPHERE.drinking,
    cooking: litres(3, 4.5, 6),
    washingUp: litres(1, 1.75, 2),
    washing: litres(2, 4, 6),
    shower: litres(4, 7, 8),
  },
};

/** Of a person's washing so much is for teeth, hands before food and wounds: drinking grade, litres a day (ours). */
export const TEETH_AND_HANDS_L = 1;
