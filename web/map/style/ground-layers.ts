import type {
  ExpressionSpecification,
  LayerSpecification,
  LineLayerSpecification,
  SymbolLayerSpecification,
} from '@maplibre/maplibre-gl-style-spec';
import { groundHatchId } from './mark-images.ts';
import { nameAnchors } from './name-anchors.ts';
import type { Palette } from './palette.ts';
import { MAP_FONT } from './supply-layers.ts';

const is = (what: string): ExpressionSpecification => ['==', ['get', 'what'], what];
const ranked = (...ranks: string[]): ExpressionSpecification => [
  'in',
  ['get', 'rank'],
  ['literal', ranks.flatMap((rank) => [rank, `${rank}_link`])],
];

/** Roads by class, the least first: from which zoom they are drawn, and how wide at zooms 5 and 12, px. */
const ROADS = [
  { id: 'roads-small', ranks: ['tertiary', 'unclassified'], minzoom: 7, px: [0.5, 1.6] },
  { id: 'roads-secondary', ranks: ['secondary'], minzoom: 5, px: [0.7, 2.2] },
  { id: 'roads-primary', ranks: ['primary'], minzoom: 3, px: [1, 3] },
  { id: 'roads-main', ranks: ['motorway', 'trunk'], minzoom: 2, px: [1.6, 4.4] },
] as const;

const byZoom = ([far, near]: readonly [number, number]): ExpressionSpecification => [
  'interpolate',
  ['linear'],
  ['zoom'],
  5,
  far,
  12,
  near,
];

/** Beyond so many, tracks are those of fields and woods: they are drawn faint, and from near only (ours). */
const FEW_TRACKS = 300;

const groundLine = (
  id: string,
  filter: ExpressionSpecification,
  paint: NonNullable<LineLayerSpecification['paint']>,
  minzoom = 0,
): LineLayerSpecification => ({
  id,
  type: 'line',
  source: 'ground',
  minzoom,
  filter,
  layout: { 'line-join': 'round' },
  paint,
});

/** Lakes, rivers, borders, coast, tracks and roads, lowest first. */
export function groundLayers(palette: Palette, tracksCount: number): LayerSpecification[] {
  const border: LineLayerSpecification['paint'] = {
    'line-color': palette.soft,
    'line-width': 1,
    'line-dasharray': [6, 2, 1, 2],
  };
  return [
    {
      id: 'lakes',
      type: 'fill',
      source: 'ground',
      filter: is('lake'),
      paint: { 'fill-color': palette.stream },
    },
    groundLine('rivers', is('river'), { 'line-color': palette.stream, 'line-width': byZoom([1, 3]) }, 4),
    { id: 'borders-far', type: 'line', source: 'borders', maxzoom: 8, paint: border },
    groundLine('borders', is('border'), border, 8),
    groundLine('coast', is('coast'), { 'line-color': palette.soft, 'line-width': 0.8 }),
    tracksLayer(palette, tracksCount <= FEW_TRACKS),
    ...ROADS.map(({ id, ranks, minzoom, px }) =>
      groundLine(
        id,
        ['all', is('road'), ranked(...ranks)],
        { 'line-color': palette.road, 'line-width': byZoom(px) },
        minzoom,
      ),
    ),
  ];
}

const tracksLayer = (palette: Palette, few: boolean): LineLayerSpecification =>
  groundLine(
    'tracks',
    is('track'),
    {
      'line-color': few ? palette.soft : palette.road,
      'line-width': few ? 1 : 0.8,
      'line-dasharray': [4, 3],
    },
    few ? 0 : 10,
  );

/** Hatching where no extract says anything, and the outlines of those that there are. */
export const knownLayers = (palette: Palette): LayerSpecification[] => [
  {
    id: 'unknown-ground',
    type: 'fill',
    source: 'unknown-ground',
    paint: { 'fill-pattern': groundHatchId(palette.rule) },
  },
  {
    id: 'extracts',
    type: 'line',
    source: 'extracts',
    paint: { 'line-color': palette.soft, 'line-width': 1.2, 'line-dasharray': [2, 2] },
  },
];

/** From which zoom places of a rank are named. */
const PLACES = [
  ['city', 3, 16],
  ['town', 5, 14],
  ['village', 8, 12.5],
  ['hamlet', 10.5, 12],
] as const;

/** With so few places each is named from afar: in a desert a hamlet is a landmark (ours). */
const FEW_PLACES = 60;

/** Names, the least important first: rivers and lakes, hamlets, villages, towns, cities. */
export function nameLayers(palette: Palette, placesCount: number): SymbolLayerSpecification[] {
  const named: ExpressionSpecification = ['!=', ['coalesce', ['get', 'name'], ''], ''];
  const layer = (
    id: string,
    filter: ExpressionSpecification,
    minzoom: number,
    layout: SymbolLayerSpecification['layout'],
  ): SymbolLayerSpecification => ({
    id,
    type: 'symbol',
    source: 'ground',
    minzoom,
    filter: ['all', filter, named],
    layout: { 'text-field': ['get', 'name'], 'text-font': MAP_FONT, ...layout },
    paint: { 'text-color': palette.soft, 'text-halo-color': palette.sand, 'text-halo-width': 1.5 },
  });
  return [
    layer('names-rivers', is('river'), 9, {
      'symbol-placement': 'line',
      'symbol-spacing': 420,
      'text-size': 12,
      'text-letter-spacing': 0.1,
    }),
    layer('names-lakes', is('lake'), 9, { 'text-size': 12, 'text-max-width': 8 }),
    ...PLACES.toReversed().map(([rank, minzoom, px]) =>
      layer(
        `names-${rank}`,
        ['all', is('place'), ['==', ['get', 'rank'], rank]],
        placesCount > FEW_PLACES ? minzoom : 0,
        {
          'text-size': px,
          'text-variable-anchor-offset': nameAnchors([1.3]),
          'text-max-width': 10,
          'text-letter-spacing': 0.04,
        },
      ),
    ),
  ];
}
