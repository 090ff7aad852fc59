import type { Position } from '../../contract/vehicle.ts';
import type { Phrase } from '../phrases/phrases.ts';

/** A mass and where its centre of gravity is. */
export interface PointMass extends Place {
  /** In the rig file. */
  path: string;
  label: Phrase;
  kg: number;
}

/** Metres; null where not known. */
export interface Place {
  /** Behind the front axle. */
  xM: number | null;
  /** Above the ground. */
  heightM: number | null;
  /** From the middle, left negative. */
  sideM: number | null;
}

/** A position of the rig file as coordinates; a tank's is its middle, however full it is. */
export const placeOfPosition = (position: Position | null | undefined): Place =>
  position === null || position === undefined
    ? { xM: null, heightM: null, sideM: null }
    : { xM: position.behindFrontAxleM, heightM: position.heightM, sideM: position.sideM ?? 0 };

/**
 * Load that a mass puts on each axle, kg: moments about the other one, front m (L − x) / L, rear m x / L (any text on
 * statics; check-values V1). Behind the rear axle `frontKg` is negative: the front is relieved.
 */
export const axleShares = (
  kg: number,
  xM: number,
  wheelbaseM: number,
): { frontKg: number; rearKg: number } => ({
  frontKg: (kg * (wheelbaseM - xM)) / wheelbaseM,
  rearKg: (kg * xM) / wheelbaseM,
});

/** What a mass puts on the right wheels more than on the left ones, kg: moments about the middle. */
export const sideDifference = (kg: number, sideM: number, trackM: number): number =>
  (2 * kg * sideM) / trackM;

/** Static stability factor: half the track over the height of the centre of gravity (NHTSA's definition). */
export const stabilityFactor = (trackM: number, cgHeightM: number): number => trackM / (2 * cgHeightM);

/** By how much a mass put on at `heightM` raises the common centre of gravity, m (check-values V4). */
export const cgRise = (kg: number, heightM: number, onKg: number, onHeightM: number): number =>
  (kg * (heightM - onHeightM)) / (onKg + kg);

/** One step of lifting an axle. */
export interface Lift {
  wheelbaseM: number;
  totalKg: number;
  wheelRadiusM: number;
  /** On the axle that stays on the ground, with the vehicle level. */
  levelKg: number;
  /** On the same axle, lifted. */
  liftedKg: number;
  degrees: number;
}

/**
 * Height of the centre of gravity by lifting one axle: h = r + (L / tan θ) (F′ − F) / M. ISO 10392:2011, 6.2 to 6.5;
 * the formula is standard mechanics, from memory (check-values V8). Good to "a few percent", averaged over three or
 * more steps, springs blocked.
 */
export const cgHeightFromLift = ({
  wheelbaseM,
  totalKg,
  wheelRadiusM,
  levelKg,
  liftedKg,
  degrees,
}: Lift): number =>
  wheelRadiusM + ((wheelbaseM / Math.tan((degrees * Math.PI) / 180)) * (liftedKg - levelKg)) / totalKg;

/** Moments of several masses; a coordinate that is not known counts as nothing. */
export interface Moments {
  kg: number;
  x: number;
  height: number;
  side: number;
}

export const NO_MOMENTS: Moments = { kg: 0, x: 0, height: 0, side: 0 };

/** `moments` with a mass of that place added; negative `kg` takes it off. */
export const withMass = (moments: Moments, kg: number, place: Place): Moments => ({
  kg: moments.kg + kg,
  x: moments.x + kg * (place.xM ?? 0),
  height: moments.height + kg * (place.heightM ?? 0),
  side: moments.side + kg * (place.sideM ?? 0),
});

export const sumOfMoments = (...sums: readonly Moments[]): Moments =>
  sums.reduce(
    (sum, one) => ({
      kg: sum.kg + one.kg,
      x: sum.x + one.x,
      height: sum.height + one.height,
      side: sum.side + one.side,
    }),
    NO_MOMENTS,
  );

export const momentsOf = (masses: readonly PointMass[]): Moments =>
  masses.reduce((sum, mass) => withMass(sum, mass.kg, mass), NO_MOMENTS);

/** Measures of a vehicle that moments are turned into loads with; null where not known. */
export interface Frame {
  wheelbaseM: number | null;
  trackM: number | null;
  /** Whether every mass has its coordinate: without that there is no figure. */
  known: { x: boolean; height: boolean; side: boolean };
}

/** Loads of a vehicle, kg and m; null where they cannot be told. */
export interface Loads {
  totalKg: number;
  frontKg: number | null;
  rearKg: number | null;
  sideKg: number | null;
  cgHeightM: number | null;
  stabilityFactor: number | null;
}

/** Axle loads, difference between the sides, height of the centre of gravity: they sum to the total mass. */
export function loadsOf(moments: Moments, { wheelbaseM, trackM, known }: Frame): Loads {
  const axles = known.x && wheelbaseM !== null;
  const cgHeightM = known.height ? moments.height / moments.kg : null;
  return {
    totalKg: moments.kg,
    frontKg: axles ? moments.kg - moments.x / wheelbaseM : null,
    rearKg: axles ? moments.x / wheelbaseM : null,
    sideKg: known.side && trackM !== null ? (2 * moments.side) / trackM : null,
    cgHeightM,
    stabilityFactor:
      cgHeightM === null || trackM === null || cgHeightM <= 0 ? null : stabilityFactor(trackM, cgHeightM),
  };
}
