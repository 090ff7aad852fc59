import type { Bbox, Caution } from '../../contract/common.ts';
import { wrapLongitude } from '../geodesy/longitude.ts';
import type { Outcome, Problem } from '../input/problem.ts';
import type { RouteDocument, RoutePart } from '../input/sources.ts';
import { chooseParts } from './choose-parts.ts';
import { LineGrower } from './line-grower.ts';
import type { RouteLine, SketchySpan } from './route-line.ts';

/** A jump between segments over this length is no road line: no passing is sought on it (design rule). */
export const LONG_BRIDGE_M = 1_000;

export interface RouteChoice {
  /** `all`, a number from 1 (tracks in file order, then routes), or a name. */
  part: 'all' | number | string;
  /** Steps between two points that are longer than this are called sparse, km. */
  sparseStepKm: number;
}

const refuse = (problem: Omit<Problem, 'source'>): Outcome<never> => ({
  ok: false,
  problem: { source: null, ...problem },
});

const kmText = (metres: number) =>
  metres < 1
    ? 'less than a metre'
    : metres < 1_000
      ? `${Math.round(metres)} m`
      : `${(metres / 1000).toFixed(1)} km`;

/** [w, s, e, n] of unwrapped longitudes; west > east when the line crosses the 180th meridian. */
function bboxOf(lon: Float64Array, lat: Float64Array): Bbox {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < lon.length; i += 1) {
    west = Math.min(west, lon[i]!);
    east = Math.max(east, lon[i]!);
    south = Math.min(south, lat[i]!);
    north = Math.max(north, lat[i]!);
  }
  if (east - west >= 360) return [-180, south, 180, north];
  return [wrapLongitude(west), south, wrapLongitude(east), north];
}

function nameOf(document: RouteDocument, parts: readonly RoutePart[]): string {
  const first = parts[0]?.name ?? null;
  return (parts.length === 1 ? (first ?? document.name) : (document.name ?? first)) ?? 'unnamed route';
}

/** Joins a span to the one before when it is of the same kind and begins where that ends. */
function addSpan(spans: SketchySpan[], span: SketchySpan): void {
  const last = spans.at(-1);
  if (last !== undefined && last.kind === span.kind && last.toM === span.fromM) last.toM = span.toM;
  else spans.push({ ...span });
}

function bridgeCaution(fromM: number, toM: number): Caution {
  const long = toM - fromM > LONG_BRIDGE_M;
  const text = `The line breaks off at km ${(fromM / 1000).toFixed(1)}: a jump of ${kmText(toM - fromM)} is bridged by a straight line${long ? ', on which no supply is sought' : ''}`;
  return { code: 'bridge', text, fromKm: fromM / 1000, toKm: toM / 1000 };
}

function sparseCaution(steps: readonly SketchySpan[], longest: SketchySpan, sparseStepKm: number): Caution {
  const text = `${steps.length} step(s) between points are longer than ${sparseStepKm} km, the longest ${kmText(longest.toM - longest.fromM)}: there the line is not the road, and gaps across it are at best unknown`;
  return { code: 'sparse-steps', text, fromKm: longest.fromM / 1000, toKm: longest.toM / 1000 };
}

/**
 * Measures the route: chosen parts with all their segments in order, jumps bridged, long steps densified along the
 * geodesic, metres along on WGS 84. Cautions name jumps (`bridge`) and long straight steps (`sparse-steps`) with
 * their km. Refuses with `gpx-no-points`, `gpx-one-point` (also when all points lie at one place) or
 * `part-unknown`.
 */
export function buildRoute(document: RouteDocument, choice: RouteChoice): Outcome<RouteLine> {
  const chosen = chooseParts(document, choice.part);
  if (!chosen.ok) return chosen;
  const { parts } = chosen.value;
  const cautions: Caution[] = [...document.cautions, ...chosen.value.cautions];

  const line = new LineGrower();
  const sketchy: SketchySpan[] = [];
  const sparse: SketchySpan[] = [];
  let longestSparse: SketchySpan | undefined;
  let longestStepM = 0;
  let vertices = 0;
  let partsUsed = 0;
  for (const part of parts) {
    const before = vertices;
    for (const segment of part.segments) {
      for (let i = 0; i < segment.lon.length; i += 1) {
        const fromM = line.lengthM;
        const jump = i === 0;
        line.extend(segment.lon[i]!, segment.lat[i]!, jump ? LONG_BRIDGE_M : Infinity, segment.ele[i]);
        const stepLengthM = line.lengthM - fromM;
        vertices += 1;
        if (stepLengthM === 0) continue;
        const toM = line.lengthM;
        if (jump) {
          cautions.push(bridgeCaution(fromM, toM));
          if (stepLengthM > LONG_BRIDGE_M) addSpan(sketchy, { kind: 'bridge', fromM, toM });
          continue;
        }
        longestStepM = Math.max(longestStepM, stepLengthM);
        if (stepLengthM > choice.sparseStepKm * 1000) {
          const span: SketchySpan = { kind: 'sparse', fromM, toM };
          sparse.push(span);
          addSpan(sketchy, span);
          if (longestSparse === undefined || stepLengthM > longestSparse.toM - longestSparse.fromM)
            longestSparse = span;
        }
      }
    }
    if (vertices > before) partsUsed += 1;
  }
  if (vertices === 0) {
    return refuse({
      code: 'gpx-no-points',
      place: null,
      came: parts.length === 0 ? 'no track and no route with points' : 'the chosen part has no points',
      expected: 'a track or route with at least two points',
      remedy:
        document.waypoints.length > 0
          ? 'Waypoints alone are no route: export the track or route itself'
          : 'Export the track or route again and check that it is not empty',
    });
  }
  if (line.lengthM === 0) {
    return refuse({
      code: 'gpx-one-point',
      place: null,
      came: vertices === 1 ? 'a single point' : `${vertices} points, all at one place`,
      expected: 'a line of at least two points at different places',
      remedy: 'Export the whole track or route',
    });
  }
  if (longestSparse !== undefined) cautions.push(sparseCaution(sparse, longestSparse, choice.sparseStepKm));

  const { lon, lat, atM, eleM, unsought } = line.finish();
  return {
    ok: true,
    value: {
      name: nameOf(document, parts),
      lon,
      lat,
      atM,
      eleM,
      unsought,
      lengthM: line.lengthM,
      vertices,
      parts: partsUsed,
      longestStepM,
      bbox: bboxOf(lon, lat),
      sketchy,
      cautions,
    },
  };
}
