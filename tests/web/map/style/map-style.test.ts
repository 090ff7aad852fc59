import { validateStyleMin } from '@maplibre/maplibre-gl-style-spec';
import type { FeatureCollection } from 'geojson';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { nearestKm } from '../../../../web/map/geometry/nearest-km.ts';
import type { World } from '../../../../web/map/geometry/world-land.ts';
import { Legend } from '../../../../web/map/Legend.tsx';
import { LEGEND_LAYERS, type LegendKey, legendKeys } from '../../../../web/map/style/legend-keys.ts';
import { mapStyle } from '../../../../web/map/style/map-style.ts';
import { drawImage } from '../../../../web/map/style/mark-images.ts';
import { DARK, LIGHT } from '../../../../web/map/style/palette.ts';
import { planOnMap } from '../../../../web/map/style/plan-on-map.ts';
import { drawnPlan } from '../../drawn-plan.ts';
import { sampleReply } from '../../sample-reply.ts';

const { map } = sampleReply();
const WORLD: World = {
  land: {
    type: 'FeatureCollection',
    features: [
      {
        type: 'Feature',
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [1, 0],
              [1, 1],
              [0, 0],
            ],
          ],
        },
        properties: {},
      },
    ],
  },
  borders: { type: 'FeatureCollection', features: [] },
};
const empty = {
  ...map,
  line: { coordinates: [], atKm: [] },
  route: { ...map.route, features: [] },
  supplies: { ...map.supplies, features: [] },
  ground: { ...map.ground, features: [] },
};

const STYLES = [
  ['no data', null, {}],
  ['data without anything in it', empty, {}],
  ['data', map, {}],
  ['data, world and a chosen gap', map, { world: WORLD, gap: { commodity: 'water' as const, index: 1 } }],
  ['data and a plan', map, { plan: planOnMap(sampleReply(), drawnPlan(), 'metric') }],
] as const;

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
] as const)('the %s style', (_, palette) => {
  test.each(STYLES)('with %s keeps to the style specification', (__, data, extras) => {
    expect(validateStyleMin(mapStyle(data, palette, extras))).toEqual([]);
  });

  test('draws every image that it asks for', () => {
    const text = JSON.stringify(mapStyle(map, palette).layers);
    const ids = [...text.matchAll(/"((?:mark|hatch|ground) [^"]+|clear)"/g)].map(([, id]) => id!);
    expect(new Set(ids).size).toBe(12);
    for (const id of ids) expect(drawImage(id), id).not.toBeNull();
  });
});

interface DrawnSupply {
  id: string;
  commodity: string;
  label: string;
  source: string;
}

/** The supplies of all of a style's sources. */
const suppliesIn = ({ sources }: ReturnType<typeof mapStyle>): DrawnSupply[] =>
  Object.entries(sources)
    .filter(([name]) => name.startsWith('supplies'))
    .flatMap(([source, each]) =>
      (each as { data: FeatureCollection }).data.features.map(
        ({ properties }) => ({ ...properties, source }) as DrawnSupply,
      ),
    );

describe('the style', () => {
  const layers = (style: ReturnType<typeof mapStyle>) => style.layers.map((layer) => layer.id);
  const paintOf = (id: string): Record<string, unknown> => {
    const layer = mapStyle(map, LIGHT).layers.find((one) => one.id === id);
    return { ...(layer as { paint?: object }).paint };
  };

  test('needs no network: no tiles, glyphs or sprite', () => {
    const style = mapStyle(map, LIGHT);
    expect(style).not.toHaveProperty('glyphs');
    expect(style).not.toHaveProperty('sprite');
    expect(Object.values(style.sources).every((source) => source.type === 'geojson')).toBe(true);
    expect(JSON.stringify(style)).not.toMatch(/https?:/);
  });

  test('is a pure function of what it is given', () => {
    const frozen = JSON.stringify(map);
    expect(mapStyle(map, LIGHT)).toEqual(mapStyle(map, LIGHT));
    expect(JSON.stringify(map)).toBe(frozen);
  });

  test('holds the same layers in light and dark, so that a change of light is a change of colours only', () => {
    expect(layers(mapStyle(map, DARK))).toEqual(layers(mapStyle(map, LIGHT)));
  });

  test('puts fuel left of the line and water right of it', () => {
    const offsetAt = (id: string) => JSON.stringify(paintOf(id)['line-offset']);
    expect(offsetAt('route-fuel-left')).toContain('["*",-1,');
    expect(offsetAt('route-water-left')).toContain('["*",1,');
  });

  test('tells reserve, dry and no cover by dash, hatching and dots, not by colour alone', () => {
    expect(paintOf('route-water-reserve')).toHaveProperty('line-dasharray');
    expect(paintOf('route-water-dry')).toHaveProperty('line-pattern');
    expect(paintOf('route-water-no-cover')).toHaveProperty('line-dasharray');
    expect(paintOf('route-water-left')).not.toHaveProperty('line-dasharray');
  });

  test('calls the ground sea only where land is known', () => {
    const ground = (style: ReturnType<typeof mapStyle>) => (style.layers[0] as { paint: object }).paint;
    expect(ground(mapStyle(empty, LIGHT))).toEqual({ 'background-color': LIGHT.paper });
    expect(ground(mapStyle(empty, LIGHT, { world: WORLD }))).toEqual({ 'background-color': LIGHT.sea });
  });

  test('names a point once, though it has two marks, and only where it counts', () => {
    const labels = suppliesIn(mapStyle(map, LIGHT));
    const named = labels.filter((one) => one.label !== '').map((one) => one.id);
    expect(named.sort()).toEqual(['node/1', 'node/3', 'way/2']);
    expect(labels).toHaveLength(map.supplies.features.length);
  });
});

