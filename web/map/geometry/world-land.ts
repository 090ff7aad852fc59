import type { FeatureCollection } from 'geojson';
import { feature } from 'topojson-client';
import landUrl from 'world-atlas/land-50m.json?url';

type Topology = Parameters<typeof feature>[0];

let loading: Promise<FeatureCollection> | null = null;

/** The world's land at 1:50 million (Natural Earth, public domain), fetched from the page's own server once. */
export function worldLand(): Promise<FeatureCollection> {
  loading ??= load().catch((error: unknown) => {
    loading = null; // try again at the next map
    throw error;
  });
  return loading;
}

async function load(): Promise<FeatureCollection> {
  const answer = await fetch(landUrl);
  if (!answer.ok) throw new Error(`the world's outline came with status ${answer.status}`);
  const topology = (await answer.json()) as Topology;
  const { land: outline } = topology.objects;
  if (outline === undefined) throw new Error("the world's outline came without land");
  const land = feature(topology, outline);
  return land.type === 'FeatureCollection' ? land : { type: 'FeatureCollection', features: [land] };
}
