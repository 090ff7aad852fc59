/** A place on the Earth, WGS 84 degrees. */
export interface LonLat {
  readonly lon: number;
  readonly lat: number;
}
