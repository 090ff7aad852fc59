import type { LayerSpecification, StyleSpecification } from '@maplibre/maplibre-gl-style-spec';
import type { Feature, FeatureCollection, GeoJSON } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';
import type { Focus } from '../../state/focus.ts';
import { gapLines } from '../geometry/gap-lines.ts';
import { emptyCollection, groundFeatures, landAreas } from '../geometry/land.ts';
import type { World } from '../geometry/world-land.ts';
import { nameAnchors, westOf } from './name-anchors.ts';
import type { Palette } from './palette.ts';
import { planMarkLayers } from './plan-layers.ts';
import type { PlanOnMap } from './plan-on-map.ts';
import { routeLayers } from './route-layers.ts';
import { KEPT_CLEAR, MAP_FONT, supplyFeatures, supplyLayers } from './supply-layers.ts';

export interface StyleExtras {
  /** The world's land and borders; null until it is there, or when it cannot be had. */
  world?: World | null;
  /** The chosen gap, drawn with an outline. */
  gap?: Focus['gap'];
  /** What is shown of the plan. */
  plan?: PlanOnMap | null;
}

const collection = (features: Feature[]): FeatureCollection => ({ type: 'FeatureCollection', features });
const source = (data: GeoJSON) => ({ type: 'geojson' as const, data });

/** Hairpins finer than this are left out at each zoom, px: lines drawn beside them would throw spikes. */
const SMOOTH_PX = 1;
/** Lines of cans run further out than the lanes, so that coarser bends would throw spikes. */
const SMOOTH_CANS_PX = 5;
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
    {
      id: 'borders',
      type: 'line',
      source: 'borders',
      paint: {
        'line-color': palette.soft,
        'line-width': 1,
        'line-dasharray': [5, 2, 1, 2],
        'line-opacity': 0.8,
      },
    },
    ...groundLayers(palette),
    ...(map === null ? [] : routeLayers(palette, extras.gap ?? null)),
    // Names are placed from the top layer down, so those of supplies come before those of places.
    placeLayer(palette),
    planMarks.cans,
    planMarks.laterTurnBacks,
    ...(map === null ? [] : supplyLayers(map, palette)),
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
      line: smoothed(map === null ? emptyCollection() : lineOf(map)),
      // The contract's shapes are GeoJSON; its types are looser than @types/geojson.
      route: smoothed(
        plan !== null
          ? collection(plan.pieces)
          : map === null
            ? emptyCollection()
            : (map.route as unknown as FeatureCollection),
      ),
      gaps: smoothed(collection(map === null ? [] : edges(map, plan))),
      cans: { ...source(collection(plan?.cans ?? [])), tolerance: SMOOTH_CANS_PX },
      supplies: source(collection(map === null ? [] : supplyFeatures(map, plan?.used ?? null))),
      plan: source(collection(plan?.marks ?? [])),
    },
    layers,
  };
}

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

function groundLayers(palette: Palette): LayerSpecification[] {
  return [
    {
      id: 'coast',
      type: 'line',
      source: 'ground',
      filter: ['==', ['get', 'what'], 'coast'],
      paint: { 'line-color': palette.soft, 'line-width': 0.8 },
    },
    {
      id: 'tracks',
      type: 'line',
      source: 'ground',
      filter: ['==', ['get', 'what'], 'track'],
      layout: { 'line-join': 'round' },
      paint: { 'line-color': palette.soft, 'line-width': 1, 'line-dasharray': [4, 3] },
    },
    {
      id: 'roads',
      type: 'line',
      source: 'ground',
      filter: ['==', ['get', 'what'], 'road'],
      layout: { 'line-join': 'round', 'line-cap': 'round' },
      paint: {
        'line-color': palette.soft,
        'line-width': ['match', ['get', 'rank'], ['motorway', 'trunk', 'primary'], 1.8, 1.1],
      },
    },
  ];
}

/** Towns and villages: names without a mark, larger for larger places. */
function placeLayer(palette: Palette): LayerSpecification {
  return {
    id: 'places',
    type: 'symbol',
    source: 'ground',
    filter: ['all', ['==', ['get', 'what'], 'place'], ['!=', ['coalesce', ['get', 'name'], ''], '']],
    layout: {
      'text-field': ['get', 'name'],
      'text-font': MAP_FONT,
      'text-size': ['match', ['get', 'rank'], 'city', 16, 'town', 14, 12],
      'text-variable-anchor-offset': nameAnchors([1.3]),
      'text-max-width': 10,
      'text-letter-spacing': 0.06,
      'symbol-sort-key': ['match', ['get', 'rank'], 'city', 0, 'town', 1, 2],
    },
    paint: { 'text-color': palette.soft, 'text-halo-color': palette.sand, 'text-halo-width': 1.5 },
  };
}
