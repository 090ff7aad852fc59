import { toContract } from '../../../server/app/to-contract.ts';
import type { Analysis, Gap } from '../../../server/contract/analysis.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { ContainerEffect, MassReport, MassState, Vehicle } from '../../../server/contract/vehicle.ts';
import { massReport } from '../../../server/core/mass/report/mass-report.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { analysisOf, DIESEL, pointFeature, TAP } from '../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

type Store = Partial<Pick<RigFile['fuel'], 'kind' | 'tanks' | 'cans'>>;

/** Kerb mass that includes nothing but a driver who need not be listed. */
export const PLAIN: Vehicle = {
  kerbKg: 2600,
  includes: { fuelPercent: 0, driverKg: 75 },
  axleKg: { front: 1250, rear: 1350 },
  wheelbaseM: 2.85,
  trackM: 1.6,
  cgHeightM: 0.75,
};

/** Tanks in the middle of the vehicle, low. */
const MIDDLE = { behindFrontAxleM: 1.425, heightM: 0.6 };

/** The example's rig, no cans, tanks placed, with a vehicle. */
export function rigOf(
  vehicle: Partial<Vehicle> = {},
  changes: { fuel?: Store; water?: Store } = {},
): RigFile {
  const { cans: _fuelCans, ...fuel } = EXAMPLE_RIG.fuel;
  const { cans: _waterCans, ...water } = EXAMPLE_RIG.water;
  const { kind: _kind, ...waterChanges } = changes.water ?? {};
  return {
    ...EXAMPLE_RIG,
    fuel: {
      ...fuel,
      tanks: [{ name: 'main', litres: 130, unusableLitres: 3, position: MIDDLE }],
      ...changes.fuel,
    },
    water: {
      ...water,
      tanks: [{ name: 'under floor', litres: 70, position: MIDDLE }],
      ...waterChanges,
    },
    vehicle: { ...PLAIN, ...vehicle },
  };
}

/** A whole analysis along the equator, two stations and a tap on the way. */
export const drive = (rig: RigFile): Analysis =>
  analysisOf({
    rig,
    features: [
      pointFeature('node/1', 400, DIESEL),
      pointFeature('node/2', 900, DIESEL),
      pointFeature('node/3', 640, TAP),
    ],
  });

/** The mass report of such a drive. */
export function massOf(rig: RigFile): MassReport {
  const { mass } = drive(rig);
  if (mass === null) throw new Error('expected a mass report');
  return mass;
}

/** A report without a drive: what the vehicle weighs with nothing usable left is the same on any. */
export function standing(rig: RigFile): MassReport {
  const report = massReport(settleRig(rig).settled, { gaps: [] }, { gaps: [] });
  if (report === null) throw new Error('expected a mass report');
  return toContract(report.mass);
}

export function stateOf(mass: MassReport, kind: MassState['kind']): MassState {
  const state = mass.states.find((one) => one.kind === kind);
  if (state === undefined) throw new Error(`expected a state ${kind}`);
  return state;
}

export function containerAt(mass: MassReport, path: string): ContainerEffect {
  const container = mass.containers.find((one) => one.path === path);
  if (container === undefined) throw new Error(`expected a container ${path}`);
  return container;
}

/** The level of a commodity at a place, by straight lines between those of the gap; the first where it jumps. */
export function levelAt(gaps: readonly Gap[], atKm: number): number {
  const gap = gaps.find((one) => one.from.atKm <= atKm && atKm <= one.to.atKm);
  if (gap === undefined) throw new Error(`no gap at km ${atKm}`);
  const after = gap.levels.findIndex((level) => level.atKm >= atKm);
  const [a, b] = [gap.levels[Math.max(0, after - 1)]!, gap.levels[after]!];
  const share = b.atKm === a.atKm ? 1 : (atKm - a.atKm) / (b.atKm - a.atKm);
  return Math.max(0, a.litres + share * (b.litres - a.litres));
}
