import type {
  DataDrivenPropertyValueSpecification,
  ExpressionSpecification,
  FilterSpecification,
  LineLayerSpecification,
} from '@maplibre/maplibre-gl-style-spec';
import type { Focus } from '../../state/focus.ts';
import { hatchImageId } from './mark-images.ts';
import type { Palette } from './palette.ts';

type Commodity = 'fuel' | 'water';

/** Width of one full lane by zoom, px: [zoom, px]. */
const LANE: readonly (readonly [number, number])[] = [
  [3, 5],
  [6, 9],
  [10, 12],
  [14, 16],
];
/** Clear ground between the two lanes, on either side of the middle. */
const MIDDLE_PX = 1.2;
/** No lane is drawn thinner than this while something is left. */
const THINNEST_PX = 1.5;
/** Dashes of the reserve need this much to be seen. */
const THINNEST_DASH_PX = 2.5;

type LaneValue = (lanePx: number) => number | ExpressionSpecification;

/** A value that follows the lane's width with the zoom. */
const byZoom = (value: LaneValue): DataDrivenPropertyValueSpecification<number> =>
  [
    'interpolate',
    ['linear'],
    ['zoom'],
    ...LANE.flatMap(([zoom, lanePx]) => [zoom, value(lanePx)]),
  ] as unknown as ExpressionSpecification;

/** Fuel runs left of the line, water right of it: MapLibre's line-offset is positive to the right. */
const SIDE: Record<Commodity, -1 | 1> = { fuel: -1, water: 1 };

const shareOf = (lanePx: number, thinnestPx: number): ExpressionSpecification => [
  'max',
  thinnestPx,
  ['*', ['get', 'share'], lanePx],
];

const widthByShare = (thinnestPx: number) => byZoom((lanePx) => shareOf(lanePx, thinnestPx));
/** The lane's inner edge stays at the middle, whatever its width. */
const offsetByShare = (commodity: Commodity, thinnestPx: number) =>
  byZoom((lanePx) => ['*', SIDE[commodity], ['+', MIDDLE_PX, ['/', shareOf(lanePx, thinnestPx), 2]]]);
const fullWidth = byZoom((lanePx) => lanePx);
const fullOffset = (commodity: Commodity) => byZoom((lanePx) => SIDE[commodity] * (MIDDLE_PX + lanePx / 2));
/** Just outside a full lane, where its verdict is drawn. */
const edgeOffset = (commodity: Commodity) => byZoom((lanePx) => SIDE[commodity] * (MIDDLE_PX + lanePx + 2.5));

/** Outside that again, clear of it: the stretches over which full cans are carried. */
const cansOffset = (commodity: Commodity) => byZoom((lanePx) => SIDE[commodity] * (MIDDLE_PX + lanePx + 6));

const piece = (commodity: Commodity, ...more: ExpressionSpecification[]): FilterSpecification =>
  ['all', ['==', ['get', 'commodity'], commodity], ...more] as ExpressionSpecification;
const state = (name: 'left' | 'reserve' | 'dry'): ExpressionSpecification => ['==', ['get', 'state'], name];
const verdict = (name: string): ExpressionSpecification => ['==', ['get', 'verdict'], name];

/** Picks the chosen gap's line; none without one. */
export const chosenGap = (gap: Focus['gap']): FilterSpecification =>
  [
    'all',
    ['==', ['get', 'commodity'], gap?.commodity ?? ''],
    ['==', ['get', 'gap'], gap?.index ?? -1],
  ] as ExpressionSpecification;

export const CHOSEN_LAYER = 'route-chosen';
/** Wide and unseen: where the pointer is taken to be on the route. */
export const HIT_LAYER = 'route-hit';

