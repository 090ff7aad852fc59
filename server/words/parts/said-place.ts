/** A place of the route by the name that a sentence has for it. */
export interface SaidPlace {
  readonly name: string;
  readonly atM: number;
}

export interface SaidStretch {
  readonly from: SaidPlace;
  readonly to: SaidPlace;
}
