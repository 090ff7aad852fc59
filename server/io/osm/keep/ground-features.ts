import type { Feature, LineString, Point } from 'geojson';
import type { GroundMark } from '../../../contract/answers/map.ts';
import type { Tags } from '../../../core/input/sources.ts';
import { isPlacedNode, type RawElement } from '../extract/raw-element.ts';
import { type GroundKind, GroundWays, groundKindOf } from './ground.ts';

type GroundFeature = Feature<Point | LineString, GroundMark>;

function lineOf(way: RawElement, nodes: ReadonlyMap<number, RawElement>): [number, number][] {
  const inline = way.geometry?.flatMap((at): [number, number][] => (at === null ? [] : [[at.lon, at.lat]]));
  if (inline !== undefined && inline.length > 0) return inline;
  return (way.nodes ?? []).flatMap((id): [number, number][] => {
    const node = nodes.get(id);
    return node?.lon === undefined || node.lat === undefined ? [] : [[node.lon, node.lat]];
  });
}

const featureOf = <G extends Point | LineString>(
  geometry: G,
  { what, rank }: GroundKind,
  tags: Tags,
): Feature<G, GroundMark> => ({
  type: 'Feature',
  geometry,
  properties: { what, name: tags.name ?? null, rank },
});

/** Each ground way among the elements once, at most as many as are kept on reading. */
function groundWaysOf(elements: readonly RawElement[]): RawElement[] {
  const ways = new GroundWays();
  const ids = new Set<number>();
  for (const element of elements) {
    const kind = element.type === 'way' ? groundKindOf('way', element.tags ?? {}) : null;
    if (kind === null || ids.has(element.id)) continue;
    ids.add(element.id);
    ways.add(element, kind);
  }
  return ways.ways;
}

/**
 * Roads, tracks, coast and places as GeoJSON, coordinates [lon, lat]; `raw` holds the ways with their nodes, and may
 * hold an object twice. At most as many ways as are kept on reading; elements that are no ground are passed over.
 */
export function groundFeatures(raw: readonly RawElement[]): GroundFeature[] {
  const nodes = new Map<number, RawElement>();
  for (const element of raw) if (element.type === 'node') nodes.set(element.id, element);
  const lines = groundWaysOf(raw).flatMap((way) => {
    const coordinates = lineOf(way, nodes);
    const tags = way.tags ?? {};
    const kind = groundKindOf('way', tags);
    return kind === null || coordinates.length < 2
      ? []
      : [featureOf({ type: 'LineString' as const, coordinates }, kind, tags)];
  });
  const places = [...nodes.values()].flatMap((node) => {
    const kind = groundKindOf('node', node.tags ?? {});
    return kind === null || !isPlacedNode(node) ? [] : [{ node, kind }];
  });
  const points = places
    .sort((a, b) => a.kind.order - b.kind.order)
    .map(({ node: { lon, lat, tags = {} }, kind }) =>
      featureOf({ type: 'Point' as const, coordinates: [lon, lat] }, kind, tags),
    );
  return [...lines, ...points];
}
