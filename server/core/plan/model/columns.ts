import type { Commodity } from '../../../contract/common.ts';
import type { Leg } from '../legs/leg.ts';
import { type Halt, isAtHalt } from '../side/halts.ts';
import type { SupplyEdge } from '../side/supply-edge.ts';
import type { MipBuilder, MipEntry } from './mip.ts';

/** A leg and its column: 1 where it is chosen. */
export interface LegColumn {
  readonly leg: Leg;
  readonly column: number;
}

export type LegColumns = Readonly<Record<Commodity, readonly LegColumn[]>>;

/** The columns of legs, each with one value. */
export const entriesOf = (legs: readonly LegColumn[], value: number): MipEntry[] =>
  legs.map(({ column }) => [column, value]);

/** A halt that costs something and its column: 1 where it is made. */
export interface HaltColumn {
  readonly halt: Halt;
  readonly column: number;
}

/** The halts of both commodities: fuel and water of one point at one place are one. */
export interface HaltColumns {
  readonly all: readonly HaltColumn[];
  /** By every supply that they are made at. */
  readonly at: ReadonlyMap<SupplyEdge, HaltColumn>;
}

export function haltColumns(
  builder: MipBuilder,
  halts: readonly Halt[],
  edges: readonly SupplyEdge[],
): HaltColumns {
  const all: HaltColumn[] = [];
  for (const halt of halts) {
    if (all.some((other) => isAtHalt(halt.edge, other.halt))) continue;
    // Made or not: no need to ask for whole numbers, since it costs to make one and the legs that need it are whole.
    all.push({ halt, column: builder.column(0, 1, false) });
  }
  const at = edges.flatMap((edge): [SupplyEdge, HaltColumn][] => {
    const own = all.find(({ halt }) => isAtHalt(edge, halt));
    return own === undefined ? [] : [[edge, own]];
  });
  return { all, at: new Map(at) };
}

/** The column of a halt that the model has. */
export function columnOf({ at }: HaltColumns, { edge }: Halt): number {
  const column = at.get(edge)?.column;
  if (column === undefined) throw new Error(`the model has no halt at ${edge.id}`);
  return column;
}
