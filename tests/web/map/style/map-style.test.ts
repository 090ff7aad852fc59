import { validateStyleMin } from '@maplibre/maplibre-gl-style-spec';
import type { FeatureCollection } from 'geojson';
import { describe, expect, test } from 'vitest';
import type { World } from '../../../../web/map/geometry/world-land.ts';
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
    const ids = [...text.matchAll(/"((?:mark|hatch) [^"]+|clear)"/g)].map(([, id]) => id!);
    expect(new Set(ids).size).toBe(10);
    for (const id of ids) expect(drawImage(id), id).not.toBeNull();
  });
});

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
    const supplies = mapStyle(map, LIGHT).sources.supplies as { data: FeatureCollection };
    const labels = supplies.data.features.map(
      ({ properties }) => properties as { id: string; label: string },
    );
    const named = labels.filter((one) => one.label !== '').map((one) => one.id);
    expect(named.sort()).toEqual(['node/1', 'node/3', 'way/2']);
    expect(labels).toHaveLength(map.supplies.features.length);
  });
});
