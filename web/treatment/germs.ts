import type { GermClass } from '../../server/contract/treatment.ts';

/** The compiler finds the missing row; the contract's own list would bring its schemas into the page. */
const EVERY: Record<GermClass, true> = { bacteria: true, viruses: true, protozoa: true };

/** The classes of germs that targets speak of. */
export const GERMS = Object.keys(EVERY) as GermClass[];
