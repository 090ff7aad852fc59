import type { Commodity } from '../../contract/common.ts';
import type { Course, EdgeM } from '../gaps/course.ts';
import type { MassRoom } from './mass-room.ts';

/** What a carry plan has to decide about one commodity. */
export interface CarrySide {
  commodity: Commodity;
  course: Course;
  /** Start, every passing that may be used, end, in route order. */
  edges: readonly EdgeM[];
  /** In the fixed tanks on leaving the start, litres. */
  startL: number;
  /** Whether cans can be filled before the start. */
  cansAtStart: boolean;
  canL: number;
  /** Whether what is in the cans may be drunk; false only for cans kept for washing. */
  cansDrinkable: boolean;
  /** No plan may have more cans than this. */
  mostCans: number;
}

/** Both commodities on one route, and the room that the permitted masses leave. */
export interface CarryProblem {
  sides: Record<Commodity, CarrySide>;
  /** Null where the rig tells no mass that is permitted. */
  room: MassRoom | null;
  /** Set where every stop that is used may turn out dry or shut, one at a time; then the reserve may be spent or not. */
  oneFailure: { spendReserve: boolean } | null;
}

/** Both commodities, in the order in which everything is listed. */
export const COMMODITIES: readonly Commodity[] = ['fuel', 'water'];

export const otherOf = (commodity: Commodity): Commodity => (commodity === 'fuel' ? 'water' : 'fuel');

/** Names the place that a passing halts at: fuel and water of one point are one halt with one detour. */
export const placeKey = (edge: EdgeM): string => `${edge.id} ${edge.atM}`;

/** A halt off the route: it costs both commodities its detour, both ways. */
export interface Halt {
  key: string;
  atM: number;
  /** There and back, metres. */
  bothWaysM: number;
}

/** The halts off the route at which a commodity can be filled, in route order. */
export const haltsOf = ({ edges }: CarrySide): Halt[] =>
  edges
    .filter((edge) => edge.kind === 'passing' && edge.detourM > 0)
    .map((edge) => ({ key: placeKey(edge), atM: edge.atM, bothWaysM: 2 * edge.detourM }));

/**
 * Halts of the other commodity on the way from one edge to the next. One at the very place of an edge lies before it,
 * where it is not the edge's own.
 */
export const haltsBetween = (halts: readonly Halt[], from: EdgeM, to: EdgeM): Halt[] =>
  halts.filter(
    (halt) =>
      halt.key !== placeKey(from) &&
      halt.key !== placeKey(to) &&
      (halt.atM > from.atM || (halt.atM === 0 && from.kind === 'start')) &&
      halt.atM <= to.atM,
  );
