import type { Evidence } from '../../contract/common.ts';
import type { LonLat } from '../geodesy/lon-lat.ts';
import type { MappedFeature, Supplies, Surroundings } from '../input/sources.ts';
import { positionAt } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import type { SupplyFeature } from '../supply/points/supply-feature.ts';
import { surfaceWater } from '../supply/points/surface-water.ts';
import { type FoundReason, found } from '../supply/tags/reasons.ts';
import { Between } from '../surroundings/between.ts';
import { Enclosing } from '../surroundings/enclosing.ts';
import { LOOKED_AT_M } from '../surroundings/reach.ts';
import { RoadMap } from '../surroundings/road-marks.ts';

/** A place so near to the route needs no road of its own, metres: as far as a supply may be from a mapped road. */
const BESIDE_ROUTE_M = 300;

/** What is known of the ground around a route. */
interface Ground {
  between: Between;
  enclosing: Enclosing;
  roads: RoadMap;
  roadSources: ReadonlySet<string>;
}

/** An analysis comes at every keystroke; the ground stays. */
const grounds = new WeakMap<Surroundings, Ground>();

function groundOf(surroundings: Surroundings): Ground {
  const ground = grounds.get(surroundings) ?? {
    between: new Between(surroundings),
    enclosing: new Enclosing(surroundings),
    roads: new RoadMap(surroundings.roads),
    roadSources: new Set(surroundings.roads.map(({ source }) => source)),
  };
  grounds.set(surroundings, ground);
  return ground;
}

/** Points of the user's own are where the user says that they are. */
const isOwn = (id: string): boolean => id.startsWith('own/');

/** Supplies with the closed grounds on which they lie. */
export function withClosedGround(
  features: readonly SupplyFeature[],
  surroundings: Surroundings | undefined,
): SupplyFeature[] {
  if (surroundings === undefined) return [...features];
  const { enclosing } = groundOf(surroundings);
  return features.map((feature) => {
    if (isOwn(feature.id)) return feature;
    const closedGround = enclosing.around(feature, [feature.id, ...feature.alsoIds]);
    return closedGround.length === 0 ? feature : { ...feature, closedGround };
  });
}

/** A trip is analysed at every keystroke; its route and ground stay. */
const waters = new WeakMap<Surroundings, { route: RouteLine; features: SupplyFeature[] }>();

/** Rivers and lakes that the route comes by, see `supply/points/surface-water`. */
export function watersBeside(route: RouteLine, surroundings: Surroundings | undefined): SupplyFeature[] {
  if (surroundings === undefined) return [];
  const known = waters.get(surroundings);
  if (known?.route === route) return known.features;
  const features = surfaceWater(route, surroundings);
  waters.set(surroundings, { route, features });
  return features;
}

/** A supply as seen from a place of the route. */
export interface Sighting extends LonLat {
  readonly id: string;
  readonly evidence: Evidence;
  readonly atM: number;
  readonly offRouteM: number;
}

/** What stands against the straight way from a place of the route to a supply, or is to be known of it. */
export type WaysKnown = (sighting: Sighting) => FoundReason[];

/**
 * Tells of straight detours whether they cross a barrier where no way across is known, or end far from all roads of an extract that
 * shows roads. What the user confirmed, and the user's own points, are not asked about.
 */
export function waysKnown(
  route: RouteLine,
  { surroundings }: Pick<Supplies, 'surroundings'>,
  features: readonly MappedFeature[],
): WaysKnown {
  if (surroundings === undefined) return () => [];
  const { between, roads, roadSources } = groundOf(surroundings);
  const isBare = surroundings.objects.every(({ what }) => what === 'settlement');
  if (isBare && roadSources.size === 0) return () => [];
  const onRoadMap = new Set(
    features
      .filter(({ source, seenIn }) =>
        [source, ...(seenIn ?? [])].some((one) => one !== undefined && roadSources.has(one)),
      )
      .map(({ id }) => id),
  );
  return ({ id, evidence, lon, lat, atM, offRouteM }) => {
    if (evidence === 'confirmed' || isOwn(id)) return [];
    if (offRouteM > LOOKED_AT_M) return [found('way-not-looked-at', { overM: LOOKED_AT_M })];
    const supply = { lon, lat };
    const reasons: FoundReason[] = between
      .barriers(route, positionAt(route, atM), supply)
      .map(({ what, name }) => found('no-way-across', { across: what, name }));
    if (offRouteM > BESIDE_ROUTE_M && onRoadMap.has(id) && !roads.isRoadNear(supply))
      reasons.push(found('no-way-across', { across: 'no-road' }));
    return reasons;
  };
}
