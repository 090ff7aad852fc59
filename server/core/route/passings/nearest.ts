import { arcOfChordM, chordOfArcM } from '../../geodesy/cartesian.ts';
import type { LonLat } from '../../geodesy/lon-lat.ts';
import { numberAt } from '../../lists/at.ts';
import { chordToVertex2, indexRoute, type RouteIndex, stretchRun, toBallM } from '../route-index.ts';
import { metresOnStep, type RouteLine } from '../route-line.ts';
import { stretchesNear } from './stretches-near.ts';
import { type Viewpoint, viewpointAt } from './viewpoint.ts';

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

/** The nearest of some stretches; steps marked in `unsought` are left out. */
function nearestOf(
  { xyz, chord2, balls, stretchStart }: RouteIndex,
  stretches: readonly number[],
  from: Viewpoint,
  unsought: Uint8Array | null,
): Nearest | null {
  let best: Nearest | null = null;
  for (const stretch of stretches) {
    if (best !== null && toBallM(balls, stretch, from) >= best.chordM) continue;
    const { firstStep, endStep } = stretchRun(stretchStart, stretch);
    let here2 = chordToVertex2(xyz, firstStep, from);
    for (let step = firstStep; step < endStep; step += 1) {
      const next2 = chordToVertex2(xyz, step + 1, from);
      if (unsought === null || unsought[step] !== 1) {
        const { share, away2 } = onStep(numberAt(chord2, step), here2, next2);
        const chordM = Math.sqrt(away2);
        if (best === null || chordM < best.chordM - TIE_M) best = { step, share, chordM };
      }
      here2 = next2;
    }
  }
  return best;
}

const allStretches = ({ stretchStart }: RouteIndex): number[] =>
  Array.from({ length: stretchStart.length - 1 }, (_, stretch) => stretch);

/**
 * The single nearest place on the route within `radiusM` (Infinity for anywhere), null when there is none; of ties
 * the earlier. `soughtOnly` leaves out steps marked `unsought`. Metres along and off on WGS 84; off the route within
 * a metre up to 100 km, within 0.3 % beyond.
 */
export function nearestPlace(
  route: RouteLine,
  place: LonLat,
  { radiusM, soughtOnly }: { radiusM: number; soughtOnly: boolean },
): { atM: number; offM: number } | null {
  const index = indexRoute(route);
  const from = viewpointAt(place);
  const unsought = soughtOnly ? route.unsought : null;
  for (const triedM of [...FIRST_RADII_M.filter((first) => first < radiusM), radiusM]) {
    const stretches = triedM === Infinity ? allStretches(index) : stretchesNear(index, from, triedM);
    const nearest = nearestOf(index, stretches, from, unsought);
    if (nearest === null) continue;
    const { step, share, chordM } = nearest;
    if (triedM !== Infinity && chordM > chordOfArcM(triedM, from.earthM)) continue;
    return { atM: metresOnStep(route, step, share), offM: arcOfChordM(chordM, from.earthM) };
  }
  return null;
}
