/** What stands over a column of a table: its head, and below it the unit of all its figures. */
export interface ColumnHead {
  readonly head: string;
  readonly unit: string;
}

/** The head of a column of figures in one unit, or of words, which have none. */
export const column = (head: string, unit = ''): ColumnHead => ({ head, unit });
