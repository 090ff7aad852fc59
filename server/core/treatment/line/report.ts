import type {
  GermClass,
  Logs,
  TreatmentReport as ReportTold,
  SourceKind,
  StageKind,
} from '../../../contract/treatment.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { WaterLack, WaterRemark } from '../../phrases/rig/treatment-waters.ts';
import type { Term } from '../../quantity/term.ts';
import type { Hazard } from './hazards.ts';
import type { StageEffect } from './stage-effect.ts';

export type TapReport = Omit<ReportTold['taps'][number], 'working'> & { readonly working: readonly Term[] };

export type CartridgeReport = Omit<ReportTold['cartridges'][number], 'working'> & {
  readonly working: readonly Term[];
};

type StageReport = Pick<StageEffect, 'name' | 'logs' | 'why'> & { readonly kind: StageKind };

interface SourceReport {
  readonly kind: SourceKind;
  readonly treatable: boolean;
  readonly hazard: Hazard;
  readonly logs: Logs;
  /** What to know where the line makes it fit; else what lacks. */
  readonly reasons: readonly (WaterLack | WaterRemark)[];
}

/** What a treatment line does on a trip. */
export type TreatmentReport = Omit<
  ReportTold,
  'stages' | 'taps' | 'cartridges' | 'sources' | 'cautions' | 'lacks'
> & {
  /** Which classes fall short, and by how many log. */
  readonly lacks: readonly { readonly germs: GermClass; readonly log: number }[];
  readonly stages: readonly StageReport[];
  readonly taps: readonly TapReport[];
  readonly cartridges: readonly CartridgeReport[];
  readonly sources: readonly SourceReport[];
  readonly cautions: readonly Caution[];
};
