import type { UseLevel } from '../../../contract/crew.ts';
import type { UseRange } from '../../quantity/use-range.ts';

/** The uses of one person that a level tells and a person may set. */
export const PERSON_USES = ['drinking', 'cooking', 'washingUp', 'washing', 'shower'] as const;
export type PersonUse = (typeof PERSON_USES)[number];

export interface Level {
  /** Litres a day of one person, mild weather, at rest. */
  uses: Record<PersonUse, UseRange>;
  source: string;
}

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

/** Named levels of use. Where a source gives bounds only, the typical value is their middle (ours). */
export const LEVELS: Record<UseLevel, Level> = {
  emergency: {
    // A normally active person takes about 3/4 of the gallon as fluid; the rest is for sanitation.
    uses: {
      drinking: same(0.75 * US_GALLON_L),
      cooking: NONE,
      washingUp: NONE,
      washing: same(0.25 * US_GALLON_L),
      shower: NONE,
    },
    source: '1 US gallon (3.8 l) a person and day, 3/4 of it as fluid: US FEMA, Ready.gov, water',
  },
  basic: {
    uses: {
      drinking: SPHERE.drinking,
      cooking: SPHERE.cooking,
      washingUp: NONE,
      washing: SPHERE.hygiene,
      shower: NONE,
    },
    source:
      'basic survival needs 7.5 to 15 l a person and day: Sphere Handbook, water supply standard 1; washing up is in cooking',
  },
  careful: {
    uses: {
      drinking: litres(3, 3.75, 4.5),
      cooking: litres(1, 1.25, 1.5),
      washingUp: litres(0.5, 0.75, 0.75),
      washing: litres(0.5, 0.75, 0.75),
      shower: NONE,
    },
    source: '10 to 15 l a day for two people without shower: common practice, no source; the split is ours',
  },
  plenty: {
    uses: {
      drinking: SPHERE.drinking,
      cooking: litres(3, 4.5, 6),
      washingUp: litres(1, 1.75, 2),
      washing: litres(2, 4, 6),
      shower: litres(4, 7, 8),
    },
    source:
      '20 l a person and day: WHO/WEDC technical note 9, "as soon as possible"; the split and the high end are ours',
  },
};

/** Used for a person of whom no level is told (ours). */
export const DEFAULT_LEVEL: UseLevel = 'careful';
/** Of a person's washing so much is for teeth, hands before food and wounds: drinking grade, litres a day (ours). */
export const TEETH_AND_HANDS_L = 1;
