import type { RigFile } from '../../../contract/rig.ts';
import type { Vehicle } from '../../../contract/vehicle.ts';
import { at } from '../../lists/at.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { Term } from '../../quantity/term.ts';
import { defaultCanKg, usableL } from '../containers.ts';
import { fuelKgPerLitre, WATER_KG_PER_L } from '../densities.ts';
import { type MassModel, massModelOf } from '../settle-mass.ts';
import {
  type Contents,
  contentsAt,
  fixedMoments,
  fullContents,
  type Levels,
  loadsWith,
  massesWith,
  withContents,
} from '../states.ts';
import { axleShares, type Loads, type PointMass } from '../statics.ts';
import { containerEffects } from './container-effects.ts';
import { fuelLimitsOf } from './fuel-limits.ts';
import { massCautions } from './mass-cautions.ts';
import type { AxleLoad, Density, MassReport, MassState } from './masses.ts';
import { type Levelled, worstPlaces } from './worst.ts';

/**
 * What the loaded vehicle of a rig weighs and where, over the levels of both commodities along the route; null for a
 * rig that tells no vehicle.
 */
export function massReport(
  file: RigFile,
  fuel: Levelled,
  water: Levelled,
): { mass: MassReport; cautions: Caution[] } | null {
  const model = massModelOf(file);
  if (model === null) return null;
  const { vehicle } = model;
  const start: Levels = { fuelL: startOf(fuel), waterL: startOf(water) };
  const departing = contentsAt(model, start, 'together');
  const nothing = contentsAt(model, { fuelL: 0, waterL: 0 }, 'together');
  const laden = massesWith(model, fullContents(model)).filter((one) => one.path !== '/vehicle');
  const mass: MassReport = {
    states: [
      stateOf(model, 'departure', departing, 0),
      stateOf(model, 'full', fullContents(model), null),
      stateOf(model, 'empty', nothing, null),
      ...worstPlaces(model, fuel, water).map(
        ({ atM, levels, loads, worstFor }): MassState => ({
          kind: 'along',
          worstFor,
          atM,
          ...levels,
          ...againstLimits(loads, vehicle),
        }),
      ),
    ],
    containers: containerEffects(model, withContents(model, fixedMoments(model), nothing)),
    roof: roofOf(laden, vehicle),
    behindRearAxle: behindRearAxle(laden, vehicle),
    fuelLimits: limitsOf(file),
    densities: densitiesOf(file),
    missing: model.missing,
    working: workingOf(model, massesWith(model, departing)),
  };
  return { mass, cautions: massCautions(mass, model) };
}

const startOf = ({ gaps }: Levelled): number => gaps[0]?.departL ?? 0;

const stateOf = (
  model: MassModel,
  kind: MassState['kind'],
  contents: Contents,
  atM: number | null,
): MassState => ({
  kind,
  worstFor: [],
  atM,
  ...usableIn(model, contents),
  ...againstLimits(loadsWith(model, fixedMoments(model), contents), model.vehicle),
});

/** Usable litres in all containers. */
function usableIn({ containers }: MassModel, contents: Contents): Levels {
  const levels = { fuelL: 0, waterL: 0 };
  for (const [index, container] of containers.entries()) {
    const drawnL = Math.max(0, at(contents, index) - container.unusableL);
    levels[`${container.commodity}L`] += Math.min(usableL(container), drawnL);
  }
  return levels;
}

function againstLimits(loads: Loads, { permitted }: Vehicle) {
  const axle = (kg: number | null, limitKg: number | null): AxleLoad | null =>
    kg === null ? null : { kg, limitKg, leftKg: limitKg === null ? null : limitKg - kg };
  return {
    totalKg: loads.totalKg,
    payloadLeftKg: permitted?.totalKg === undefined ? null : permitted.totalKg - loads.totalKg,
    front: axle(loads.frontKg, permitted?.frontKg ?? null),
    rear: axle(loads.rearKg, permitted?.rearKg ?? null),
    sideKg: loads.sideKg,
    cgHeightM: loads.cgHeightM,
    stabilityFactor: loads.stabilityFactor,
  };
}

/** All that lies as high as the roof, containers full; null where the roof's height is not told. */
function roofOf(masses: readonly PointMass[], { cabin, permitted }: Vehicle): MassReport['roof'] {
  if (cabin === undefined) return null;
  const kg = masses
    .filter((one) => one.heightM !== null && one.heightM >= cabin.roofHeightM)
    .reduce((sum, one) => sum + one.kg, 0);
  return { kg, limitKg: permitted?.roofKg ?? null };
}

function behindRearAxle(masses: readonly PointMass[], { wheelbaseM }: Vehicle): MassReport['behindRearAxle'] {
  if (wheelbaseM === undefined) return null;
  const sum = { kg: 0, frontKg: 0, rearKg: 0 };
  for (const { kg, xM } of masses) {
    if (xM === null || xM <= wheelbaseM) continue;
    const shares = axleShares(kg, xM, wheelbaseM);
    sum.kg += kg;
    sum.frontKg += shares.frontKg;
    sum.rearKg += shares.rearKg;
  }
  return sum;
}

function limitsOf({ fuel }: RigFile): MassReport['fuelLimits'] {
  const { litres, owned, emptyKg } = fuel.cans ?? { litres: 0, owned: 0, emptyKg: 0 };
  return fuelLimitsOf({
    kind: fuel.kind,
    tanksL: fuel.tanks.reduce((sum, tank) => sum + tank.litres, 0),
    cans: { litres, owned, emptyKg: emptyKg ?? defaultCanKg('fuel', litres) },
  });
}

/** What a litre of each is taken to weigh, and who says so. */
const densitiesOf = ({ fuel: { kind } }: RigFile): Density[] => [
  {
    what: { phrase: 'fuel-kind', facts: { kind } },
    kgPerLitre: fuelKgPerLitre(kind),
    source: { phrase: 'fuel-density-source', facts: { kind } },
  },
  {
    what: { phrase: 'water', facts: {} },
    kgPerLitre: WATER_KG_PER_L,
    source: { phrase: 'water-density-source', facts: {} },
  },
];

/** The terms of total and axle loads at departure; no axle terms where those cannot be told. */
function workingOf(model: MassModel, masses: readonly PointMass[]): MassReport['working'] {
  const term = ({ label }: PointMass, value: number): Term => ({ label, value, unit: 'kg' });
  const { wheelbaseM, known } = model.frame;
  const axle = (side: 'frontKg' | 'rearKg') =>
    wheelbaseM === null || !known.x
      ? []
      : masses.map((one) => term(one, axleShares(one.kg, one.xM ?? 0, wheelbaseM)[side]));
  return {
    totalKg: masses.map((one) => term(one, one.kg)),
    frontKg: axle('frontKg'),
    rearKg: axle('rearKg'),
  };
}
