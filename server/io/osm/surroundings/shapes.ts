import { isNear, type NearGrid } from '../../../app/near-route.ts';
import type { OsmShape, Surrounding, SurroundingKind, Tags } from '../../../core/input/sources.ts';
import { pairsOf } from '../../../core/lists/pairs.ts';
import { type CellSet, cellOf, placesAlong } from '../../../core/route/cover/road-cells.ts';
import { durationHours } from '../../../core/surroundings/duration.ts';
import { isAreaKind, isFresh, isKeptWhole, surroundingKinds } from '../../../core/surroundings/kinds.ts';
import { keyOf } from '../extract/element-key.ts';
import { boxOfPositions } from '../extract/far-objects.ts';
import type { LatLon } from '../extract/position.ts';
import type { Member, RawElement } from '../extract/raw-element.ts';

/** Positions of a line in turn; null where one is not known. */
export type Drawn = readonly (LatLon | null)[];

const isRing = ({ nodes, geometry }: RawElement): boolean => {
  if (nodes !== undefined) return nodes.length >= 4 && nodes[0] === nodes.at(-1);
  const [first, last] = [geometry?.[0], geometry?.at(-1)];
  return (geometry?.length ?? 0) >= 4 && first?.lat === last?.lat && first?.lon === last?.lon;
};

/** The form of an element; null for relations that draw nothing. */
function shapeOf(element: RawElement): OsmShape | null {
  if (element.type === 'node') return 'point';
  if (element.type === 'way') return isRing(element) ? 'ring' : 'line';
  const type = element.tags?.type;
  return type === 'multipolygon' ? 'area' : type === 'boundary' ? 'boundary' : null;
}

const NONE: readonly SurroundingKind[] = [];

/** What an element is of the ground that bears on supplies. */
export function kindsOf(element: RawElement): readonly SurroundingKind[] {
  if (element.tags === undefined) return NONE;
  const shape = shapeOf(element);
  return shape === null ? NONE : surroundingKinds(element.tags, shape);
}

/** The land that surroundings are read in. */
export interface SurroundingLand {
  readonly near: NearGrid;
  readonly reach: CellSet;
}

/** Positions one after the other, longitude first. */
const packed = (places: readonly LatLon[]): Float64Array => {
  const line = new Float64Array(places.length * 2);
  for (const [index, { lon, lat }] of places.entries()) line.set([lon, lat], index * 2);
  return line;
};

function touches(reach: CellSet, from: LatLon, to: LatLon): boolean {
  for (const [lon, lat] of placesAlong(from, to)) if (reach.has(cellOf(lon, lat))) return true;
  return false;
}

/** The pieces of a line that come within reach of the route, those that hang together as one. */
function withinReach(line: Drawn, reach: CellSet): Float64Array[] {
  const runs: LatLon[][] = [];
  let open: LatLon[] = [];
  const close = (): void => {
    if (open.length > 1) runs.push(open);
    open = [];
  };
  for (const [index, to] of line.entries()) {
    const from = line[index - 1] ?? null;
    if (from === null || to === null || !touches(reach, from, to)) close();
    else open = open.length === 0 ? [from, to] : [...open, to];
  }
  close();
  return runs.map(packed);
}

/** A line all of whose positions are known, where it comes within reach of the route. */
function wholeWithin(line: Drawn, reach: CellSet): Float64Array[] {
  const places = line.filter(isPlaced);
  const touchesIt = pairsOf(places).some(([from, to]) => touches(reach, from, to));
  return touchesIt && places.length === line.length ? [packed(places)] : [];
}

const isPlaced = (place: LatLon | null): place is LatLon => place !== null;

function linesFor(
  what: SurroundingKind,
  lines: readonly Drawn[],
  isWhole: boolean,
  { near, reach }: SurroundingLand,
): Float64Array[] {
  if (!isAreaKind(what)) {
    const [first] = lines;
    const [place = null] = first ?? [];
    if (what === 'level-crossing' || what === 'settlement')
      return place !== null && touches(reach, place, place) ? [packed([place])] : [];
    if (isKeptWhole(what)) return lines.flatMap((line) => wholeWithin(line, reach));
    return lines.flatMap((line) => withinReach(line, reach));
  }
  // An area is whole or not known: with a side missing nobody can tell its inside.
  if (!isWhole || lines.some((line) => !line.every(isPlaced))) return [];
  const places = lines.flatMap((line) => line.filter(isPlaced));
  const box = boxOfPositions(places.map(({ lon, lat }) => [lon, lat] as const));
  return box !== null && isNear(near, box) ? lines.map((line) => packed(line.filter(isPlaced))) : [];
}

/** How the lines of elements are found. */
export interface Lines {
  lineOf: (way: RawElement) => Drawn | null;
  /** Null for one that is missing. */
  memberLine: (member: Member) => Drawn | null;
}

export const lineOfWay = (way: RawElement | undefined, lineOf: Lines['lineOf']): Drawn | null =>
  way === undefined ? null : lineOf(way);

const placeOf = ({ lon, lat }: RawElement): LatLon | null =>
  lon === undefined || lat === undefined ? null : { lon, lat };

/** What elements are of the ground that bears on supplies, each by its lines: one of a node or way, of a relation its members'. */
export function surroundingsFrom(
  elements: readonly RawElement[],
  land: SurroundingLand,
  { lineOf, memberLine }: Lines,
): Surrounding[] {
  return elements.flatMap((element) => {
    const shaped = shapedOf(element);
    if (shaped === null) return [];
    const drawn =
      element.type === 'node'
        ? [[placeOf(element)]]
        : element.type === 'way'
          ? [lineOf(element)]
          : (element.members ?? []).filter(({ type }) => type === 'way').map(memberLine);
    const lines = drawn.filter((line): line is Drawn => line !== null);
    return surroundingsOf(shaped, lines, lines.length === drawn.length, land);
  });
}

/** A mapped object as far as its kinds go. */
export interface Shaped {
  id: string;
  tags: Tags;
  shape: OsmShape;
}

/** An element as a shaped object; null where it is none. */
function shapedOf(element: RawElement): Shaped | null {
  const shape = shapeOf(element);
  return shape === null || element.tags === undefined
    ? null
    : { id: keyOf(element), tags: element.tags, shape };
}

/** What of the ground that bears on supplies an object with its lines is. `isWhole` where none of them is missing. */
export function surroundingsOf(
  { id, tags, shape }: Shaped,
  lines: readonly Drawn[],
  isWhole: boolean,
  land: SurroundingLand,
): Surrounding[] {
  return surroundingKinds(tags, shape).flatMap((what) => {
    const kept = linesFor(what, lines, isWhole, land);
    const hours = what === 'ferry' ? durationHours(tags.duration ?? '') : null;
    const fresh = (what === 'river' || what === 'lake') && isFresh(tags) ? ({ fresh: true } as const) : {};
    const told = { id, what, name: tags.name ?? null, lines: kept, ...fresh };
    return kept.length === 0 ? [] : [hours === null ? told : { ...told, hours }];
  });
}
