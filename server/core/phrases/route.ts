import type { Said } from './said/said.ts';

/** What measuring a route warns of; metres. */
export interface LineCautions {
  /** `sought`: whether supplies are sought on the straight line. */
  bridge: { atM: number; jumpM: number; sought: boolean };
  'sparse-steps': { steps: number; longestM: number; overM: number };
  /** `isMapped`: the map says how long it takes. */
  ferry: { name: string | null; hours: number; isMapped: boolean };
  'routes-left-out': { tracks: number; routes: number };
}

/** Why no route can be made of a document. */
export interface RouteRefusals {
  /** `chosen`: whether there is a part at all. */
  'gpx-no-points': { chosen: boolean; waypoints: boolean };
  /** All of them at one place. */
  'gpx-one-point': { points: number };
  /** Longer than any route that can be told of. */
  'gpx-too-long': { mostM: number };
  /** `bearers`: how many parts have the name that is wanted; of all `parts` one has to be chosen. */
  'part-unknown': {
    wanted: number | string;
    bearers: number;
    parts: readonly { readonly kind: 'track' | 'route'; readonly name: string | null }[];
  };
}
export type RouteRefusal = Said<RouteRefusals>;
