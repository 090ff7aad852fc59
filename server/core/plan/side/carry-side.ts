import type { Commodity } from '../../../contract/common.ts';
import type { Course } from '../../gaps/course/course.ts';
import { at } from '../../lists/at.ts';
import type { SupplyEdge } from './supply-edge.ts';

/** What a plan has to decide about one commodity. */
export interface CarrySide {
  readonly commodity: Commodity;
  readonly course: Course;
  /** Start, every passing that may be used, end, in route order. */
  readonly edges: readonly SupplyEdge[];
  /** All supplies that count, where they are too many to be looked at: `edges` are some of them. */
  readonly counting?: readonly SupplyEdge[];
  /** In the fixed tanks on leaving the start, litres. */
  readonly startL: number;
  /** Whether cans can be filled before the start. */
  readonly cansAtStart: boolean;
  readonly canL: number;
  /** Whether what is in the cans may be drunk; false only for cans kept for washing. */
  readonly cansDrinkable: boolean;
  /** No plan may have more cans than this. */
  readonly mostCans: number;
}

export type CarrySides = Readonly<Record<Commodity, CarrySide>>;

type Edges = Pick<CarrySide, 'edges'>;

/** An edge by its index. */
export const edgeAt = ({ edges }: Edges, index: number): SupplyEdge => at(edges, index);

/** The index of the end. */
export const endOf = ({ edges }: Edges): number => edges.length - 1;

/** The edges to which one may go on from one, each with its index: none past a stop that must be made. */
export function* edgesAfter({ edges }: Edges, index: number): Generator<[number, SupplyEdge]> {
  for (let next = index + 1; next < edges.length; next += 1) {
    const edge = at(edges, next);
    yield [next, edge];
    if (edge.mustStop === true) return;
  }
}

/** Both ends of a way from one edge to another, by their indexes. */
export const endsOf = (side: Edges, way: { from: number; to: number }): [SupplyEdge, SupplyEdge] => [
  edgeAt(side, way.from),
  edgeAt(side, way.to),
];

/** All supplies of a side that count, start and end among them. */
export const countingOf = ({ edges, counting }: CarrySide): readonly SupplyEdge[] => counting ?? edges;

/** Drawable litres of the fixed tanks. */
export const drawableOf = ({ course }: Pick<CarrySide, 'course'>): number =>
  course.rig[course.commodity].drawableL;

/** Litres in the fixed tanks on leaving an edge, as full as they may be. */
export const tanksL = (side: CarrySide, from: number): number =>
  from === 0 ? side.startL : drawableOf(side);

/** The most full cans on leaving an edge. */
export const cansAllowed = ({ cansAtStart, mostCans }: CarrySide, from: number): number =>
  from === 0 && !cansAtStart ? 0 : mostCans;

/** What losses are measured against: the fixed tanks, and one can where there are none. */
export const measureL = ({ course }: Pick<CarrySide, 'course'>): number =>
  drawableOf({ course }) || course.rig[course.commodity].canL;
