import type { GermClass, TreatmentReport as ReportTold } from '../../../contract/treatment.ts';
import type { CodedCaution } from '../../phrases/cautions.ts';
import type { Term } from '../../quantity/term.ts';

export type TapReport = Omit<ReportTold['taps'][number], 'working'> & { readonly working: readonly Term[] };

export type CartridgeReport = Omit<ReportTold['cartridges'][number], 'working'> & {
  readonly working: readonly Term[];
};

/** What a treatment line does on a trip. */
export type TreatmentReport = Omit<ReportTold, 'taps' | 'cartridges' | 'cautions' | 'lacks'> & {
  /** Which classes fall short, and by how many log. */
  readonly lacks: readonly { readonly germs: GermClass; readonly log: number }[];
  readonly taps: readonly TapReport[];
  readonly cartridges: readonly CartridgeReport[];
  readonly cautions: readonly CodedCaution[];
};
