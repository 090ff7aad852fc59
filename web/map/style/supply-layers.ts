import type {
  DataDrivenPropertyValueSpecification,
  ExpressionSpecification,
  GeoJSONSourceSpecification as GeoJSONSource,
  SymbolLayerSpecification,
} from '@maplibre/maplibre-gl-style-spec';
import type { Feature, Point } from 'geojson';
import type { MapData } from '../../../server/contract/answers/map.ts';
import { keySupplies } from '../geometry/key-supplies.ts';
import { CLEAR_IMAGE, type MarkFill, markImageId } from './mark-images.ts';
import { nameAnchors, westOf } from './name-anchors.ts';
import type { Palette } from './palette.ts';

/** The page's own type, drawn by the browser: MapLibre takes the weight from the first name (no glyph files). */
export const MAP_FONT = ['Semibold', 'Overpass Variable', 'Overpass', 'system-ui'];

/** Sources of supplies: those that are always drawn by themselves, and those that are drawn together from afar. */
const CLUSTERED = ['fuel', 'water', 'hollow'] as const;
type Clustered = (typeof CLUSTERED)[number];
const sourceOf = (name: Clustered): string => `supplies-${name}`;
export const CLUSTER_LAYERS: readonly string[] = CLUSTERED.map((name) => `clusters-${name}`);
export const SUPPLY_LAYERS: readonly string[] = [...CLUSTERED.map((name) => `marks-${name}`), 'marks-key'];

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
  /** It is always drawn by itself. */
  key: boolean;
  /** The point has a mark of the other commodity as well: the two stand side by side. */
  paired: boolean;
}

/** Supply points with what drawing needs; `usedOnes` as "fuel node/1". */
export function supplyFeatures(
  map: MapData,
  usedOnes: ReadonlySet<string> | null,
): Feature<Point, SupplyPoint>[] {
  const marks = map.supplies.features;
  const keys = keySupplies(map, usedOnes);
  const commodities = new Map<string, Set<string>>();
  for (const { properties } of marks) {
    const known = commodities.get(properties.id) ?? new Set<string>();
    commodities.set(properties.id, known.add(properties.commodity));
  }
  const isWest = westOf(map);
  const named = new Set<string>();
  const keyOf = ({ properties: { commodity, id } }: (typeof marks)[number]) => `${commodity} ${id}`;
  const weightOf = (mark: (typeof marks)[number]) =>
    Number(mark.properties.counts) + 2 * Number(usedOnes?.has(keyOf(mark)) ?? false);
  const countingFirst = [...marks].sort((a, b) => weightOf(b) - weightOf(a));
  return countingFirst.map((mark) => {
    const { id, commodity, counts, name } = mark.properties;
    const label = counts && !named.has(id) ? (name ?? '') : '';
    if (label !== '') named.add(id);
    return {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: mark.geometry.coordinates },
      properties: {
        id,
        commodity,
        counts,
        label,
        used: usedOnes?.has(keyOf(mark)) ?? false,
        key: keys.has(keyOf(mark)),
        west: isWest(mark.geometry.coordinates[0]),
        paired: (commodities.get(id)?.size ?? 0) > 1,
      },
    };
  });
}

/** Marks nearer to each other than this are drawn as one, px; closer than that zoom each stands alone. */
const CLUSTER_RADIUS_PX = 30;
const ALL_ALONE_FROM_ZOOM = 12;

/** The supplies' sources: the key ones, and the others by what they are drawn as. */
export function supplySources(
  features: readonly Feature<Point, SupplyPoint>[],
): Record<string, GeoJSONSource> {
  const among = (is: (point: SupplyPoint) => boolean) => ({
    type: 'geojson' as const,
    data: {
      type: 'FeatureCollection' as const,
      features: features.filter(({ properties }) => is(properties)),
    },
  });
  const clustered = {
    cluster: true,
    clusterRadius: CLUSTER_RADIUS_PX,
    clusterMaxZoom: ALL_ALONE_FROM_ZOOM - 1,
  };
  return {
    supplies: among(({ key }) => key),
    [sourceOf('hollow')]: { ...among(({ key, counts }) => !key && !counts), ...clustered },
    ...Object.fromEntries(
      (['fuel', 'water'] as const).map((name) => [
        sourceOf(name),
        { ...among(({ key, counts, commodity }) => !key && counts && commodity === name), ...clustered },
      ]),
    ),
  };
}

