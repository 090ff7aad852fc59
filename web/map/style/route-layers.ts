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
  [3, 4],
  [6, 7],
  [10, 10],
  [14, 13],
];
/** From the middle of the route's own line to a lane. */
const MIDDLE_PX = 3.5;
/** The route itself. */
const LINE_PX = 2;
/** Dots of what no extract covers, from the middle, where no lane is drawn. */
const CALM_DOTS_PX = 4.5;
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
/** Just outside a full lane and the frame of its cans, where its verdict is drawn. */
const edgeOffset = (commodity: Commodity) => byZoom((lanePx) => SIDE[commodity] * (MIDDLE_PX + lanePx + 4));

/** By how much more than a full lane these are wide: the clear ground round it, the frame of full cans, and round that. */
const CLEAR_PX = 2;
const FRAME_PX = 5;
const ROUND_FRAME_PX = 8;

const piece = (commodity: Commodity, ...more: ExpressionSpecification[]): FilterSpecification =>
  ['all', ['==', ['get', 'commodity'], commodity], ...more] as ExpressionSpecification;
const inTrouble: ExpressionSpecification = ['==', ['get', 'trouble'], true];
const state = (name: 'left' | 'reserve' | 'dry'): ExpressionSpecification => ['==', ['get', 'state'], name];
const verdict = (name: string): ExpressionSpecification => ['==', ['get', 'verdict'], name];

/** Picks the chosen gap's line; none without one. */
export const chosenGap = (gap: Focus['gap']): FilterSpecification =>
  [
    'all',
    ['==', ['get', 'commodity'], gap?.commodity ?? ''],
    ['==', ['get', 'gap'], gap?.index ?? -1],
  ] as ExpressionSpecification;

/** Both go by the chosen gap: a frame, and what is clear inside it. */
export const CHOSEN_LAYERS = ['route-chosen', 'route-chosen-inside'] as const;
/** Wide and unseen: where the pointer is taken to be on the route. */
export const HIT_LAYER = 'route-hit';

/**
 * The route's layers, lowest first: chosen gap, the route as a thin line, and beside it, where a stretch gives trouble, for
 * each commodity what is left; verdicts, cans, what is closed.
 */
export function routeLayers(palette: Palette, gap: Focus['gap']): LineLayerSpecification[] {
  const along = (
    id: string,
    source: string,
    paint: NonNullable<LineLayerSpecification['paint']>,
    more: Partial<LineLayerSpecification> = {},
  ): LineLayerSpecification => ({
    id,
    type: 'line',
    source,
    layout: { 'line-cap': 'round', 'line-join': 'round' },
    paint,
    ...more,
  });
  const [frame, inside] = CHOSEN_LAYERS;
  const chosen = { filter: chosenGap(gap) };
  return [
    along(
      frame,
      'gaps',
      { 'line-color': palette.ink, 'line-width': byZoom((lanePx) => 2 * (MIDDLE_PX + lanePx) + 14) },
      chosen,
    ),
    along(
      inside,
      'gaps',
      { 'line-color': palette.sheet, 'line-width': byZoom((lanePx) => 2 * (MIDDLE_PX + lanePx) + 9) },
      chosen,
    ),
    along('route-line-casing', 'line', { 'line-color': palette.sheet, 'line-width': LINE_PX + 4 }),
    ...(['fuel', 'water'] as const).flatMap((commodity) => commodityLayers(commodity, palette)),
    along('route-line', 'line', { 'line-color': palette.ink, 'line-width': LINE_PX }),
    along(
      'route-closed-casing',
      'closed',
      { 'line-color': palette.sheet, 'line-width': 9 },
      { layout: { 'line-cap': 'butt', 'line-join': 'round' } },
    ),
    along(
      'route-closed',
      'closed',
      { 'line-color': palette.ink, 'line-width': 9, 'line-dasharray': [0.3, 0.5] },
      { layout: { 'line-cap': 'butt', 'line-join': 'round' } },
    ),
    along(HIT_LAYER, 'line', { 'line-color': palette.ink, 'line-opacity': 0, 'line-width': 28 }),
  ];
}

function commodityLayers(commodity: Commodity, palette: Palette): LineLayerSpecification[] {
  const opacity: ExpressionSpecification = ['case', ['get', 'noCover'], 0.45, 1];
  return [
    // What is carried is a frame round the lane: it runs with it at every zoom.
    beneath(commodity, 'cans-casing', 'cans', { colour: palette.sheet, morePx: ROUND_FRAME_PX }),
    beneath(commodity, 'cans', 'cans', { colour: palette[commodity], morePx: FRAME_PX }),
    beneath(commodity, 'casing', 'route', { colour: palette.sheet, morePx: CLEAR_PX }),
    {
      id: `route-${commodity}-left`,
      type: 'line',
      source: 'route',
      filter: piece(commodity, inTrouble, state('left')),
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
      filter: piece(commodity, inTrouble, state('reserve')),
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
      filter: piece(commodity, inTrouble, state('dry')),
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
        'line-width': 2.2,
        'line-offset': byZoom((lanePx) => [
          'case',
          inTrouble,
          SIDE[commodity] * (MIDDLE_PX + lanePx / 2),
          SIDE[commodity] * CALM_DOTS_PX,
        ]),
        'line-dasharray': [0, 3],
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

/** A band beneath the lane, wider by so much. */
function beneath(
  commodity: Commodity,
  name: string,
  source: 'route' | 'cans',
  { colour, morePx }: { colour: string; morePx: number },
): LineLayerSpecification {
  return {
    id: `route-${commodity}-${name}`,
    type: 'line',
    source,
    filter: source === 'cans' ? piece(commodity) : piece(commodity, inTrouble),
    layout: { 'line-cap': 'butt', 'line-join': 'round' },
    paint: {
      'line-color': colour,
      'line-width': byZoom((lanePx) => lanePx + morePx),
      'line-offset': fullOffset(commodity),
    },
  };
}
