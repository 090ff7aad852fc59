import type { GermClass } from '../../../../contract/treatment.ts';

/** NSF/ANSI 55: class A at least 40 mJ/cm2 for clear contaminated water; class B (16) only for water fit to drink. */
export const UV_CLASS_A = 40;

/**
 * Doses at 254 nm, mJ/cm2, from which each half log is credited: US EPA, LT2ESWTR, 40 CFR 141.720 (d)(1), as the UV
 * Disinfection Guidance Manual has it. Protozoa: the larger of Cryptosporidium's and Giardia's; viruses: adenovirus.
 */
const LT2_DOSES: Record<'protozoa' | 'viruses', readonly number[]> = {
  protozoa: [1.6, 2.5, 3.9, 5.8, 8.5, 12, 15, 22],
  viruses: [39, 58, 79, 100, 121, 143, 163, 186],
};
/** Bacteria are not in that table: WHO's low end for lamps of class A (from memory). */
const BACTERIA_LOG = 3;

/** Log that a dose is credited with; below class A nothing but protozoa. */
export function uvLog(doseMJPerCm2: number, germs: GermClass): number {
  if (germs !== 'protozoa' && doseMJPerCm2 < UV_CLASS_A) return 0;
  if (germs === 'bacteria') return BACTERIA_LOG;
  return LT2_DOSES[germs].filter((dose) => dose <= doseMJPerCm2).length / 2;
}
