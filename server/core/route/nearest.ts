import { arcOfChordM, chordOfArcM, meanRadiusM, toCartesian } from '../geodesy/cartesian.ts';
import type { RouteIndex } from './route-index.ts';
import type { RouteLine } from './route-line.ts';
import { stretchesNear } from './stretches-near.ts';

/** Radii tried one after the other before the whole radius asked for, metres. */
const FIRST_RADII_M = [2_000, 10_000];
/** Chords closer than this are a tie, metres. */
const TIE_M = 0.001;

interface Nearest {
  step: number;
  share: number;
  chordM: number;
}

/** The nearest place on one step, given squared chords to its ends. */
function onStep(length2: number, here2: number, next2: number): { share: number; away2: number } {
  if (length2 === 0) return { share: 0, away2: here2 };
  const share = Math.min(1, Math.max(0, (here2 - next2 + length2) / (2 * length2)));
  if (share === 0) return { share, away2: here2 };
  if (share === 1) return { share, away2: next2 };
  return { share, away2: Math.max(0, here2 - share * share * length2) };
}

function nearestOf(
  index: RouteIndex,
  stretches: Iterable<number>,
  place: { lon: number; lat: number },
  unsought: Uint8Array | null,
): Nearest | null {
  const { x, y, z } = toCartesian(place.lon, place.lat);
  const { xyz, chord2, balls, stretchStart } = index;
  const away2 = (i: number) =>
    (xyz[3 * i]! - x) ** 2 + (xyz[3 * i + 1]! - y) ** 2 + (xyz[3 * i + 2]! - z) ** 2;
  let best: Nearest | null = null;
  for (const k of stretches) {
    const o = 4 * k;
    const leastM = Math.hypot(balls[o]! - x, balls[o + 1]! - y, balls[o + 2]! - z) - balls[o + 3]!;
    if (best !== null && leastM >= best.chordM) continue;
    const last = stretchStart[k + 1]!;
    let here2 = away2(stretchStart[k]!);
    for (let step = stretchStart[k]!; step < last; step += 1) {
      const next2 = away2(step + 1);
      if (unsought === null || unsought[step] !== 1) {
        const found = onStep(chord2[step]!, here2, next2);
        const chordM = Math.sqrt(found.away2);
        if (best === null || chordM < best.chordM - TIE_M) best = { step, share: found.share, chordM };
      }
      here2 = next2;
    }
  }
  return best;
}

function* allStretches(index: RouteIndex): Iterable<number> {
  for (let k = 0; k < index.stretchStart.length - 1; k += 1) yield k;
}

/**
 * The single nearest place on the route within `radiusM` (Infinity for anywhere), null when there is none; of ties
 * the earlier. `soughtOnly` leaves out steps marked `unsought`. Metres along and off on WGS 84; off the route within
 * a metre up to 100 km, within 0.3 % beyond.
 */
export function nearestPlace(
  route: RouteLine,
  index: RouteIndex,
  lon: number,
  lat: number,
  radiusM: number,
  soughtOnly: boolean,
): { atM: number; offM: number } | null {
  const earthM = meanRadiusM(lat);
  const unsought = soughtOnly ? route.unsought : null;
  const radii = [...FIRST_RADII_M.filter((tried) => tried < radiusM), radiusM];
  for (const tried of radii) {
    const stretches = tried === Infinity ? allStretches(index) : stretchesNear(index, lon, lat, tried);
    const nearest = nearestOf(index, stretches, { lon, lat }, unsought);
    if (nearest === null || (tried !== Infinity && nearest.chordM > chordOfArcM(tried, earthM))) continue;
    const fromM = route.atM[nearest.step]!;
    return {
      atM: fromM + nearest.share * (route.atM[nearest.step + 1]! - fromM),
      offM: arcOfChordM(nearest.chordM, earthM),
    };
  }
  return null;
}
