/** One place where the route comes by a point: `index` into the points given, metres along and off the route. */
export interface PlacedPassing {
  point: number;
  atM: number;
  offM: number;
}
