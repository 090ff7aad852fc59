import { numberAt } from '../../lists/at.ts';
import type { SpanM } from '../../quantity/span.ts';
import { metresOnStep, type RouteLine } from '../route-line.ts';
import { mergeSpans } from './cover-spans.ts';
import { CellSet, cellsAround, placesAlong } from './road-cells.ts';

/** A route may leave the mapped roads for so long, between two stretches near them, and is still on the map (ours). */
const OFF_ROADS_M = 5_000;

/** The cells within reach of a route, in which an extract's roads are looked for. */
export function bandOf({ lon, lat }: Pick<RouteLine, 'lon' | 'lat'>): CellSet {
  const cells = new Set<number>();
  for (let i = 0; i + 1 < lon.length; i += 1) {
    const [from, to] = [i, i + 1].map((at) => ({ lon: numberAt(lon, at), lat: numberAt(lat, at) }));
    if (from === undefined || to === undefined) continue;
    for (const place of placesAlong(from, to)) for (const cell of cellsAround(...place)) cells.add(cell);
  }
  return CellSet.of(cells);
}

/**
 * The stretches of the route with a road in reach: in the cell of the place or one beside it, which is 0.8 to 1.5 km
 * (2.2 km from corner to corner). Pieces away from roads that are short and lie between two others count as near.
 */
export function spansNearRoads(route: RouteLine, roadCells: Int32Array): SpanM[] {
  const roads = CellSet.of(new Set(roadCells));
  const near: SpanM[] = [];
  for (let step = 0; step + 1 < route.lon.length; step += 1) {
    const [from, to] = [step, step + 1].map((at) => ({
      lon: numberAt(route.lon, at),
      lat: numberAt(route.lat, at),
    }));
    if (from === undefined || to === undefined) continue;
    const places = [...placesAlong(from, to)];
    const last = Math.max(1, places.length - 1);
    for (const [index, place] of places.entries()) {
      if (!cellsAround(...place).some((cell) => roads.has(cell))) continue;
      // Each place stands for the half way to its neighbours.
      const fromShare = Math.max(0, (index - 0.5) / last);
      const toShare = Math.min(1, (index + 0.5) / last);
      near.push({ fromM: metresOnStep(route, step, fromShare), toM: metresOnStep(route, step, toShare) });
    }
  }
  return bridged(mergeSpans(near));
}

function bridged(spans: readonly SpanM[]): SpanM[] {
  const result: SpanM[] = [];
  for (const span of spans) {
    const last = result.at(-1);
    if (last !== undefined && span.fromM - last.toM <= OFF_ROADS_M) last.toM = span.toM;
    else result.push({ ...span });
  }
  return result;
}

/** What two lists of spans have in common; both in order and without overlaps. */
export function commonSpans(one: readonly SpanM[], other: readonly SpanM[]): SpanM[] {
  return mergeSpans(
    one
      .flatMap((a) => other.map((b) => ({ fromM: Math.max(a.fromM, b.fromM), toM: Math.min(a.toM, b.toM) })))
      .filter(({ fromM, toM }) => toM > fromM),
  );
}
