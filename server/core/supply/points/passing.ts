import type { Arrival } from '../../../contract/pace.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyPoint } from './supply-point.ts';

/** One place where the route comes by a supply point; metres along and off the route, the detour one way. */
export interface Passing extends Readonly<Omit<SupplyPoint, 'tags' | 'mappedTags'>> {
  /** Those by which it is a supply and counts or not, as the map has them. */
  readonly tags: Tags;
  readonly atM: number;
  readonly offRouteM: number;
  readonly detourM: number;
  /** No more than this is to be had at one halt, where it was told. */
  readonly mostL?: number;
  /** Null where it has no mapped hours, and while date or hour of departure is not told. */
  readonly arrival?: Arrival | null;
}
