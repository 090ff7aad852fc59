import type { Feature, LineString, Point, Position } from 'geojson';
import type { AnalysisReply, MapData, RoutePiece } from '../../../server/contract/answers/map.ts';
import type { Commodity, Span } from '../../../server/contract/common.ts';
import type { PlanCarry, PlanLevel } from '../../../server/contract/plan.ts';
import type { PlanReply, TurnBack } from '../../../server/contract/whatif.ts';
import { pairsOf } from '../../kit/pairs.ts';
import { worded } from '../../language/codes.ts';
import { t } from '../../language/t.ts';
import { canSpans } from '../../levels/can-spans.ts';
import { isCovered } from '../../levels/levels.ts';
import { isInside } from '../../levels/plan-report.ts';
import { formatBeforeKm, type UnitSystem } from '../../units/units.ts';
import { cansFor } from '../../words/plan-words.ts';
import { positionAt } from '../geometry/nearest-km.ts';
import { EAST, eighthOf, WEST, westOf } from './name-anchors.ts';

/** A label beside the route: a place to turn back at, or how many cans are full along a stretch. */
interface PlanMark {
  /** `turn-back`: none of the other commodity comes before it, it is the one to mind. */
  what: 'turn-back' | 'turn-back-later' | 'cans';
  commodity: Commodity;
  label: string;
  /** On which side of its place it stands, in eighths of a turn. */
  side: number;
}

/** What the map shows of a plan. */
export interface PlanOnMap {
  /** The route in pieces of about one level, and its legs with their verdicts. */
  pieces: Feature<LineString, PlanPiece & { commodity: Commodity }>[];
  legs: Feature[];
  /** Over which stretches full cans are carried. */
  carries: readonly (Span & { commodity: Commodity })[];
  cans: Feature[];
  marks: Feature<Point, PlanMark>[];
  /** Supplies that the plan fills at, as "fuel node/1". */
  used: ReadonlySet<string>;
}

const COMMODITIES = ['fuel', 'water'] as const;

/** What the map shows of a plan; null where none was found: the route is then drawn by its gaps. */
export function planOnMap(
  { analysis, map }: AnalysisReply,
  { plan, whatIf }: PlanReply,
  units: UnitSystem,
): PlanOnMap | null {
  if (plan.status !== 'found') return null;
  const { line } = map;
  const used = plan.stops.flatMap(({ passings }) => passings).filter((passing) => passing.used);
  return {
    pieces: COMMODITIES.flatMap((commodity) =>
      inRuns(planPieces(plan.levels[commodity], analysis[commodity])).flatMap((piece) =>
        lineFeature(line, piece, { ...piece, commodity }),
      ),
    ),
    legs: COMMODITIES.flatMap((commodity) =>
      plan.legs[commodity].flatMap(({ from, to, verdict }) =>
        lineFeature(line, { fromKm: from.atKm, toKm: to.atKm }, { commodity, verdict }),
      ),
    ),
    carries: plan.carries,
    cans: canLines(line, plan.carries),
    marks: [...turnBackMarks(map, whatIf.turnBacks.filter(isInside), units), ...canMarks(line, plan.carries)],
    used: new Set(used.map(({ commodity, id }) => `${commodity} ${id}`)),
  };
}

type Line = MapData['line'];

/** A stretch of the route as a line; none where it has no length. */
export function lineFeature<P extends object>(
  line: Line,
  { fromKm, toKm }: Span,
  properties: P,
): Feature<LineString, P>[] {
  const from = positionAt(line, fromKm);
  const to = positionAt(line, toKm);
  if (from === null || to === null || !(toKm > fromKm)) return [];
  const between: Position[] = line.coordinates.filter((_, index) => {
    const atKm = line.atKm[index];
    return atKm !== undefined && atKm > fromKm && atKm < toKm;
  });
  return [
    { type: 'Feature', geometry: { type: 'LineString', coordinates: [from, ...between, to] }, properties },
  ];
}

/** Each stretch over which full cans are carried, as a line along the route. */
export const canLines = (line: Line, carries: readonly PlanCarry[]) =>
  carries.flatMap((carry) => lineFeature(line, carry, { commodity: carry.commodity, cans: carry.cans }));

/** Steps in which the drawn width follows what is in the tanks, as it does without a plan. */
const SHARE_STEPS = 12;

type PlanPiece = Pick<RoutePiece, 'state' | 'share' | 'noCover' | 'fromKm' | 'toKm'>;

