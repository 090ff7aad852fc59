import type {
  DataDrivenPropertyValueSpecification,
  ExpressionSpecification,
  SymbolLayerSpecification,
} from '@maplibre/maplibre-gl-style-spec';
import type { Feature, Point } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';
import { CLEAR_IMAGE, type MarkFill, markImageId } from './mark-images.ts';
import { nameAnchors, westOf } from './name-anchors.ts';
import type { Palette } from './palette.ts';

/** The page's own type, drawn by the browser: MapLibre takes the weight from the first name (no glyph files). */
export const MAP_FONT = ['Semibold', 'Overpass Variable', 'Overpass', 'system-ui'];

export const SUPPLY_LAYERS = ['supplies-hollow', 'supplies-filled'] as const;

interface SupplyPoint {
  id: string;
  commodity: 'fuel' | 'water';
  counts: boolean;
  /** Empty where another mark of the same point carries the name. */
  label: string;
  /** In the western half of the map: its name would rather stand east of it. */
  west: boolean;
  /** The plan fills here. */
  used: boolean;
  /** The point has a mark of the other commodity as well: the two stand side by side. */
  paired: boolean;
}

/** Supply points with what drawing needs; `usedOnes` as "fuel node/1". */
export function supplyFeatures(
  map: MapData,
  usedOnes: ReadonlySet<string> | null,
): Feature<Point, SupplyPoint>[] {
  const marks = map.supplies.features;
  const commodities = new Map<string, Set<string>>();
  for (const { properties } of marks) {
    const known = commodities.get(properties.id) ?? new Set<string>();
    commodities.set(properties.id, known.add(properties.commodity));
  }
  const isWest = westOf(map);
  const named = new Set<string>();
  const countingFirst = [...marks].sort((a, b) => Number(b.properties.counts) - Number(a.properties.counts));
  return countingFirst.map(({ geometry, properties }) => {
    const { id, commodity, counts, name } = properties;
    const label = counts && !named.has(id) ? (name ?? '') : '';
    if (label !== '') named.add(id);
    return {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: geometry.coordinates },
      properties: {
        id,
        commodity,
        counts,
        label,
        used: usedOnes?.has(`${commodity} ${id}`) ?? false,
        west: isWest(geometry.coordinates[0]),
        paired: (commodities.get(id)?.size ?? 0) > 1,
      },
    };
  });
}

/** More points than this are drawn smaller from afar, and unnamed, so that the route stays in sight. */
const MANY = 120;
const NAMES_OF_MANY_FROM_ZOOM = 9;

/** Marks and names, lowest first: hollow marks, filled marks, names beside those that count. */
export function supplyLayers(map: MapData, palette: Palette): SymbolLayerSpecification[] {
  const count = map.supplies.features.length;
  const scale = count > MANY ? Math.max(0.3, Math.sqrt(MANY / count)) : 1;
  const size = (factor: number): DataDrivenPropertyValueSpecification<number> => [
    'interpolate',
    ['linear'],
    ['zoom'],
    5,
    0.8 * factor * scale,
    9,
    factor * Math.min(1, scale * 1.4),
    13,
    1.15 * factor,
  ];
  const image = (fill: MarkFill): ExpressionSpecification => [
    'match',
    ['get', 'commodity'],
    'fuel',
    markImageId('fuel', fill, palette.fuel, palette.sheet),
    markImageId('water', fill, palette.water, palette.sheet),
  ];
  const marks = (counts: boolean): SymbolLayerSpecification => ({
    id: counts ? 'supplies-filled' : 'supplies-hollow',
    type: 'symbol',
    source: 'supplies',
    filter: ['==', ['get', 'counts'], counts],
    layout: {
      'icon-image': counts ? ['case', ['get', 'used'], image('ringed'), image('filled')] : image('hollow'),
      'icon-size': size(counts ? 1 : 0.72),
      'icon-offset': [
        'case',
        ['!', ['get', 'paired']],
        ['literal', [0, 0]],
        ['==', ['get', 'commodity'], 'fuel'],
        ['literal', [-8, 0]],
        ['literal', [8, 0]],
      ],
      // Every point is drawn; names keep clear of those that count.
      'icon-allow-overlap': true,
      'icon-ignore-placement': !counts,
    },
  });
  return [
    marks(false),
    marks(true),
    {
      id: 'supplies-names',
      type: 'symbol',
      source: 'supplies',
      minzoom: count > MANY ? NAMES_OF_MANY_FROM_ZOOM : 0,
      filter: ['!=', ['get', 'label'], ''],
      layout: {
        'text-field': ['get', 'label'],
        'text-font': MAP_FONT,
        'text-size': 13,
        'text-variable-anchor-offset': nameAnchors([1.5]),
        'text-justify': 'auto',
        // Two lines fit between the easternmost mark and the map's edge.
        'text-max-width': 9,
        'symbol-sort-key': ['case', ['get', 'used'], 0, ['==', ['get', 'commodity'], 'fuel'], 1, 2],
      },
      paint: { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 2 },
    },
  ];
}

/** Seen by nobody: it takes the route's own ground before any name is placed, so that none covers the lines. */
export const KEPT_CLEAR: SymbolLayerSpecification = {
  id: 'route-kept-clear',
  type: 'symbol',
  source: 'line',
  layout: {
    'symbol-placement': 'line',
    'symbol-spacing': 14,
    'icon-image': CLEAR_IMAGE,
    'icon-padding': 2,
    'icon-rotation-alignment': 'viewport',
    'icon-allow-overlap': true,
  },
};
