/** What the trip asks of a line. */
export interface Journey {
  /** At the rate the verdict uses. */
  litresPerDay: number;
  days: number;
  /** Highest place of the route, metres; null when not known. */
  altitudeM: number | null;
  /** °C; null when not told. */
  coldestNightC: number | null;
}
