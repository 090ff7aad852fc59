import type { Feature, LineString, Point, Position } from 'geojson';
import type { Commodity, Span } from '../../server/contract/common.ts';
import type { AnalysisReply, MapData, RoutePiece } from '../../server/contract/map.ts';
import type { PlanCarry, PlanLevel } from '../../server/contract/plan.ts';
import type { PlanReply, TurnBack } from '../../server/contract/whatif.ts';
import { canSpans } from '../strip/can-spans.ts';
import { isCovered } from '../strip/levels.ts';
import { formatAtKm, type UnitSystem } from '../units.ts';
import { eighthOf } from './name-anchors.ts';
import { positionAt } from './nearest-km.ts';

/** A label beside the route: a place to turn back at, or how many cans are full along a stretch. */
interface PlanMark {
  /** `turn-back`: none of the other commodity comes before it, it is the one to mind. */
  what: 'turn-back' | 'turn-back-later' | 'cans';
  commodity: Commodity;
  label: string;
  /** On which side of the route it belongs, in eighths of a turn: fuel left of the way, water right. */
  side: number;
}

/** What the map shows of a plan. */
export interface PlanOnMap {
  /** Null where there is no plan: the route is then drawn by its gaps. */
  route: { pieces: Feature[]; legs: Feature[] } | null;
  cans: Feature[];
  marks: Feature<Point, PlanMark>[];
  /** Supplies that the plan fills at, as "fuel node/1"; null where there is no plan. */
  used: ReadonlySet<string> | null;
}

const COMMODITIES = ['fuel', 'water'] as const;

/** What the map shows of a plan, or, where none was found, of turning back on what there is. */
export function planOnMap({ analysis, map }: AnalysisReply, reply: PlanReply, units: UnitSystem): PlanOnMap {
  const { plan, whatIf } = reply;
  const marks = turnBackMarks(map.line, whatIf.turnBacks, units);
  if (plan.status !== 'found') return { route: null, cans: [], marks, used: null };
  const { line } = map;
  const used = plan.stops.flatMap(({ passings }) => passings).filter((passing) => passing.used);
  return {
    route: {
      pieces: COMMODITIES.flatMap((commodity) =>
        planPieces(plan.levels[commodity], analysis[commodity]).flatMap((piece) =>
          lineFeature(line, piece, { ...piece, commodity }),
        ),
      ),
      legs: COMMODITIES.flatMap((commodity) =>
        plan.legs[commodity].flatMap(({ from, to, verdict }) =>
          lineFeature(line, { fromKm: from.atKm, toKm: to.atKm }, { commodity, verdict }),
        ),
      ),
    },
    cans: canLines(line, plan.carries),
    marks: [...marks, ...canMarks(line, plan.carries)],
    used: new Set(used.map(({ commodity, id }) => `${commodity} ${id}`)),
  };
}

type Line = MapData['line'];

/** A stretch of the route as a line; none where it has no length. */
function lineFeature<P extends object>(
  line: Line,
  { fromKm, toKm }: Span,
  properties: P,
): Feature<LineString, P>[] {
  const from = positionAt(line, fromKm);
  const to = positionAt(line, toKm);
  if (from === null || to === null || !(toKm > fromKm)) return [];
  const between: Position[] = line.coordinates.filter(
    (_, i) => line.atKm[i]! > fromKm && line.atKm[i]! < toKm,
  );
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
  levels.slice(1).forEach((to, i) => {
    const from = levels[i]!;
    const kmAlong = to.atKm - from.atKm;
    if (!(kmAlong > 0)) return;
    const steps = Math.max(1, Math.ceil((Math.abs(from.tankL - to.tankL) * SHARE_STEPS) / capacityL));
    const cuts = Array.from({ length: steps + 1 }, (_, step) => from.atKm + (kmAlong * step) / steps);
    const inside = edges.filter((km) => km > from.atKm && km < to.atKm);
    const places = [...new Set([...cuts, ...inside])].sort((a, b) => a - b);
    places.slice(1).forEach((toKm, k) => {
      const fromKm = places[k]!;
      const middleKm = (fromKm + toKm) / 2;
      const litres = from.tankL + ((middleKm - from.atKm) / kmAlong) * (to.tankL - from.tankL);
      const share = Math.min(1, Math.max(0, litres / capacityL));
      pieces.push({ state: 'left', share, noCover: !isCovered(report, middleKm), fromKm, toKm });
    });
  });
  return pieces;
}

/** The way's direction at a place is taken over this much on either side. */
const ABOUT_KM = 15;

function markAt(line: Line, km: number, properties: Omit<PlanMark, 'side'>): Feature<Point, PlanMark>[] {
  const at = positionAt(line, km);
  const before = positionAt(line, km - ABOUT_KM);
  const after = positionAt(line, km + ABOUT_KM);
  if (at === null || before === null || after === null) return [];
  const east = (after[0] - before[0]) * Math.cos((at[1] * Math.PI) / 180);
  const north = after[1] - before[1];
  const side = properties.commodity === 'fuel' ? eighthOf(-north, east) : eighthOf(north, -east);
  return [
    {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: at },
      properties: { ...properties, side },
    },
  ];
}

/** "turn back, km 507 (fuel)", in two lines. */
const turnBackMarks = (line: Line, turnBacks: readonly TurnBack[], units: UnitSystem) =>
  turnBacks.flatMap(({ atKm, commodity, first }) => {
    const label = `turn back,\n${formatAtKm(atKm, units)} (${commodity})`;
    return markAt(line, atKm, { what: first ? 'turn-back' : 'turn-back-later', commodity, label });
  });

/** "2 fuel cans" halfway along every stretch of one count. */
const canMarks = (line: Line, carries: readonly PlanCarry[]) =>
  carries.flatMap((carry) =>
    canSpans(carry).flatMap(({ fromKm, toKm, cans }) => {
      const label = `${cans} ${carry.commodity} ${cans === 1 ? 'can' : 'cans'}`;
      const { commodity } = carry;
      return markAt(line, (fromKm + toKm) / 2, { what: 'cans', commodity, label });
    }),
  );