describe('lanes beside the route', () => {
  const piecesIn = (style: ReturnType<typeof mapStyle>) =>
    (style.sources.route as { data: FeatureCollection }).data.features.map(
      ({ properties }) =>
        properties as { commodity: string; fromKm: number; toKm: number; trouble: boolean; verdict: string },
    );

  test('are drawn where a gap is not held, and nowhere else', () => {
    const pieces = piecesIn(mapStyle(map, LIGHT));
    expect(new Set(pieces.map(({ trouble }) => trouble))).toEqual(new Set([true, false]));
    for (const { trouble, verdict } of pieces) expect(trouble).toBe(verdict !== 'enough');
  });

  test('are drawn with a plan where it has cans carried as well', () => {
    const plan = planOnMap(sampleReply(), drawnPlan(), 'metric')!;
    const [carry] = plan.carries;
    const middle = (carry!.fromKm + carry!.toKm) / 2;
    const calm = {
      ...map,
      route: {
        ...map.route,
        features: map.route.features.map((feature) => ({
          ...feature,
          properties: { ...feature.properties, verdict: 'enough' },
        })),
      },
    };
    const there = piecesIn(mapStyle(calm, LIGHT, { plan })).find(
      ({ commodity, fromKm, toKm }) => commodity === carry!.commodity && fromKm <= middle && middle <= toKm,
    );
    expect(there?.trouble).toBe(true);
    const none = piecesIn(mapStyle(calm, LIGHT, { plan: { ...plan, carries: [] } }));
    expect(none.some(({ trouble }) => trouble)).toBe(false);
  });

  test('and what is closed runs along the route from where to where it is closed', () => {
    const linesIn = (style: ReturnType<typeof mapStyle>) =>
      (style.sources.closed as { data: FeatureCollection }).data.features;
    expect(linesIn(mapStyle(map, LIGHT))).toEqual([]);
    const [closed, ...more] = linesIn(mapStyle(map, LIGHT, { closed: [{ fromKm: 100, toKm: 300 }] }));
    expect(more).toEqual([]);
    const { coordinates } = closed!.geometry as unknown as { coordinates: [number, number][] };
    expect(nearestKm(map.line, ...coordinates[0]!)).toBeCloseTo(100, 3);
    expect(nearestKm(map.line, ...coordinates.at(-1)!)).toBeCloseTo(300, 3);
  });
});

describe('the legend', () => {
  const ALL = new Set(Object.keys(LEGEND_LAYERS) as LegendKey[]);
  /** Layers that need no words: the ground's two colours, names, and what only serves others. */
  const PLAIN = /^(background|world|land|coast|names-(?!stops).*|route-hit|route-chosen.*|route-kept-clear)$/;

  test('has a row for every layer that is not plain, and none for a layer that there is not', () => {
    const style = layersOf(mapStyle(map, LIGHT, { world: WORLD }));
    const told = Object.values(LEGEND_LAYERS).flat();
    expect(style.filter((id) => !PLAIN.test(id)).sort()).toEqual([...told].sort());
  });

  test('has a picture and words in each row', () => {
    const markup = renderToStaticMarkup(createElement(Legend, { fuelWord: 'diesel', keys: ALL }));
    const rows = [...markup.matchAll(/<li data-key="([^"]+)"><svg[^>]*>(.+?)<\/svg>([^<]+)<\/li>/g)];
    expect(rows.map(([, key]) => key)).toEqual([...ALL]);
    expect(new Set(rows.map(([, , , words]) => words)).size).toBe(ALL.size);
  });

  test('speaks of what is drawn only', () => {
    const bare = legendKeys(empty, null, 0);
    expect([...bare]).toEqual(['route']);
    expect(legendKeys(map, null, 1).has('closed')).toBe(true);
    expect(legendKeys(map, null, 0).has('closed')).toBe(false);
  });
});

const layersOf = (style: ReturnType<typeof mapStyle>) => style.layers.map(({ id }) => id);