const SIZE: DataDrivenPropertyValueSpecification<number> = [
  'interpolate',
  ['linear'],
  ['zoom'],
  4,
  0.7,
  8,
  0.9,
  13,
  1.1,
];
const HOLLOW_SIZE: DataDrivenPropertyValueSpecification<number> = [
  'interpolate',
  ['linear'],
  ['zoom'],
  4,
  0.5,
  9,
  0.7,
  13,
  0.8,
];

/** Marks, clusters and names, lowest first: hollow marks, marks that count, key ones, names. */
export function supplyLayers(palette: Palette): SymbolLayerSpecification[] {
  const image = (fill: MarkFill): ExpressionSpecification => [
    'match',
    ['get', 'commodity'],
    'fuel',
    markImageId('fuel', fill, palette.fuel, palette.sheet),
    markImageId('water', fill, palette.water, palette.sheet),
  ];
  const offset: ExpressionSpecification = [
    'case',
    ['!', ['get', 'paired']],
    ['literal', [0, 0]],
    ['==', ['get', 'commodity'], 'fuel'],
    ['literal', [-8, 0]],
    ['literal', [8, 0]],
  ];
  const paint = { 'text-color': palette.ink, 'text-halo-color': palette.sheet, 'text-halo-width': 2 };
  const single: ExpressionSpecification = ['!', ['has', 'point_count']];
  const marks = (name: Clustered): SymbolLayerSpecification => ({
    id: `marks-${name}`,
    type: 'symbol',
    source: sourceOf(name),
    filter: single,
    layout: {
      'icon-image': image(name === 'hollow' ? 'hollow' : 'filled'),
      'icon-size': name === 'hollow' ? HOLLOW_SIZE : SIZE,
      'icon-offset': offset,
      'icon-allow-overlap': true,
      'icon-ignore-placement': name === 'hollow',
    },
  });
  const cluster = (name: Clustered): SymbolLayerSpecification => ({
    id: `clusters-${name}`,
    type: 'symbol',
    source: sourceOf(name),
    filter: ['has', 'point_count'],
    layout: {
      'icon-image':
        name === 'hollow'
          ? markImageId('fuel', 'hollow', palette.soft, palette.sheet)
          : markImageId(name, 'filled', palette[name], palette.sheet),
      'icon-size': name === 'hollow' ? HOLLOW_SIZE : SIZE,
      'icon-allow-overlap': true,
      'icon-ignore-placement': name === 'hollow',
      // How many there are stands beside the mark, over the route if need be.
      'text-field': ['get', 'point_count_abbreviated'],
      'text-font': MAP_FONT,
      'text-size': 12,
      'text-anchor': 'left',
      'text-offset': [0.7, 0],
      'text-allow-overlap': true,
      'text-ignore-placement': true,
    },
    paint: name === 'hollow' ? { ...paint, 'text-color': palette.soft } : paint,
  });
  const names = (
    id: string,
    source: string,
    filter: ExpressionSpecification,
    layout: SymbolLayerSpecification['layout'],
  ): SymbolLayerSpecification => ({
    id,
    type: 'symbol',
    source,
    filter: ['all', ['!=', ['get', 'label'], ''], filter],
    layout: {
      'text-field': ['get', 'label'],
      'text-font': MAP_FONT,
      'text-size': 13,
      'text-variable-anchor-offset': nameAnchors([1.5]),
      'text-justify': 'auto',
      // Two lines fit between the easternmost mark and the map's edge.
      'text-max-width': 9,
      ...layout,
    },
    paint,
  });
  return [
    cluster('hollow'),
    marks('hollow'),
    ...(['fuel', 'water'] as const).flatMap((name) => [cluster(name), marks(name)]),
    {
      id: 'marks-key',
      type: 'symbol',
      source: 'supplies',
      layout: {
        'icon-image': ['case', ['get', 'used'], image('ringed'), image('filled')],
        'icon-size': SIZE,
        'icon-offset': offset,
        'icon-allow-overlap': true,
      },
    },
    ...(['fuel', 'water'] as const).map((name) => ({
      ...names(`names-${name}`, sourceOf(name), single, {}),
      minzoom: NAMED_FROM_ZOOM,
    })),
    names('names-key', 'supplies', ['!', ['get', 'used']], {}),
    // Where the plan fills is always named, over other names if need be.
    names('names-stops', 'supplies', ['get', 'used'], {
      'text-variable-anchor-offset': nameAnchors([1.5, 3, 4.5]),
      'text-allow-overlap': true,
    }),
  ];
}

/** Names of what is no stop and no end of a stretch in trouble come with the towns' streets. */
const NAMED_FROM_ZOOM = 8;

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
