import type { FuelKind } from '../../contract/rig.ts';
import type { GermClass, StageKind } from '../../contract/treatment.ts';
import type { CoordinateFault } from './notes.ts';
import type { NoFacts } from './said/said.ts';

/** Of what a figure outside its usual range is one. */
export type UnusualUnit = 'l/100 km' | 'km/h' | 'kg' | 'height' | 'driving-hours' | 'surface-factor';

/** What of a rig contradicts itself. Facts are as the file has them, in the units of the file. */
interface RigMisfits {
  'range-order': { low: number; typical: number; high: number };
  'pace-order': { slow: number; typical: number; fast: number };
  'tank-undrawable': { unusableLitres: number; litres: number; fillPercent: number | null };
  /** Not impossible: `sure` lets it stand. */
  unusual: { value: number; least: number; most: number; unit: UnusualUnit };
  'bases-several': { told: readonly string[]; bases: readonly string[] };
}

interface FuelMisfits {
  'engine-fuel': { value: number; kind: FuelKind; kinds: readonly string[] };
  'engine-hours': { idling: number; airConditioning: number };
  'urea-untold': NoFacts;
  'can-filling': { fillPercent: number };
}

interface CrewMisfits {
  'use-untold': NoFacts;
  'grade-without-crew': NoFacts;
  'observed-twice': NoFacts;
  'drinking-nothing': NoFacts;
  'heat-twice': { key: string };
  'heat-incomplete': { temperature: boolean; humidity: boolean };
}

interface TreatmentMisfits {
  'stage-key': { key: string; kind: StageKind; kinds: readonly StageKind[] };
  'germs-twice': { germs: GermClass };
  'pump-rising': { ratedKPa: number; noFlowKPa: number };
  'stage-missing': { afterStage: number; stages: number };
  'target-above-maximum': { log: number; germs: GermClass; maximumLog: number };
}

interface VehicleMisfits {
  'kerb-below-contents': { kerbKg: number; contentsKg: number };
  'axles-off-kerb': { front: number; rear: number; kerbKg: number; toleranceKg: number };
  'permitted-below-kerb': { limitKg: number; kg: number };
  'height-twice': NoFacts;
  'lift-without-axles': NoFacts;
  'cabin-inside-out': { fromM: number; toM: number; floorHeightM: number; roofHeightM: number };
  'place-beyond-length': { behindFrontAxleM: number; aheadM: number; lastM: number; wheelbaseM: number };
  'place-beyond-width': { sideM: number; mostM: number; trackM: number };
}

interface TripMisfits {
  'aboard-twice': { litres: string; sinceFill: string };
  'aboard-above-tanks': { litres: number; drawableL: number };
  'date-impossible': { date: string };
  'stretch-backward': { fromKm: number; toKm: number };
  'box-inside-out': { bbox: readonly number[] };
  'stop-twice': { id: string };
  'stop-passed-by': { id: string };
  'own-point-twice': { id: string };
  'own-point-gives-nothing': { id: string };
  'place-unreadable': { text: string; fault: CoordinateFault };
  'days-backward': { from: string; until: string };
  'correction-empty': { id: string };
}

/** Every contradiction that rig and trip files are held against: its facts. */
export interface MisfitFacts
  extends RigMisfits,
    FuelMisfits,
    CrewMisfits,
    TreatmentMisfits,
    VehicleMisfits,
    TripMisfits {}

/** A value that fits the schema but not the rest: the path of its key, what is wrong, and the facts of the case. */
export type Misfit = {
  readonly [Name in keyof MisfitFacts]: {
    readonly path: string;
    readonly misfit: Name;
    readonly facts: MisfitFacts[Name];
  };
}[keyof MisfitFacts];
