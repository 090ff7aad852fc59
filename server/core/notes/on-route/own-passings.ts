import type { Commodity, Evidence } from '../../../contract/common.ts';
import type { OwnPoint } from '../../../contract/notes.ts';
import type { PacePlan } from '../../pace/pace-plan.ts';
import { timeThere } from '../../pace/time-there.ts';
import { ownPointId } from '../../supply/points/laid.ts';
import type { Passing } from '../../supply/points/passing.ts';
import { withFurther } from '../../supply/tags/reasons.ts';
import { ownReasons } from '../points/own-points.ts';

interface OwnFacts {
  readonly points: readonly OwnPoint[];
  readonly pace: PacePlan;
  /** The lowest evidence that counts. */
  readonly counting: Readonly<Record<Commodity, Evidence>>;
}

/**
 * Passings of the user's own points with who said it, and with no more than their litres. One that may not be there on the
 * day on which one comes by does not count; nor does one of certain days where no departure is told.
 */
export function withOwnPoints(passings: readonly Passing[], { points, pace, counting }: OwnFacts): Passing[] {
  const byId = new Map(points.map((point) => [ownPointId(point), point]));
  return passings.map((passing) => {
    const point = byId.get(passing.id);
    if (point === undefined) return passing;
    const { span } = timeThere(pace, passing.atM);
    const days =
      span === null ? null : { earliest: span.earliest.slice(0, 10), latest: span.latest.slice(0, 10) };
    const told = withFurther(passing, ownReasons(point, days), counting[passing.commodity]);
    const mostL = point.litres?.[passing.commodity];
    return mostL === undefined ? told : { ...told, mostL };
  });
}
