import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Absolute path of a checked-in file of the demo. */
export const demoPath = (name: string): string =>
  fileURLToPath(new URL(`../../fixtures/orrimar/${name}`, import.meta.url));

export const demoText = (name: string): string => readFileSync(demoPath(name), 'utf8');

export interface DemoElement {
  type: 'node' | 'way' | 'relation';
  id: number;
  version: number;
  timestamp: string;
  lat?: number;
  lon?: number;
  nodes?: number[];
  members?: { type: string; ref: number; role: string }[];
  tags?: Record<string, string>;
}

/** The map as its JSON form has it, read by nothing but JSON.parse. */
export function demoElements(): DemoElement[] {
  const reply = JSON.parse(demoText('orrimar.overpass.json')) as { elements: DemoElement[] };
  return reply.elements;
}

/** Track points in order, [lon, lat, ele], by a plain regular expression. */
export function demoTrack(): [number, number, number][] {
  const point = /<trkpt lat="([-\d.]+)" lon="([-\d.]+)"><ele>([-\d.]+)<\/ele><\/trkpt>/g;
  return [...demoText('route.gpx').matchAll(point)].map(([, lat, lon, ele]) => [
    Number(lon),
    Number(lat),
    Number(ele),
  ]);
}
