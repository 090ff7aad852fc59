import { numberAt } from '../../lists/at.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { RouteLine } from '../route-line.ts';

/** A straight step that turns by more than this at an end goes from one chosen point to the next, not along a road (design rule). */
const VIA_TURN_DEGREES = 45;

type Line = Pick<RouteLine, 'lon' | 'lat' | 'atM'>;

/**
 * Which of the steps, given in route order, turn sharply at an end: their points were chosen to lead a way through, and
 * say nothing of how the road runs. A long straight step that goes on in its direction may well be a straight road.
 */
export function viaSteps(line: Line, steps: readonly SpanM[]): boolean[] {
  return steps.map(({ fromM, toM }) =>
    [fromM, toM].some((placeM) => turnDegrees(line, placeM) > VIA_TURN_DEGREES),
  );
}

/** By how much the line turns at a vertex, 0 to 180 degrees; 0 at its ends. */
function turnDegrees(line: Line, placeM: number): number {
  const last = lastAt(line, placeM);
  const first = firstAt(line, placeM);
  if (first === 0 || last === line.atM.length - 1) return 0;
  const turn = Math.abs(bearing(line, last, last + 1) - bearing(line, first - 1, first)) % 360;
  return Math.min(turn, 360 - turn);
}

/** Degrees from north of a step of the densified line, which is so short that the Earth is flat. */
function bearing({ lon, lat }: Line, from: number, to: number): number {
  const lat1 = numberAt(lat, from);
  const lat2 = numberAt(lat, to);
  const east = (numberAt(lon, to) - numberAt(lon, from)) * Math.cos(((lat1 + lat2) * Math.PI) / 360);
  return (Math.atan2(east, lat2 - lat1) * 180) / Math.PI;
}

/** The first vertex that lies so far along: several do where points repeat. */
function firstAt({ atM }: Line, placeM: number): number {
  let [low, high] = [0, atM.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numberAt(atM, middle) < placeM) low = middle + 1;
    else high = middle;
  }
  return low;
}

function lastAt(line: Line, placeM: number): number {
  let vertex = firstAt(line, placeM);
  while (vertex + 1 < line.atM.length && numberAt(line.atM, vertex + 1) <= placeM) vertex += 1;
  return vertex;
}
