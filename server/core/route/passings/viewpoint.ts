import { arcOfChordM, type Cartesian, meanRadiusM, toCartesian } from '../../geodesy/cartesian.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';

/** A place that looks at the route: where it is, earth-centred too, and the mean radius of the Earth there, metres. */
export interface Viewpoint extends LonLat, Cartesian {
  readonly earthM: number;
}

export const viewpointAt = ({ lon, lat }: LonLat): Viewpoint => {
  const { x, y, z } = toCartesian(lon, lat);
  return { lon, lat, x, y, z, earthM: meanRadiusM(lat) };
};

/** Metres over the ground from a viewpoint to what a chord of this square reaches, square metres. */
export const overGroundM = (from: Viewpoint, chord2: number): number =>
  arcOfChordM(Math.sqrt(Math.max(chord2, 0)), from.earthM);
