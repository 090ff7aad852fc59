import type { GermClass, StageKind, TapUse } from '../../../contract/treatment.ts';

export const GERMS: Record<GermClass, string> = {
  bacteria: 'Bakterien',
  viruses: 'Viren',
  protozoa: 'Protozoen',
};

export const STAGES: Record<StageKind, string> = {
  sediment: 'Sedimentfilter',
  carbon: 'Kohlefilter',
  microfilter: 'Mikrofilter',
  ultrafilter: 'Ultrafilter',
  'reverse-osmosis': 'Umkehrosmose',
  uv: 'UV',
  chlorine: 'Chlor',
  boiling: 'Abkochen',
};

export const TAP_USES: Record<TapUse, string> = { drinking: 'Trinken', kitchen: 'Küche', shower: 'Dusche' };

/** A target by the name that a file gives it; "custom" is one of the user's own. */
const TARGETS: Readonly<Record<string, string>> = {
  purifier: 'Reiniger',
  'two-star': 'zwei Sterne',
  'three-star': 'drei Sterne',
  custom: 'eigenes',
};
export const targetWords = (name: string): string => TARGETS[name] ?? name;
