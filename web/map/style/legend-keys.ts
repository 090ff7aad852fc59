import type { MapData } from '../../../server/contract/answers/map.ts';
import type { PlanOnMap } from './plan-on-map.ts';

/** What the legend explains, in its order, and the layers that each row speaks of. */
export const LEGEND_LAYERS = {
  route: ['route-line', 'route-line-casing'],
  left: ['route-fuel-casing', 'route-fuel-left', 'route-water-casing', 'route-water-left'],
  reserve: ['route-fuel-reserve', 'route-water-reserve'],
  dry: ['route-fuel-dry', 'route-water-dry'],
  verdicts: [
    'route-fuel-short',
    'route-fuel-into-reserve',
    'route-fuel-unknown',
    'route-water-short',
    'route-water-into-reserve',
    'route-water-unknown',
  ],
  'no-cover': ['route-fuel-no-cover', 'route-water-no-cover'],
  cans: [
    'route-fuel-cans-casing',
    'route-fuel-cans',
    'route-water-cans-casing',
    'route-water-cans',
    'can-counts',
  ],
  closed: ['route-closed-casing', 'route-closed'],
  supplies: ['marks-fuel', 'marks-water', 'marks-key'],
  hollow: ['marks-hollow'],
  clusters: ['clusters-fuel', 'clusters-water', 'clusters-hollow'],
  stops: ['names-stops'],
  'turn-backs': ['turn-backs', 'turn-backs-later'],
  roads: ['roads-main', 'roads-primary', 'roads-secondary', 'roads-small'],
  tracks: ['tracks'],
  water: ['rivers', 'lakes'],
  borders: ['borders-far', 'borders'],
  extracts: ['extracts', 'unknown-ground'],
} as const;
export type LegendKey = keyof typeof LEGEND_LAYERS;

/** Which rows speak of something that the map draws now: the rest would only be in the way. */
export function legendKeys(map: MapData, plan: PlanOnMap | null, closedCount: number): Set<LegendKey> {
  const ground = new Set(map.ground.features.map(({ properties }) => properties.what));
  const pieces = map.route.features.map(({ properties }) => properties);
  const inTrouble = pieces.filter(({ verdict }) => verdict !== 'enough');
  const isDrawn: Record<LegendKey, boolean> = {
    route: true,
    left: inTrouble.length > 0 || (plan !== null && plan.cans.length > 0),
    reserve: plan === null && inTrouble.some(({ state }) => state === 'reserve'),
    dry: plan === null && inTrouble.some(({ state }) => state === 'dry'),
    verdicts:
      plan === null
        ? inTrouble.length > 0
        : plan.legs.some(({ properties }) => properties?.verdict !== 'enough'),
    'no-cover': pieces.some(({ noCover }) => noCover),
    cans: plan !== null && plan.cans.length > 0,
    closed: closedCount > 0,
    supplies: map.supplies.features.some(({ properties }) => properties.counts),
    hollow: map.supplies.features.some(({ properties }) => !properties.counts),
    clusters: map.supplies.features.length > 1,
    stops: plan !== null && plan.used.size > 0,
    'turn-backs': plan?.marks.some(({ properties }) => properties.what !== 'cans') ?? false,
    roads: ground.has('road'),
    tracks: ground.has('track'),
    water: ground.has('river') || ground.has('lake'),
    borders: map.notice === null,
    extracts: map.extracts.length > 0,
  };
  return new Set((Object.keys(isDrawn) as LegendKey[]).filter((key) => isDrawn[key]));
}
