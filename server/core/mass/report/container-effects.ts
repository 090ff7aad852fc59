import type { Container } from '../containers.ts';
import type { MassModel } from '../settle-mass.ts';
import {
  axleShares,
  cgRise,
  loadsOf,
  type Moments,
  placeOfPosition,
  sideDifference,
  stabilityFactor,
  withMass,
} from '../statics.ts';
import type { ContainerEffect } from './masses.ts';

/** What each container does to the vehicle, so that two of them, or two places for one, can be compared. */
export const containerEffects = (model: MassModel, emptyMoments: Moments): ContainerEffect[] =>
  model.containers.map((container) => ({
    path: container.path,
    name: container.name,
    commodity: container.commodity,
    fixed: container.fixed,
    litres: container.litres,
    unusableLitres: container.unusableL,
    emptyKg: container.emptyKg,
    kgPerLitre: container.kgPerLitre,
    position: container.position,
    marking: container.marking,
    perLitre: perLitre(model, container),
    whenFull: whenFull(model, container, emptyMoments),
  }));

function perLitre(model: MassModel, { kgPerLitre, position }: Container): ContainerEffect['perLitre'] {
  const { wheelbaseM, trackM } = model.frame;
  if (position === null || wheelbaseM === null) return null;
  return {
    ...axleShares(kgPerLitre, position.behindFrontAxleM, wheelbaseM),
    sideKg: trackM === null ? null : sideDifference(kgPerLitre, position.sideM ?? 0, trackM),
  };
}

/** Against the vehicle with all containers empty and this one taken out, with what cannot be drawn from it. */
function whenFull(model: MassModel, container: Container, empty: Moments): ContainerEffect['whenFull'] {
  const { kgPerLitre, position, emptyKg, litres, unusableL } = container;
  const { wheelbaseM, trackM } = model.frame;
  const totalKg = emptyKg + litres * kgPerLitre;
  const axles =
    position === null || wheelbaseM === null
      ? { frontKg: null, rearKg: null }
      : axleShares(totalKg, position.behindFrontAxleM, wheelbaseM);
  const without = withMass(empty, -(emptyKg + unusableL * kgPerLitre), placeOfPosition(position));
  const { cgHeightM } = loadsOf(without, model.frame);
  const rise =
    position === null || cgHeightM === null ? null : cgRise(totalKg, position.heightM, without.kg, cgHeightM);
  return {
    totalKg,
    ...axles,
    sideKg:
      position === null || trackM === null ? null : sideDifference(totalKg, position.sideM ?? 0, trackM),
    cgHeightM: rise,
    stabilityFactor:
      rise === null || cgHeightM === null || trackM === null
        ? null
        : stabilityFactor(trackM, cgHeightM + rise) - stabilityFactor(trackM, cgHeightM),
  };
}
