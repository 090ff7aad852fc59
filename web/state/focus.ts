/** What the reader points at or has chosen; map, strip and tables all show it. */
export interface Focus {
  /** Hovered place along the route, km. */
  atKm: number | null;
  /** Selected gap: which report, and its index there. */
  gap: { commodity: 'fuel' | 'water'; index: number } | null;
  /** Selected supply point's id. */
  supply: string | null;
  /** The last places chosen on the strip, km, at most two, latest last: for what is done at a place or between two. */
  marked: readonly number[];
  /** Where the reader clicked last, on the route or beside it. */
  place: { lon: number; lat: number } | null;
  /** The stretch that strip and map are brought near to, km, and which of them was; null: the whole route. */
  onShow: { fromKm: number; toKm: number; by: 'strip' | 'map' } | null;
}

export const NO_FOCUS: Focus = {
  atKm: null,
  gap: null,
  supply: null,
  marked: [],
  place: null,
  onShow: null,
};
