import type { Passing } from '../../server/contract/analysis.ts';
import type { ObjectThen } from '../../server/contract/common.ts';

/** As near as this the server takes another supply for one that may be the same, metres. */
const NEAR_M = 200;
/** Metres of a degree of latitude, as good as is needed for so short a way. */
const DEGREE_M = 111_320;

/** What an object is when something is noted of it, so that its changes can be told: place, tags, what stands beside it. */
export function objectThen(passing: Passing, passings: readonly Passing[]): ObjectThen {
  const { lon, lat, tags } = passing;
  const near = passings
    .filter(({ id }) => id !== passing.id)
    .filter((other) => metresTo(passing, other) <= NEAR_M);
  return { lon, lat, tags, near: [...new Set(near.map(({ id }) => id))] };
}

function metresTo(from: Pick<Passing, 'lon' | 'lat'>, to: Pick<Passing, 'lon' | 'lat'>): number {
  const east = (((to.lon - from.lon + 540) % 360) - 180) * Math.cos((from.lat * Math.PI) / 180);
  return Math.hypot(east, to.lat - from.lat) * DEGREE_M;
}

/** Supplies of the user's own are on no map: there is nothing that could change. */
export const isOnMap = ({ id }: Pick<Passing, 'id'>): boolean => /^(node|way|relation)\//.test(id);
