import type { Analysis } from '../contract/analysis.ts';
import type { Caution } from '../contract/common.ts';
import { type Reckoned, reckonTrip } from '../core/analyse/analyse.ts';
import { CORRIDOR_KM, PART } from '../core/defaults/trip-defaults.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { RouteDocument } from '../core/input/sources.ts';
import { mapDataOf } from '../core/mapview/map-data.ts';
import { type DrawnLine, MAX_VERTICES, simplifyLine } from '../core/mapview/simplify-line.ts';
import { coverOfUser } from '../core/route/box-cover.ts';
import type { RouteLine } from '../core/route/route-line.ts';
import type { RigAndTrip } from './input/plan-input.ts';
import type { ExtractExtent, LoadedTrip } from './loaded-trip.ts';
import { touchesRoute } from './near-route.ts';
import type { OpeningHours } from './ports.ts';
import { analysisToContract, type MapTold, mapToContract } from './to-contract.ts';

/** An analysis with what of the map changes with it; the ground stays with the loaded trip. */
export interface TripAnalysis {
  analysis: Analysis;
  map: MapTold;
}

/** What is known of dates. */
export interface Calendar {
  /** ISO date. */
  today: string;
  /** Without it no arrival is judged. */
  openingHours?: OpeningHours;
}

/** Analyses a loaded trip for a rig and a trip, both checked. */
export function analyseTrip(loaded: LoadedTrip, plan: RigAndTrip, calendar: Calendar): Outcome<TripAnalysis> {
  const outcome = reckonLoaded(loaded, plan, calendar);
  if (!outcome.ok) return outcome;
  const { analysis, route } = outcome.value;
  const line = drawnLine(loaded.document, analysis.trip.part ?? PART, route);
  const map = mapToContract(mapDataOf(outcome.value, line, loaded.notice));
  return { ok: true, value: { analysis: analysisToContract(analysis), map } };
}

/** As analyseTrip, with the courses that a carry plan goes on from and without the map. */
export function reckonLoaded(
  loaded: LoadedTrip,
  { rig, trip }: RigAndTrip,
  calendar: Calendar,
): Outcome<Reckoned> {
  const { document, camps } = loaded;
  const supplies = {
    ...loaded.supplies,
    cover: [...loaded.supplies.cover, ...coverOfUser(trip.cover ?? [])],
  };
  const outcome = reckonTrip({ document, supplies, rig, trip, camps, ...calendar });
  if (!outcome.ok) return outcome;
  const { analysis, route } = outcome.value;
  const corridorKm = analysis.trip.corridorKm ?? CORRIDOR_KM;
  const cautions = [...analysis.cautions, ...extentCautions(loaded.extents, route, corridorKm)];
  return { ok: true, value: { ...outcome.value, analysis: { ...analysis, cautions } } };
}

/** The thinned route of each document by part: no rig or trip changes it, and an analysis comes at every keystroke. */
const drawn = new WeakMap<RouteDocument, Map<string | number, DrawnLine>>();

function drawnLine(document: RouteDocument, part: string | number, route: RouteLine): DrawnLine {
  const ofDocument = drawn.get(document) ?? new Map<string | number, DrawnLine>();
  drawn.set(document, ofDocument);
  const line = ofDocument.get(part) ?? simplifyLine(route, MAX_VERTICES);
  ofDocument.set(part, line);
  return line;
}

/** Extracts that cannot speak of this route: empty ones, and those that reach no place of its corridor. */
function extentCautions(extents: readonly ExtractExtent[], route: RouteLine, corridorKm: number): Caution[] {
  const cautions: Caution[] = [];
  for (const { source, bbox, objects } of extents) {
    if (bbox === null || objects === 0) {
      cautions.push({
        code: 'extract-empty',
        text: `${source} holds no object that may give fuel or water.`,
      });
    }
    if (bbox !== null && !touchesRoute(route, bbox, corridorKm)) {
      cautions.push({
        code: 'extract-off-route',
        text: `${source} does not touch the route's corridor (${corridorKm} km): it was read but tells nothing of this route. Check that it is the right area.`,
      });
    }
  }
  return cautions;
}
