import type { Analysis } from '../contract/analysis.ts';
import { type Reckoned, reckonTrip } from '../core/analyse/analyse.ts';
import { CORRIDOR_KM } from '../core/defaults/trip-defaults.ts';
import type { Outcome } from '../core/input/problem.ts';
import { mapDataOf } from '../core/mapview/map-data.ts';
import { type DrawnLine, MAX_VERTICES, simplifyLine } from '../core/mapview/simplify-line.ts';
import type { Caution } from '../core/phrases/cautions.ts';
import { basisOf } from '../core/plan/drive/basis.ts';
import { checkList } from '../core/plan/what-if/what-if.ts';
import { metresOf } from '../core/quantity/rates.ts';
import { coverOfUser } from '../core/route/cover/box-cover.ts';
import type { RouteLine } from '../core/route/route-line.ts';
import { noticeWords } from '../words/notice.ts';
import type { RigAndTrip } from './input/plan-input.ts';
import type { ExtractExtent, LoadedTrip } from './loaded-trip.ts';
import { touchesRoute } from './near-route.ts';
import type { OpeningHours } from './ports.ts';
import { routeProblem } from './route-problem.ts';
import { analysisToContract, type MapTold, mapToContract, toContract } from './to-contract.ts';

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
  const map = mapToContract(mapDataOf(outcome.value, drawnLine(route), noticeWords(loaded.notice)));
  return { ok: true, value: { analysis: analysisToContract(analysis), map } };
}

/** Analyses a loaded trip, with the list of what to check before leaving; every supply that counts is taken as used. */
export function gapsTrip(loaded: LoadedTrip, plan: RigAndTrip, calendar: Calendar): Outcome<Analysis> {
  const outcome = reckonLoaded(loaded, plan, calendar);
  if (!outcome.ok) return outcome;
  const callFirst = toContract(checkList(outcome.value, basisOf(outcome.value, null)));
  return { ok: true, value: { ...analysisToContract(outcome.value.analysis), callFirst } };
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
  if (!outcome.ok) return { ok: false, problem: routeProblem(outcome.refusal, null) };
  const { analysis, route } = outcome.value;
  const corridorKm = analysis.trip.corridorKm ?? CORRIDOR_KM;
  const cautions = [...analysis.cautions, ...extentCautions(loaded.extents, route, corridorKm)];
  return { ok: true, value: { ...outcome.value, analysis: { ...analysis, cautions } } };
}

/** Each route thinned: no rig changes it, and an analysis comes at every keystroke. */
const drawn = new WeakMap<RouteLine, DrawnLine>();

function drawnLine(route: RouteLine): DrawnLine {
  const line = drawn.get(route) ?? simplifyLine(route, MAX_VERTICES);
  drawn.set(route, line);
  return line;
}

/** Extracts that cannot speak of this route: empty ones, and those that reach no place of its corridor. */
function extentCautions(extents: readonly ExtractExtent[], route: RouteLine, corridorKm: number): Caution[] {
  const cautions: Caution[] = [];
  for (const { source, bbox, objects } of extents) {
    if (bbox === null || objects === 0) {
      cautions.push({ code: 'extract-empty', facts: { source } });
    }
    if (bbox !== null && !touchesRoute(route, bbox, corridorKm)) {
      const facts = { source, corridorM: metresOf(corridorKm) };
      cautions.push({ code: 'extract-off-route', facts });
    }
  }
  return cautions;
}
