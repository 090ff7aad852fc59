/** What is aboard at a place of the route; two levels at one place make a drop (a detour, a stay). */
export interface Level {
  readonly atM: number;
  readonly litres: number;
}
