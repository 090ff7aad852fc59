import type { Feature, LineString } from 'geojson';
import type { MapData } from '../../server/contract/map.ts';
import type { PlanCarry } from '../../server/contract/plan.ts';
import { positionAt } from './nearest-km.ts';

interface CanLine {
  commodity: 'fuel' | 'water';
  cans: number;
}

/** Each stretch over which full cans are carried, as a line along the route; none where it has no length. */
export function canLines(
  line: MapData['line'],
  carries: readonly PlanCarry[],
): Feature<LineString, CanLine>[] {
  return carries.flatMap(({ commodity, cans, fromKm, toKm }) => {
    const from = positionAt(line, fromKm);
    const to = positionAt(line, toKm);
    if (from === null || to === null || !(toKm > fromKm)) return [];
    const between = line.coordinates.filter((_, i) => line.atKm[i]! > fromKm && line.atKm[i]! < toKm);
    return [
      {
        type: 'Feature' as const,
        geometry: { type: 'LineString' as const, coordinates: [from, ...between, to] },
        properties: { commodity, cans },
      },
    ];
  });
}
