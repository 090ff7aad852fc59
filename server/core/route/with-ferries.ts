import { numberAt } from '../lists/at.ts';
import type { SpanM } from '../quantity/span.ts';
import type { Ferry } from './ferry.ts';
import type { RouteLine, SketchySpan } from './route-line.ts';

/** What is left of a span outside others. */
function outside<Span extends SpanM>(span: Span, others: readonly SpanM[]): Span[] {
  let rest = [span];
  for (const { fromM, toM } of others)
    rest = rest.flatMap((piece) =>
      [
        { ...piece, toM: Math.min(piece.toM, fromM) },
        { ...piece, fromM: Math.max(piece.fromM, toM) },
      ].filter((left) => left.toM > left.fromM),
    );
  return rest;
}

/** Places of vertices, those in between put in, with the vertex before and the share of its step. */
function placesOf(
  atM: Float64Array,
  between: readonly number[],
): { atM: number; vertex: number; share: number }[] {
  const places = Array.from(atM, (at, vertex) => ({ atM: at, vertex, share: 0 }));
  for (const at of between) {
    const next = atM.findIndex((vertexM) => vertexM >= at);
    if (next <= 0 || atM[next] === at) continue;
    const vertex = next - 1;
    const lengthM = numberAt(atM, next) - numberAt(atM, vertex);
    places.push({ atM: at, vertex, share: (at - numberAt(atM, vertex)) / lengthM });
  }
  return places.sort((a, b) => a.atM - b.atM || a.vertex - b.vertex);
}

/**
 * A route with the ferries that it takes: no supply is sought on them, and no straight line there is a doubt. It gets a
 * vertex where each begins and ends.
 */
export function withFerries(route: RouteLine, ferries: readonly Ferry[]): RouteLine {
  if (ferries.length === 0) return route;
  const places = placesOf(
    route.atM,
    ferries.flatMap(({ fromM, toM }) => [fromM, toM]),
  );
  const between = (values: Float64Array): Float64Array =>
    Float64Array.from(places, ({ vertex, share }) => {
      const from = numberAt(values, vertex);
      return share === 0 ? from : from + share * (numberAt(values, vertex + 1) - from);
    });
  const atM = Float64Array.from(places, (place) => place.atM);
  const isAboard = (step: number): boolean =>
    ferries.some(({ fromM, toM }) => fromM <= numberAt(atM, step) && numberAt(atM, step + 1) <= toM);
  const unsought = Uint8Array.from(places.slice(1), (_, step) =>
    isAboard(step) ? 1 : (route.unsought[places[step]?.vertex ?? 0] ?? 0),
  );
  const sketchy = route.sketchy.flatMap((span): SketchySpan[] => outside(span, ferries));
  return {
    ...route,
    lon: between(route.lon),
    lat: between(route.lat),
    atM,
    eleM: route.eleM === null ? null : between(route.eleM),
    unsought,
    sketchy,
    ferries,
  };
}
