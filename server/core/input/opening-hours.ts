/** What mapped opening hours say of a stretch of time, all in the local clock ("2027-05-03T14:05"). */
export interface OpeningAnswer {
  /** Open all the time; false: shut at some of it; null: the hours do not tell. */
  open: boolean | null;
  /** The longest wait for it to open, arriving at any time of the stretch; null: unknown, or longer than looked ahead. */
  waitHours: number | null;
  /** Open at some time of the stretch or of the days looked ahead past it; null: the hours do not tell. */
  opens: boolean | null;
  /** What to know: a comment of the mapper's, why the hours do not tell. */
  comment: string | null;
  /** True where the text cannot be read as opening hours. */
  unreadable: boolean;
}

/** Judges the text of an `opening_hours` tag for arriving at a place between two local times. */
export type OpeningHoursReader = (
  text: string,
  place: { lon: number; lat: number },
  earliest: string,
  latest: string,
) => OpeningAnswer;
