import type { LayerSpecification, StyleSpecification } from '@maplibre/maplibre-gl-style-spec';
import type { Feature, FeatureCollection, GeoJSON } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';
import type { Span } from '../../../server/contract/common.ts';
import type { Focus } from '../../state/focus.ts';
import { gapLines } from '../geometry/gap-lines.ts';
import { troubleSpans } from '../geometry/key-supplies.ts';
import { emptyCollection, groundFeatures, landAreas } from '../geometry/land.ts';
import { extractAreas, unknownGround } from '../geometry/unknown-ground.ts';
import type { World } from '../geometry/world-land.ts';
import { groundLayers, knownLayers, nameLayers } from './ground-layers.ts';
import { westOf } from './name-anchors.ts';
import type { Palette } from './palette.ts';
import { planMarkLayers } from './plan-layers.ts';
import { lineFeature, type PlanOnMap } from './plan-on-map.ts';
import { routeLayers } from './route-layers.ts';
import { KEPT_CLEAR, supplyFeatures, supplyLayers, supplySources } from './supply-layers.ts';

export interface StyleExtras {
  /** The world's land and borders; null until it is there, or when it cannot be had. */
  world?: World | null;
  /** The chosen gap, drawn with an outline. */
  gap?: Focus['gap'];
  /** What is shown of the plan. */
  plan?: PlanOnMap | null;
  /** Stretches of the route that are said to be closed. */
  closed?: readonly Span[];
}

const collection = (features: Feature[]): FeatureCollection => ({ type: 'FeatureCollection', features });
const source = (data: GeoJSON) => ({ type: 'geojson' as const, data });

/**
 * Hairpins finer than this are left out at each zoom, px: lines drawn beside them would throw spikes. The same for the route
 * and all that runs beside it, so that they run beside each other.
 */
const SMOOTH_PX = 1.4;
const smoothed = (data: GeoJSON) => ({ ...source(data), tolerance: SMOOTH_PX });

/**
 * The whole map as one style: a pure function of what the analysis gives to draw and of the palette. No glyphs, sprites
 * or tiles: it needs no network. Without data (null) it is the empty ground.
 */
export function mapStyle(
  map: MapData | null,
  palette: Palette,
  extras: StyleExtras = {},
): StyleSpecification {
  const ground = map === null ? [] : groundFeatures(map);
  const land = landAreas(ground);
  const world = extras.world ?? null;
  const plan = extras.plan ?? null;
  const planMarks = planMarkLayers(palette);
  const unknown = map === null ? null : unknownGround(map);
  const places = ground.filter(({ properties }) => properties.what === 'place').length;
  // Without any outline of land the ground says nothing of sea or land.
  const outlined = world !== null || land.length > 0;
  const layers: LayerSpecification[] = [
    {
      id: 'background',
      type: 'background',
      paint: { 'background-color': outlined ? palette.sea : palette.paper },
    },
    { id: 'world', type: 'fill', source: 'world', paint: { 'fill-color': palette.sand } },
    { id: 'land', type: 'fill', source: 'land', paint: { 'fill-color': palette.sand } },
    ...groundLayers(palette, ground.filter(({ properties }) => properties.what === 'track').length),
    ...knownLayers(palette),
    ...(map === null ? [] : routeLayers(palette, extras.gap ?? null)),
    // Names are placed from the top layer down, so those of supplies come before those of places.
    ...nameLayers(palette, places),
    planMarks.cans,
    planMarks.laterTurnBacks,
    ...(map === null ? [] : supplyLayers(palette)),
    planMarks.turnBacks,
    KEPT_CLEAR,
  ];
  return {
    version: 8,
    sources: {
      world: source(world?.land ?? emptyCollection()),
      borders: source(world?.borders ?? emptyCollection()),
      land: source(collection(land)),
      ground: source(collection(map === null ? [] : placed(ground, map))),
      extracts: source(collection(map === null ? [] : extractAreas(map))),
      'unknown-ground': source(collection(unknown === null ? [] : [unknown])),
      line: smoothed(map === null ? emptyCollection() : lineOf(map)),
      route: smoothed(collection(map === null ? [] : piecesOf(map, plan))),
      gaps: smoothed(collection(map === null ? [] : edges(map, plan))),
      cans: smoothed(collection(plan?.cans ?? [])),
      closed: smoothed(collection(map === null ? [] : closedLines(map, extras.closed ?? []))),
      ...supplySources(map === null ? [] : supplyFeatures(map, plan?.used ?? null)),
      plan: source(collection(plan?.marks ?? [])),
    },
    layers,
  };
}

/** The route in pieces, each said to lie in trouble where its gap is not held or a plan has cans carried. */
function piecesOf(map: MapData, plan: PlanOnMap | null): Feature[] {
  // The contract's shapes are GeoJSON; its types are looser than @types/geojson.
  if (plan === null)
    return map.route.features.map(
      ({ geometry, properties }) =>
        ({
          type: 'Feature',
          geometry,
          properties: { ...properties, trouble: properties.verdict !== 'enough' },
        }) as Feature,
    );
  const spans = [...troubleSpans(map), ...plan.carries];
  return plan.pieces.map((piece) => {
    const { commodity, fromKm, toKm } = piece.properties;
    const middleKm = (fromKm + toKm) / 2;
    const trouble = spans.some(
      (span) => span.commodity === commodity && span.fromKm <= middleKm && middleKm <= span.toKm,
    );
    return { ...piece, properties: { ...piece.properties, trouble } };
  });
}

const closedLines = ({ line }: MapData, closed: readonly Span[]): Feature[] =>
  closed.flatMap((span) => lineFeature(line, span, {}));

/** The gaps, for the chosen one, with their verdicts; by a plan its legs have the verdicts. */
function edges(map: MapData, plan: PlanOnMap | null): Feature[] {
  const gaps = gapLines(map);
  if (plan === null) return gaps;
  const silent = gaps.map((gap) => ({ ...gap, properties: { ...gap.properties, verdict: '' } }));
  return [...silent, ...plan.legs];
}

/** The ground with what its names need to stand well. */
function placed(ground: readonly Feature[], map: MapData): Feature[] {
  const isWest = westOf(map);
  return ground.map((feature) =>
    feature.geometry.type === 'Point'
      ? { ...feature, properties: { ...feature.properties, west: isWest(feature.geometry.coordinates[0]) } }
      : feature,
  );
}

function lineOf(map: MapData): FeatureCollection {
  const { coordinates } = map.line;
  if (coordinates.length < 2) return emptyCollection();
  return collection([{ type: 'Feature', geometry: { type: 'LineString', coordinates }, properties: {} }]);
}
