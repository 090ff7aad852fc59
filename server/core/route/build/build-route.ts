import type { Bbox } from '../../../contract/common.ts';
import { wrapLongitude } from '../../geodesy/longitude.ts';
import type { RouteDocument, RoutePart } from '../../input/sources.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { RouteRefusal } from '../../phrases/route.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { RouteLine, SketchySpan } from '../route-line.ts';
import { chooseParts } from './choose-parts.ts';
import { LONG_BRIDGE_M, LONGEST_ROUTE_M, Measurement } from './measurement.ts';
import type { RouteOutcome } from './route-outcome.ts';
import { viaSteps } from './via-steps.ts';

export interface RouteChoice {
  /** `all`, a number from 1 (tracks in file order, then routes), or a name. */
  part: 'all' | number | string;
  /** Steps between two points that are longer than this are called sparse, metres. */
  sparseStepM: number;
}

const refuse = (refusal: RouteRefusal): RouteOutcome<never> => ({ ok: false, refusal });

/** [w, s, e, n] of unwrapped longitudes; west > east when the line crosses the 180th meridian. */
function bboxOf(lons: Float64Array, lats: Float64Array): Bbox {
  const [west, east] = endsOf(lons);
  const [south, north] = endsOf(lats);
  if (east - west >= 360) return [-180, south, 180, north];
  return [wrapLongitude(west), south, wrapLongitude(east), north];
}

function endsOf(values: Float64Array): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return [least, most];
}

function nameOf(document: RouteDocument, parts: readonly RoutePart[]): string {
  const first = parts[0]?.name ?? null;
  return (parts.length === 1 ? (first ?? document.name) : (document.name ?? first)) ?? 'unnamed route';
}

function bridgeCaution({ fromM, toM }: SpanM): Caution {
  const jumpM = toM - fromM;
  return { code: 'bridge', facts: { atM: fromM, jumpM, sought: jumpM <= LONG_BRIDGE_M }, fromM, toM };
}

function sparseCaution(steps: number, { fromM, toM }: SpanM, overM: number): Caution {
  return { code: 'sparse-steps', facts: { steps, longestM: toM - fromM, overM }, fromM, toM };
}

/** Bridges over 1 km and sparse steps in route order, neighbours of one kind joined. */
function sketchyOf(
  { bridges, sparseSteps }: Measurement,
  line: Pick<RouteLine, 'lon' | 'lat' | 'atM'>,
): SketchySpan[] {
  const isVia = viaSteps(line, sparseSteps);
  const spans: SketchySpan[] = [
    ...bridges
      .filter(({ fromM, toM }) => toM - fromM > LONG_BRIDGE_M)
      .map((span) => ({ kind: 'bridge' as const, ...span })),
    ...sparseSteps.map((span, step) => ({
      kind: isVia[step] === true ? ('via' as const) : ('sparse' as const),
      ...span,
    })),
  ];
  const joined: SketchySpan[] = [];
  for (const span of spans.sort((a, b) => a.fromM - b.fromM)) {
    const last = joined.at(-1);
    if (last?.kind === span.kind && last.toM === span.fromM) last.toM = span.toM;
    else joined.push(span);
  }
  return joined;
}

/**
 * Measures the route: chosen parts with all their segments in order, jumps bridged, long steps densified along the
 * geodesic, metres along on WGS 84. Cautions name jumps (`bridge`) and long straight steps (`sparse-steps`) with
 * their km. Refuses with `gpx-no-points`, `gpx-one-point` (also when all points lie at one place), `gpx-too-long` or
 * `part-unknown`.
 */
export function buildRoute(document: RouteDocument, choice: RouteChoice): RouteOutcome<RouteLine> {
  const chosen = chooseParts(document, choice.part);
  if (!chosen.ok) return chosen;
  const { parts } = chosen.value;
  const measurement = new Measurement(parts, choice.sparseStepM);
  if (measurement.isTooLong || measurement.line.lengthM > LONGEST_ROUTE_M)
    return refuse({ code: 'gpx-too-long', facts: { mostM: LONGEST_ROUTE_M } });
  if (measurement.vertices === 0) {
    const facts = { chosen: parts.length > 0, waypoints: document.waypoints.length > 0 };
    return refuse({ code: 'gpx-no-points', facts });
  }
  if (measurement.line.lengthM === 0) {
    return refuse({ code: 'gpx-one-point', facts: { points: measurement.vertices } });
  }

  const { longestSparse } = measurement;
  const cautions: Caution[] = [
    ...document.cautions,
    ...chosen.value.cautions,
    ...measurement.bridges.map(bridgeCaution),
  ];
  if (longestSparse !== undefined) {
    cautions.push(sparseCaution(measurement.sparseSteps.length, longestSparse, choice.sparseStepM));
  }
  const line = measurement.line.finish();
  return {
    ok: true,
    value: {
      name: nameOf(document, parts),
      ...line,
      lengthM: measurement.line.lengthM,
      vertices: measurement.vertices,
      parts: measurement.parts,
      longestStepM: measurement.longestStepM,
      bbox: bboxOf(line.lon, line.lat),
      sketchy: sketchyOf(measurement, line),
      cautions,
    },
  };
}
