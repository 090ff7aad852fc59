import geodesic from 'geographiclib-geodesic';
import type { Corner } from '../lines.ts';

/**
 * Passings computed in another way than the program's: every step between two points as read is a GeographicLib
 * geodesic, the nearest place on it is found by golden-section search, and lows are cancelled one by one as the rule
 * of design says. No index, no densifying, no plane, no chords.
 */
const wgs84 = geodesic.Geodesic.WGS84;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const PROMINENCE_M = 1_000;

type Line = ReturnType<typeof wgs84.InverseLine>;
interface Step {
  line: Line;
  fromM: number;
  lengthM: number;
}
interface Turn {
  kind: 'low' | 'high';
  atM: number;
  offM: number;
}
interface Low {
  atM: number;
  offM: number;
}

export interface BruteRoute {
  points: readonly Corner[];
  steps: Step[];
  lengthM: number;
}

export function bruteRoute(points: readonly Corner[]): BruteRoute {
  const steps: Step[] = [];
  let atM = 0;
  for (let i = 1; i < points.length; i += 1) {
    const [lon1, lat1] = points[i - 1]!;
    const [lon2, lat2] = points[i]!;
    const line = wgs84.InverseLine(lat1, lon1, lat2, lon2);
    steps.push({ line, fromM: atM, lengthM: line.s13 });
    atM += line.s13;
  }
  return { points, steps, lengthM: atM };
}

const awayM = (lon: number, lat: number, [lon2, lat2]: Corner) => wgs84.Inverse(lat, lon, lat2, lon2).s12!;

/** The least distance along one step by golden-section search: metres along the step, metres away. */
function nearestOnStep({ line, lengthM }: Step, lon: number, lat: number): Low {
  const away = (s: number) => {
    const { lat2, lon2 } = line.Position(s);
    return awayM(lon, lat, [lon2!, lat2!]);
  };
  let [low, high] = [0, lengthM];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [leftM, rightM] = [away(left), away(right)];
  while (high - low > 0.05) {
    if (leftM <= rightM) {
      high = right;
      [right, rightM] = [left, leftM];
      left = high - GOLDEN * (high - low);
      leftM = away(left);
    } else {
      low = left;
      [left, leftM] = [right, rightM];
      right = low + GOLDEN * (high - low);
      rightM = away(right);
    }
  }
  return { atM: (low + high) / 2, offM: Math.min(leftM, rightM) };
}

/** Whether the way from one end of a step falls at first: the place lies ahead of the square across the step. */
function liesAhead(lon: number, lat: number, [lon1, lat1]: Corner, azimuth: number): boolean {
  const { azi1 } = wgs84.Inverse(lat1, lon1, lat, lon);
  return Math.cos(((azi1! - azimuth) * Math.PI) / 180) > 0;
}

/** Steps `first` to `last` (inclusive), told as alternating turning points. */
function turnsOf(route: BruteRoute, first: number, last: number, lon: number, lat: number): Turn[] {
  const marks: Low[] = [{ atM: route.steps[first]!.fromM, offM: awayM(lon, lat, route.points[first]!) }];
  for (let i = first; i <= last; i += 1) {
    const step = route.steps[i]!;
    if (step.lengthM === 0) continue;
    const end = step.line.Position(step.lengthM);
    const inside =
      liesAhead(lon, lat, route.points[i]!, step.line.azi1) &&
      !liesAhead(lon, lat, route.points[i + 1]!, end.azi2!);
    if (inside) {
      const { atM, offM } = nearestOnStep(step, lon, lat);
      marks.push({ atM: step.fromM + atM, offM });
    }
    marks.push({ atM: step.fromM + step.lengthM, offM: awayM(lon, lat, route.points[i + 1]!) });
  }
  return marks.flatMap((mark, i): Turn[] => {
    const beforeM = marks[i - 1]?.offM ?? Infinity;
    const afterM = marks[i + 1]?.offM ?? Infinity;
    if (mark.offM < beforeM && mark.offM <= afterM) return [{ kind: 'low', ...mark }];
    if (mark.offM >= beforeM && mark.offM > afterM) return [{ kind: 'high', ...mark }];
    return [];
  });
}

/** The rule to the letter: cancel the smallest rise first, the nearer low stays, ties keep the earlier. */
export function cancelSmallRises(lows: readonly Low[], risesM: readonly number[]): Low[] {
  const left = [...lows];
  const tops = [...risesM];
  for (;;) {
    let smallest = -1;
    let smallestM = PROMINENCE_M;
    tops.forEach((topM, i) => {
      const riseM = topM - Math.max(left[i]!.offM, left[i + 1]!.offM);
      if (riseM < smallestM) {
        smallest = i;
        smallestM = riseM;
      }
    });
    if (smallest < 0) return left;
    const gone = left[smallest + 1]!.offM < left[smallest]!.offM ? smallest : smallest + 1;
    left.splice(gone, 1);
    // The way to the next low now leads over both tops.
    const [a, b] = [tops[gone - 1], tops[gone]];
    if (a === undefined) tops.splice(0, 1);
    else if (b === undefined) tops.splice(gone - 1, 1);
    else tops.splice(gone - 1, 2, Math.max(a, b));
  }
}

/** All passings of one point, by the rule; steps whose box is well beyond the corridor are left out as far away. */
export function brutePassings(route: BruteRoute, lon: number, lat: number, corridorM: number): Low[] {
  const reach = (corridorM + PROMINENCE_M + 500) / 110_500;
  const reachLon = reach / Math.cos((Math.min(89, Math.abs(lat) + reach) * Math.PI) / 180);
  const near: number[] = [];
  for (let i = 0; i < route.steps.length; i += 1) {
    const [lon1, lat1] = route.points[i]!;
    const [lon2, lat2] = route.points[i + 1]!;
    if (Math.min(lon1, lon2) > lon + reachLon || Math.max(lon1, lon2) < lon - reachLon) continue;
    if (Math.min(lat1, lat2) > lat + reach || Math.max(lat1, lat2) < lat - reach) continue;
    near.push(i);
  }
  const kept: Low[] = [];
  for (let i = 0; i < near.length; ) {
    let last = i;
    while (near[last + 1] === near[last]! + 1) last += 1;
    const turns = turnsOf(route, near[i]!, near[last]!, lon, lat);
    const lows: Low[] = [];
    const tops: number[] = [];
    let topM = 0;
    for (const turn of turns) {
      if (turn.kind === 'high') topM = Math.max(topM, turn.offM);
      else if (turn.offM <= corridorM) {
        if (lows.length > 0) tops.push(topM);
        lows.push({ atM: turn.atM, offM: turn.offM });
        topM = 0;
      }
    }
    kept.push(...cancelSmallRises(lows, tops));
    i = last + 1;
  }
  return kept;
}
