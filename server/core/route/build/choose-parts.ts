import type { RouteDocument, RoutePart } from '../../input/sources.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { RouteOutcome } from './route-outcome.ts';

export interface ChosenParts {
  parts: RoutePart[];
  cautions: Caution[];
}

const pointsOf = (part: RoutePart) => part.segments.reduce((sum, segment) => sum + segment.lon.length, 0);
const plain = (name: string) => name.trim().toLowerCase();

/** Numbered from 1: the tracks in file order, then the routes. */
function numbered(document: RouteDocument): RoutePart[] {
  return [
    ...document.parts.filter((part) => part.kind === 'track'),
    ...document.parts.filter((part) => part.kind === 'route'),
  ];
}

/** The parts that a number (from 1) or a name means: one, none, or several of the same name. */
function partsMeant(parts: readonly RoutePart[], wanted: number | string): RoutePart[] {
  if (typeof wanted === 'number') {
    const part = Number.isInteger(wanted) ? parts[wanted - 1] : undefined;
    return part === undefined ? [] : [part];
  }
  const exact = parts.filter((part) => part.name === wanted);
  if (exact.length > 0) return exact;
  const alike = parts.filter((part) => part.name !== null && plain(part.name) === plain(wanted));
  if (alike.length > 0) return alike;
  return /^\d+$/.test(wanted.trim()) ? partsMeant(parts, Number(wanted)) : [];
}

/**
 * The parts of a document that make the route: all tracks, without tracks all routes, or the one chosen by number
 * (from 1: tracks in file order, then routes) or by name. Refuses with `part-unknown` when the choice is none or
 * several of them. Tracks and routes without a point do not count as being there.
 */
export function chooseParts(
  document: RouteDocument,
  wanted: 'all' | number | string,
): RouteOutcome<ChosenParts> {
  const parts = numbered(document);
  if (wanted === 'all') {
    const tracks = parts.filter((part) => part.kind === 'track' && pointsOf(part) > 0);
    const routes = parts.filter((part) => part.kind === 'route' && pointsOf(part) > 0);
    if (tracks.length === 0) return { ok: true, value: { parts: routes, cautions: [] } };
    if (routes.length === 0) return { ok: true, value: { parts: tracks, cautions: [] } };
    const facts = { tracks: tracks.length, routes: routes.length };
    return { ok: true, value: { parts: tracks, cautions: [{ code: 'routes-left-out', facts }] } };
  }
  const found = partsMeant(parts, wanted);
  const [part] = found;
  if (part !== undefined && found.length === 1) return { ok: true, value: { parts: [part], cautions: [] } };
  const facts = {
    wanted,
    bearers: found.length,
    parts: parts.map(({ kind, name }) => ({ kind, name })),
  };
  return { ok: false, refusal: { code: 'part-unknown', facts } };
}