/** The route's layers, lowest first: chosen gap, casing, then for each commodity what is left, verdict, no cover. */
export function routeLayers(palette: Palette, gap: Focus['gap']): LineLayerSpecification[] {
  return [
    {
      id: CHOSEN_LAYER,
      type: 'line',
      source: 'gaps',
      filter: chosenGap(gap),
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': palette.ink, 'line-width': byZoom((lanePx) => 2 * lanePx + 16) },
    },
    {
      id: 'route-casing',
      type: 'line',
      source: 'line',
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: { 'line-color': palette.sheet, 'line-width': byZoom((lanePx) => 2 * lanePx + 10) },
    },
    ...(['fuel', 'water'] as const).flatMap((commodity) => commodityLayers(commodity, palette)),
    // Two lines, one in the other: what is carried must show on sand, sea and the chosen stretch alike.
    ...(['fuel', 'water'] as const).flatMap((commodity) => [
      cansLayer(commodity, 'cans-casing', palette.sheet, 5),
      cansLayer(commodity, 'cans', palette[commodity], 2.4),
    ]),
    {
      id: HIT_LAYER,
      type: 'line',
      source: 'line',
      paint: { 'line-color': palette.ink, 'line-opacity': 0, 'line-width': 28 },
    },
  ];
}

function commodityLayers(commodity: Commodity, palette: Palette): LineLayerSpecification[] {
  const opacity: ExpressionSpecification = ['case', ['get', 'noCover'], 0.45, 1];
  return [
    {
      id: `route-${commodity}-left`,
      type: 'line',
      source: 'route',
      filter: piece(commodity, state('left')),
      // Round ends close the seams between pieces at bends.
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: {
        'line-color': palette[commodity],
        'line-opacity': opacity,
        'line-width': widthByShare(THINNEST_PX),
        'line-offset': offsetByShare(commodity, THINNEST_PX),
      },
    },
    {
      id: `route-${commodity}-reserve`,
      type: 'line',
      source: 'route',
      filter: piece(commodity, state('reserve')),
      layout: { 'line-cap': 'butt', 'line-join': 'round' },
      paint: {
        'line-color': palette[commodity],
        'line-opacity': opacity,
        'line-width': widthByShare(THINNEST_DASH_PX),
        'line-offset': offsetByShare(commodity, THINNEST_DASH_PX),
        'line-dasharray': [1.1, 0.9],
      },
    },
    {
      id: `route-${commodity}-dry`,
      type: 'line',
      source: 'route',
      filter: piece(commodity, state('dry')),
      layout: { 'line-cap': 'butt', 'line-join': 'round' },
      paint: {
        'line-pattern': hatchImageId(palette.dry, palette.sheet),
        'line-width': fullWidth,
        'line-offset': fullOffset(commodity),
      },
    },
    edgeLayer(commodity, 'short', palette.dry, { 'line-width': 2 }),
    edgeLayer(commodity, 'into-reserve', palette.ink, { 'line-width': 1.4, 'line-dasharray': [4, 3] }),
    edgeLayer(commodity, 'unknown', palette.ink, { 'line-width': 1.8, 'line-dasharray': [1, 2] }),
    {
      id: `route-${commodity}-no-cover`,
      type: 'line',
      source: 'route',
      filter: piece(commodity, ['==', ['get', 'noCover'], true]),
      layout: { 'line-cap': 'round', 'line-join': 'round' },
      paint: {
        'line-color': palette.ink,
        'line-width': 2.6,
        'line-offset': fullOffset(commodity),
        'line-dasharray': [0, 2.2],
      },
    },
  ];
}

function edgeLayer(
  commodity: Commodity,
  name: 'short' | 'into-reserve' | 'unknown',
  colour: string,
  paint: NonNullable<LineLayerSpecification['paint']>,
): LineLayerSpecification {
  return {
    id: `route-${commodity}-${name}`,
    type: 'line',
    source: 'gaps',
    filter: piece(commodity, verdict(name)),
    layout: { 'line-cap': 'butt', 'line-join': 'round' },
    paint: { 'line-color': colour, 'line-offset': edgeOffset(commodity), ...paint },
  };
}

function cansLayer(
  commodity: Commodity,
  name: 'cans' | 'cans-casing',
  colour: string,
  widthPx: number,
): LineLayerSpecification {
  return {
    id: `route-${commodity}-${name}`,
    type: 'line',
    source: 'cans',
    filter: piece(commodity),
    layout: { 'line-cap': 'butt', 'line-join': 'round' },
    paint: { 'line-color': colour, 'line-width': widthPx, 'line-offset': cansOffset(commodity) },
  };
}
