/** A mixed-integer model as plain values: minimise `cost` over columns within bounds and rows. */
export interface Mip {
  readonly columns: readonly MipColumn[];
  readonly rows: readonly MipRow[];
}

export interface MipColumn {
  readonly lower: number;
  readonly upper: number;
  readonly integer: boolean;
}

export type MipEntry = [column: number, value: number];

/** lower <= sum of value × column <= upper. Each column at most once. */
export interface MipRow {
  readonly lower: number;
  readonly upper: number;
  readonly entries: readonly MipEntry[];
}

/** `values`: the best solution found, null where there is none; `bound`: nothing can be better than this. */
export interface MipAnswer {
  readonly status: 'optimal' | 'infeasible' | 'out-of-time';
  readonly values: Float64Array | null;
  readonly objective: number;
  readonly bound: number;
}

/** Minimises a cost; `start` is a solution known before. Within `seconds`, else `out-of-time` with the best so far. */
export type MipSolver = (
  mip: Mip,
  cost: Float64Array,
  options: { seconds: number; start: Float64Array | null },
) => MipAnswer;

/** A row whose sum is at most so much. */
export const atMost = (upper: number, entries: readonly MipEntry[]): MipRow => ({
  lower: Number.NEGATIVE_INFINITY,
  upper,
  entries,
});

/** Gathers columns and rows. */
export class MipBuilder {
  readonly columns: MipColumn[] = [];
  readonly rows: MipRow[] = [];

  /** Adds a column and gives its number. */
  column(lower: number, upper: number, integer: boolean): number {
    this.columns.push({ lower, upper, integer });
    return this.columns.length - 1;
  }

  row(lower: number, upper: number, entries: readonly MipEntry[]): void {
    this.rows.push({ lower, upper, entries });
  }

  atMost(upper: number, entries: readonly MipEntry[]): void {
    this.rows.push(atMost(upper, entries));
  }
}