/** The route in pieces of about the same level in the tanks, cut where cover begins and ends; none is in the reserve. */
export function planPieces(
  levels: readonly PlanLevel[],
  report: Parameters<typeof isCovered>[0] & { capacityL: number },
): PlanPiece[] {
  const { capacityL } = report;
  const edges = report.cover.flatMap(({ fromKm, toKm }) => [fromKm, toKm]).sort((a, b) => a - b);
  const pieces: PlanPiece[] = [];
  for (const [from, to] of pairsOf(levels)) {
    const kmAlong = to.atKm - from.atKm;
    if (!(kmAlong > 0)) continue;
    // Without a fixed tank nothing is in it, all the way.
    const shareOf = (litres: number): number => (capacityL === 0 ? 0 : litres / capacityL);
    const steps = Math.max(1, Math.ceil(shareOf(Math.abs(from.tankL - to.tankL)) * SHARE_STEPS));
    const cuts = Array.from({ length: steps + 1 }, (_, step) => from.atKm + (kmAlong * step) / steps);
    const inside = edges.filter((km) => km > from.atKm && km < to.atKm);
    const places = [...new Set([...cuts, ...inside])].sort((a, b) => a - b);
    for (const [fromKm, toKm] of pairsOf(places)) {
      const middleKm = (fromKm + toKm) / 2;
      const litres = from.tankL + ((middleKm - from.atKm) / kmAlong) * (to.tankL - from.tankL);
      const share = Math.min(1, Math.max(0, shareOf(litres)));
      pieces.push({ state: 'left', share, noCover: !isCovered(report, middleKm), fromKm, toKm });
    }
  }
  return pieces;
}

/** Pieces that follow on each other at about one level are drawn as one: from afar the map leaves out what is short. */
export function inRuns(pieces: readonly PlanPiece[]): PlanPiece[] {
  const runs: PlanPiece[] = [];
  for (const piece of pieces) {
    const run = runs.at(-1);
    const goesOn =
      run !== undefined &&
      run.toKm === piece.fromKm &&
      run.state === piece.state &&
      run.noCover === piece.noCover &&
      Math.abs(run.share - piece.share) < 1 / (2 * SHARE_STEPS);
    if (goesOn) runs.splice(-1, 1, { ...run, toKm: piece.toKm });
    else runs.push(piece);
  }
  return runs;
}

const markAt = (line: Line, km: number, properties: PlanMark): Feature<Point, PlanMark>[] => {
  const at = positionAt(line, km);
  return at === null ? [] : [{ type: 'Feature', geometry: { type: 'Point', coordinates: at }, properties }];
};

/** "turn back, km 507 (fuel)", in two lines, towards the middle of the map: its edge is to cut none. */
function turnBackMarks(map: MapData, turnBacks: readonly TurnBack[], units: UnitSystem) {
  const isWest = westOf(map);
  return turnBacks.flatMap(({ atKm, commodity, first }) => {
    const label = t`turn back,\n${formatBeforeKm(atKm, units)} (${worded(commodity)})`;
    const side = isWest(positionAt(map.line, atKm)?.[0]) ? EAST : WEST;
    return markAt(map.line, atKm, { what: first ? 'turn-back' : 'turn-back-later', commodity, label, side });
  });
}

/** "2 fuel cans" halfway along every stretch of one count, on the commodity's side. */
const canMarks = (line: Line, carries: readonly PlanCarry[]) =>
  carries.flatMap((carry) =>
    canSpans(carry).flatMap(({ fromKm, toKm, cans }) => {
      const { commodity } = carry;
      const label = `${cans} ${cansFor(commodity, cans)}`;
      const km = (fromKm + toKm) / 2;
      return markAt(line, km, { what: 'cans', commodity, label, side: sideOf(line, km, commodity) });
    }),
  );

/** The way's direction at a place is taken over this much on either side. */
const ABOUT_KM = 15;

/** In which direction the commodity's side of the route lies: fuel left of the way, water right of it. */
function sideOf(line: Line, km: number, commodity: Commodity): number {
  const [fromLon, fromLat] = positionAt(line, km - ABOUT_KM) ?? [0, 0];
  const [toLon, toLat] = positionAt(line, km + ABOUT_KM) ?? [0, 0];
  const east = (toLon - fromLon) * Math.cos((toLat * Math.PI) / 180);
  const north = toLat - fromLat;
  return commodity === 'fuel' ? eighthOf(-north, east) : eighthOf(north, -east);
}
