import type { Logs, SourceKind, TapUse, TreatmentStage } from '../../../contract/treatment.ts';
import type { Hose, Pump } from './flow/hydraulics.ts';
import type { Hazard } from './hazards.ts';

/** What spoils a membrane of reverse osmosis: chlorine dosed before it, or no carbon to take out that of the mains. */
export type MembraneFault = 'chlorine-before' | 'no-carbon';

export interface Stage extends TreatmentStage {
  name: string;
  mayHaveFrozen: boolean;
  /** What spoils its membrane; null where nothing does. */
  fault: MembraneFault | null;
}

export interface Tap {
  name: string;
  /** Stages before it. */
  afterStage: number;
  use: TapUse;
  measuredLPerMin: number | null;
  drop: { kPa: number; atLPerMin: number } | null;
}

/** A treatment line with every default filled in. */
export interface Treatment {
  stages: Stage[];
  at: 'filling' | 'tap';
  pump: Pump | null;
  taps: Tap[];
  hoses: (Hose & { afterStage: number })[];
  target: { name: string; logs: Logs };
  maximumLog: number;
  treatEverything: boolean;
  hazards: Record<SourceKind, Hazard>;
}

/** How many stages drinking water passes: those before the best drinking tap; all where no tap is for drinking. */
export function stagesToDrink(line: Treatment): number {
  const drinking = line.taps.filter((tap) => tap.use === 'drinking').map((tap) => tap.afterStage);
  return drinking.length === 0 ? line.stages.length : Math.max(...drinking);
}
