import type { Bbox } from '../contract/common.ts';
import { PART, SPARSE_STEP_KM } from '../core/defaults/trip-defaults.ts';
import type { Outcome } from '../core/input/problem.ts';
import { thinGround } from '../core/mapview/thin-ground.ts';
import type { Caution } from '../core/phrases/cautions.ts';
import { metresOf } from '../core/quantity/rates.ts';
import { routeOf } from '../core/route/build/route-of.ts';
import type { LoadedTrip } from './loaded-trip.ts';
import { boxOf, isNear, landAround, nearGrid } from './near-route.ts';
import type { NamedFile, SuppliesRead, TripFileSet, Watch } from './ports.ts';
import { routeProblem } from './route-problem.ts';

/** No analysis looks farther off the route: the widest corridor and the widest rescue are 50 km (contract, design). */
const FARTHEST_KM = 60;
/** Ground is kept this far around the route's box, degrees (ours: what a fitted map shows around it). */
const GROUND_MARGIN_DEG = 0.5;

export interface TripRequest {
  route: NamedFile;
  extracts: readonly NamedFile[];
  /** Whether roads, places and coast are wanted for a map. */
  withGround: boolean;
  notice: string | null;
}

/**
 * Reads a route and its extracts into one value. The route comes first, so that a bad one is refused before a large
 * extract is read. Objects over 60 km off the route are left out: no analysis of it could use them.
 */
export async function loadTrip(
  request: TripRequest,
  files: TripFileSet,
  watch: Watch = {},
): Promise<Outcome<LoadedTrip>> {
  const document = await files.readRoute(request.route, watch);
  if (!document.ok) return document;
  const route = routeOf(document.value, { part: PART, sparseStepM: metresOf(SPARSE_STEP_KM) });
  if (!route.ok) return { ok: false, problem: routeProblem(route.refusal, request.route.source) };
  const { waypoints } = document.value;
  const ground = request.withGround ? widened(route.value.bbox) : null;
  const near = { ...nearGrid(route.value, FARTHEST_KM), around: landAround(route.value) };
  const read = await files.readSupplies(request.extracts, waypoints, { ground, near }, watch);
  if (!read.ok) return read;
  const { ground: drawn, dropped } = drawnGround(read.value, route.value.bbox);
  const cautions: Caution[] = dropped === 0 ? [] : [{ code: 'ground-thinned', facts: { leftOut: dropped } }];
  const features = read.value.supplies.features.filter((feature) => {
    const box = boxOf(feature.geometry);
    return box === null || isNear(near, box);
  });
  return {
    ok: true,
    value: {
      document: document.value,
      supplies: {
        ...read.value.supplies,
        features,
        cautions: [...read.value.supplies.cautions, ...cautions],
      },
      extents: read.value.extents,
      ground: drawn,
      camps: files.campsOf(waypoints),
      notice: request.notice,
    },
  };
}

/** The ground as a map of the box bears it. */
const drawnGround = ({ ground, groundLeftOut }: SuppliesRead, box: Bbox) =>
  groundLeftOut === undefined ? thinGround(ground, box) : { ground, dropped: groundLeftOut };

function widened([west, south, east, north]: Bbox): Bbox {
  const margin = GROUND_MARGIN_DEG;
  return [
    Math.max(-180, west - margin),
    Math.max(-90, south - margin),
    Math.min(180, east + margin),
    Math.min(90, north + margin),
  ];
}
