/** A mixed-integer model as plain values: minimise `cost` over columns within bounds and rows. */
export interface Mip {
  columns: MipColumn[];
  rows: MipRow[];
}

export interface MipColumn {
  lower: number;
  upper: number;
  integer: boolean;
}

/** lower <= sum of value × column <= upper. Each column at most once. */
export interface MipRow {
  lower: number;
  upper: number;
  entries: [column: number, value: number][];
}

/** `values`: the best solution found, null where there is none; `bound`: nothing can be better than this. */
export interface MipAnswer {
  status: 'optimal' | 'infeasible' | 'out-of-time';
  values: Float64Array | null;
  objective: number;
  bound: number;
}

/** Minimises a cost; `start` is a solution known before. Within `seconds`, else `out-of-time` with the best so far. */
export type MipSolver = (
  mip: Mip,
  cost: Float64Array,
  options: { seconds: number; start: Float64Array | null },
) => MipAnswer;

/** Gathers columns and rows. */
export class MipBuilder {
  readonly columns: MipColumn[] = [];
  readonly rows: MipRow[] = [];

  /** Adds a column and gives its number. */
  column(lower: number, upper: number, integer: boolean): number {
    this.columns.push({ lower, upper, integer });
    return this.columns.length - 1;
  }

  row(lower: number, upper: number, entries: [number, number][]): void {
    this.rows.push({ lower, upper, entries });
  }
}
