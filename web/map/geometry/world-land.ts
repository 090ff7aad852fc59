import type { Feature, FeatureCollection, MultiLineString, Polygon } from 'geojson';
import { feature, mesh } from 'topojson-client';
import worldUrl from 'world-atlas/countries-50m.json?url';
import { areasCutAt180 } from './cut-at-180.ts';

type Topology = Parameters<typeof feature>[0];

/** The world at 1:50 million. */
export interface World {
  land: FeatureCollection<Polygon>;
  /** Where two countries meet. */
  borders: FeatureCollection<MultiLineString>;
}

let loading: Promise<World> | null = null;

/** The world's land and borders (Natural Earth, public domain), fetched from the page's own server once. */
export function worldLand(): Promise<World> {
  loading ??= load().catch((error: unknown) => {
    loading = null; // try again at the next map
    throw error;
  });
  return loading;
}

async function load(): Promise<World> {
  const answer = await fetch(worldUrl);
  if (!answer.ok) throw new Error(`the world's outline came with status ${answer.status}`);
  return worldOf((await answer.json()) as Topology);
}

/** Land and borders of a topology with the objects `land` and `countries`. */
export function worldOf(topology: Topology): World {
  const { land, countries } = topology.objects;
  if (land === undefined) throw new Error("the world's outline came without land");
  const outline = feature(topology, land);
  const outlines = outline.type === 'FeatureCollection' ? outline.features : [outline];
  const borders =
    countries?.type === 'GeometryCollection'
      ? [lineOf(mesh(topology, countries as Countries, (one, other) => one !== other))]
      : [];
  return {
    land: {
      type: 'FeatureCollection',
      features: outlines.flatMap(({ geometry }) => areasCutAt180(geometry)),
    },
    borders: {
      type: 'FeatureCollection',
      features: borders,
    },
  };
}

type Countries = Parameters<typeof mesh>[1];

const lineOf = (geometry: MultiLineString): Feature<MultiLineString> => ({
  type: 'Feature',
  geometry,
  properties: {},
});
