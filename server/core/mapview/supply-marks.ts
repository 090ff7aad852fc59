import type { SupplyMark as DrawnMark } from '../../contract/answers/map.ts';
import type { Analysis } from '../analyse/analysis.ts';
import type { SupplyKind } from '../phrases/said/supply-kinds.ts';
import type { SupplyPoint } from '../supply/points/supply-point.ts';
import { roundDegrees } from './cut-line.ts';

/** What a mark says; `atM`: of all its passings, metres along. */
export type SupplyMark = Omit<DrawnMark, 'atKm' | 'kind'> & { kind: SupplyKind; atM: number[] };

/** A mark and where it stands. */
export interface PlacedMark {
  lon: number;
  lat: number;
  mark: SupplyMark;
}

const keyOf = (commodity: string, id: string) => `${commodity} ${id}`;

/**
 * One mark for each point and commodity that the route passes, with all its passings; after those, the points that could
 * rescue a short gap, at the place from which one would turn off.
 */
export function supplyMarks(analysis: Analysis, points: readonly SupplyPoint[]): PlacedMark[] {
  const known = new Map(points.map((point) => [keyOf(point.commodity, point.id), point]));
  const marks = new Map<string, PlacedMark>();
  for (const passing of analysis.passings) {
    const key = keyOf(passing.commodity, passing.id);
    const there = marks.get(key);
    if (there !== undefined) {
      there.mark.atM.push(passing.atM);
      continue;
    }
    marks.set(key, {
      lon: passing.lon,
      lat: passing.lat,
      mark: {
        id: passing.id,
        name: passing.name,
        commodity: passing.commodity,
        kind: passing.kind,
        counts: passing.counts,
        evidence: passing.evidence,
        atM: [passing.atM],
        tags: { ...known.get(key)?.tags },
      },
    });
  }
  for (const commodity of ['fuel', 'water'] as const) {
    for (const rescue of analysis[commodity].gaps.flatMap((gap) => gap.rescue)) {
      const key = keyOf(commodity, rescue.id);
      const point = known.get(key);
      if (marks.has(key) || point === undefined) continue;
      const { id, name, kind, counts, evidence } = rescue;
      const mark = {
        id,
        name,
        commodity,
        kind,
        counts,
        evidence,
        atM: [rescue.atM],
        tags: { ...point.tags },
      };
      marks.set(key, { lon: point.lon, lat: point.lat, mark });
    }
  }
  return [...marks.values()].map(({ lon, lat, mark }) => ({
    lon: roundDegrees(lon),
    lat: roundDegrees(lat),
    mark,
  }));
}
