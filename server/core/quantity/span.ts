/** A stretch of the route, metres along it. */
export interface SpanM {
  fromM: number;
  toM: number;
}
