import { lineString, nearestPointOnLine, point as turfPoint } from '@turf/turf';
import type { LonLat } from '../../server/core/geodesy/lon-lat.ts';
import type { RouteDocument } from '../../server/core/input/sources.ts';
import { buildRoute } from '../../server/core/route/build/build-route.ts';
import { findPassings } from '../../server/core/route/passings/passings.ts';
import type { RouteLine } from '../../server/core/route/route-line.ts';
import { type Bench, type BenchRow, medianMsOf } from './measure.ts';

const VERTICES = 150_000;
const POINTS = 20_000;
const STEP_M = 10;
const CORRIDOR_M = 5_000;
const TARGET_MS = 1_000;
const RUNS = 5;
const TURF_SAMPLE = 5;

/** Seeded, evenly spread over 0 to 1 (a linear congruence; figures of Numerical Recipes, from memory). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** 1,500 km of winding line in 150,000 vertices. */
function syntheticRoute(): RouteDocument {
  const random = seeded(7);
  const lon = new Float64Array(VERTICES);
  const lat = new Float64Array(VERTICES);
  let heading = 0;
  let [x, y] = [85, -36];
  for (let i = 0; i < VERTICES; i += 1) {
    lon[i] = x;
    lat[i] = y;
    heading = heading * 0.995 + (random() - 0.5) * 0.2;
    x += (STEP_M * Math.cos(heading)) / 90_000;
    y += (STEP_M * Math.sin(heading)) / 111_000;
  }
  const ele = new Float64Array(VERTICES).fill(Number.NaN);
  return {
    name: 'bench',
    parts: [{ kind: 'track', name: null, segments: [{ lon, lat, ele }] }],
    waypoints: [],
    cautions: [],
  };
}

/** Points within some 6 km of the line: nearly all of them have passings, the worst case for the search. */
function syntheticPoints(document: RouteDocument): LonLat[] {
  const random = seeded(11);
  const { lon, lat } = document.parts[0]!.segments[0]!;
  return Array.from({ length: POINTS }, () => {
    const i = Math.floor(random() * VERTICES);
    return { lon: lon[i]! + (random() - 0.5) * 0.13, lat: lat[i]! + (random() - 0.5) * 0.11 };
  });
}

function built(document: RouteDocument): RouteLine {
  const route = buildRoute(document, { part: 'all', sparseStepM: 5_000 });
  if (!route.ok) throw new Error(route.refusal.code);
  return route.value;
}

/** All passings of many points on a long, dense line, the index made anew in every run. */
export const bench: Bench = async () => {
  const document = syntheticRoute();
  const places = syntheticPoints(document);
  let passings = 0;
  const route = built(document);
  const ownMs = await medianMsOf(RUNS, () => {
    // A copy of the object, so that no index is remembered for it.
    passings = findPassings({ ...route }, places, CORRIDOR_M).length;
  });
  const buildMs = await medianMsOf(RUNS, () => built(document));

  const line = lineString(Array.from(route.lon, (lon, i) => [lon, route.lat[i]!]));
  const sample = places.slice(0, TURF_SAMPLE);
  const turfMs = await medianMsOf(1, () => {
    for (const { lon, lat } of sample) nearestPointOnLine(line, turfPoint([lon, lat]), { units: 'meters' });
  });
  const rows: BenchRow[] = [
    {
      what: `every passing of ${POINTS} points at ${CORRIDOR_M / 1000} km, ${VERTICES} vertices, ${(route.lengthM / 1000).toFixed(0)} km`,
      who: 'drystage',
      medianMs: ownMs,
      runs: RUNS,
      note: `${passings} passings, index included`,
    },
    { what: 'measuring that route', who: 'drystage', medianMs: buildMs, runs: RUNS },
    {
      what: `the nearest place only, ${POINTS} points`,
      who: '@turf/turf 7 nearestPointOnLine',
      medianMs: (turfMs / TURF_SAMPLE) * POINTS,
      runs: 1,
      note: `reckoned up from ${TURF_SAMPLE} points, ${(turfMs / TURF_SAMPLE).toFixed(0)} ms each`,
    },
  ];
  return {
    title: 'Passings',
    target: `1,500 km, 150,000 vertices, 20,000 points: all passings within ${TARGET_MS / 1000} s`,
    met: ownMs <= TARGET_MS,
    rows,
  };
};
