/** Low, typical and high end of a quantity, in the unit of the name that holds it. */
export interface UseRange {
  low: number;
  typical: number;
  high: number;
}
