import type { Edge } from '../../gaps/course/course.ts';

/** What a supply gives, beyond its being one. */
export interface SupplyTerms {
  /** No more than this is to be had at one halt, litres; null: as much as is wanted. */
  readonly mostL: number | null;
  /** Whether cans may be filled with it. */
  readonly fillsCans: boolean;
  /** Days that filling, and treating meanwhile, take a litre. */
  readonly daysPerLitre: number;
}

/** Start, end, or a passing that may be used; without terms a supply gives all that is wanted, at once. */
export interface SupplyEdge extends Edge {
  readonly terms?: SupplyTerms;
  /** No plan goes by without stopping. */
  readonly mustStop?: true;
  /** The user said something of it. */
  readonly ofUser?: boolean;
  /** Hours of waiting that its mapped hours ask for, part of `waitDays`. */
  readonly opensInHours?: number;
}

/** Days that filling so many litres at a supply takes. */
export const fillDays = ({ terms }: SupplyEdge, litres: number): number =>
  (terms?.daysPerLitre ?? 0) * litres;

/** Whether what the vehicle leaves a supply with hangs on what it comes with. */
export const isBound = ({ terms, mostL }: SupplyEdge): boolean =>
  mostL !== undefined || (terms !== undefined && (terms.mostL !== null || !terms.fillsCans));

type Place = Pick<Edge, 'id' | 'atM'>;

/** Whether both are the same point at the same place of the route: fuel and water of it are one halt with one detour. */
export const isSamePlace = (a: Place, b: Place): boolean => a.id === b.id && a.atM === b.atM;

/** Names a place among others: the same for two exactly where `isSamePlace` holds. */
export const placeName = ({ id, atM }: Place): string => JSON.stringify([id, atM]);
